//! What becomes of the plan if those who do a task cannot come; `explain` works it out, class by
//! class.

use crate::explain::{IfMissed, StepSlack};

use super::tasks::Task;

/// What becomes of the plan if those who do a task cannot come; `None` for what goes on from day
/// to day, and where the slack of the step is not known.
#[must_use]
pub fn if_missed(task: &Task<'_>, slack: &[StepSlack]) -> Option<IfMissed> {
    let own = slack.iter().find(|slack| slack.at == task.at)?;
    own.if_missed.get(task.visit).copied()
}
