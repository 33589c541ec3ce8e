//! Minutes of lessons that each class gives, day by day.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::ClassAt;

use super::tasks::Task;

/// Minutes that each class gives on each day on which it has something to do.
pub(super) type Given = BTreeMap<ClassAt, BTreeMap<Date, f64>>;

/// Adds up what classes do in their sessions.
pub(super) fn given(tasks: &[Task<'_>]) -> Given {
    let mut given = Given::new();
    for task in tasks {
        if let (Some(class), Some(takes)) = (task.who.class(), task.takes) {
            *given
                .entry(class)
                .or_default()
                .entry(task.from)
                .or_default() += takes.0;
        }
    }
    given
}
