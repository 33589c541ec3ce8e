//! Other days for the feast: the whole project planned anew for each.

use crate::calendar::Date;
use crate::calendar::plus_days;
use crate::diagnostic::Problems;
use crate::garden::{Garden, Season};
use crate::project::Change;

use super::trial::{Trial, Workbench};

/// One day on which the feast could be.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherDay {
    /// The day.
    pub day: Date,
    /// What comes of it, or `None` if school is not in on that day.
    pub trial: Option<Trial>,
}

/// The days of a span that are whole weeks from the feast, as numbers of days after it; where the season is under way
/// only those to which it can still go on.
#[must_use]
pub fn weeks_from_feast(garden: &Garden, from: Date, to: Date) -> Vec<i64> {
    let feast = garden.feast.day;
    let season = garden.season.as_ref().map(Season::goes_on_until);
    let first = (from.max(season.unwrap_or(from)) - feast).num_days();
    let last = (to - feast).num_days();
    let monday = first + (-first).rem_euclid(7);
    (monday..=last).step_by(7).collect()
}

impl Workbench<'_> {
    /// Plans the project for every whole week from its feast within a span. `done` is called
    /// after each day.
    ///
    /// # Errors
    /// What is wrong with the project for one of the days, other than that school is out.
    pub fn other_days(
        &self,
        garden: &Garden,
        days: &[i64],
        done: &(dyn Fn() + Sync),
    ) -> Result<Vec<OtherDay>, Problems> {
        let day_of = |days: i64| plus_days(garden.feast.day, days);
        let open: Vec<i64> = days
            .iter()
            .copied()
            .filter(|days| garden.school_year.school_is_in(day_of(*days)))
            .collect();
        let sets: Vec<Vec<Change>> = open
            .iter()
            .map(|days| vec![Change::OtherDay(*days)])
            .collect();
        let mut trials = open.iter().zip(self.trials(&sets, done)).peekable();
        days.iter()
            .map(|days| {
                let trial = trials.next_if(|(open, _)| *open == days);
                Ok(OtherDay {
                    day: day_of(*days),
                    trial: trial.map(|(_, trial)| trial).transpose()?,
                })
            })
            .collect()
    }
}
