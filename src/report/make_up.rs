//! When a step that was cancelled can be made up for.

use crate::calendar::Date;
use crate::explain::StepSlack;
use crate::plan::When;

use super::tasks::{Doer, Task};
use super::view::View;

/// The next day on which the same people could do it, with all else as planned.
pub(super) fn day(view: &View<'_>, task: &Task, slack: &[StepSlack]) -> Option<Date> {
    let own = slack.iter().find(|slack| slack.at == task.at)?;
    let name = task.who(view.garden);
    let later = own.days.iter().skip(own.planned + 1);
    later
        .filter_map(|when| match (when, task.who) {
            (When::Sessions(visits), Doer::Class(_)) => {
                visits.iter().find(|v| v.class == name).map(|v| v.date)
            }
            (When::Families(day), Doer::Families) | (When::Adult(day), Doer::Adult) => Some(*day),
            _ => None,
        })
        .find(|day| *day > task.to)
}

/// True if it is told of a step whether it can be made up for: of what people do on one day.
pub(super) fn is_told(task: &Task, slack: &[StepSlack]) -> bool {
    slack.iter().any(|slack| slack.at == task.at)
}
