//! The last two weeks before the feast, day by day: what is picked, decided, brought and eaten.

use std::collections::BTreeMap;

use crate::calendar::{Date, plus_days};

use super::Facts;
use super::decisions::{Decision, Topic};
use super::tasks::Task;

/// Something on a day of the last two weeks.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Event<'f> {
    /// Something is done in the garden.
    Task(&'f Task<'f>),
    /// Something is to decide.
    Decide(&'f Decision<'f>),
    /// All is in the kitchen.
    Deliver,
    /// It is eaten.
    Feast,
}

/// How many days are told.
const DAYS: i64 = 14;

impl<'a> Facts<'a> {
    /// The days of the last two weeks on which something happens.
    #[must_use]
    pub fn fortnight(&self) -> BTreeMap<Date, Vec<Event<'_>>> {
        let feast = self.garden.feast;
        let from = plus_days(feast.day, -DAYS);
        let near = |day: Date| (from..=feast.day).contains(&day);
        let mut days: BTreeMap<Date, Vec<Event<'_>>> = BTreeMap::new();
        for decision in self.decisions.iter().filter(|decision| near(decision.by)) {
            let for_kitchen = match decision.topic {
                Topic::Kitchen | Topic::Buy { .. } => true,
                Topic::Nurse | Topic::Order(_) | Topic::Gap(_) | Topic::Break(_) => false,
            };
            if for_kitchen {
                days.entry(decision.by)
                    .or_default()
                    .push(Event::Decide(decision));
            }
        }
        for task in self.tasks.iter().filter(|task| near(task.from)) {
            if task.kind.is_harvest() || task.kind.follows_harvest() {
                days.entry(task.from).or_default().push(Event::Task(task));
            }
        }
        days.entry(feast.deliver_by)
            .or_default()
            .push(Event::Deliver);
        days.entry(feast.day).or_default().push(Event::Feast);
        days
    }
}
