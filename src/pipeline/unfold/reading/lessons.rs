//! Lessons in which a class can make up for what it missed.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::{ClassAt, Garden};
use crate::plan::{By, Planting};

/// Forgiveness for sums of minutes.
const ROUNDING: f64 = 1e-6;

/// How full each lesson is.
pub struct Lessons<'a> {
    garden: &'a Garden,
    minutes: BTreeMap<(ClassAt, Date), f64>,
}

impl<'a> Lessons<'a> {
    /// By a plan.
    pub fn of<'p>(garden: &'a Garden, plantings: impl Iterator<Item = &'p Planting>) -> Self {
        let mut minutes = BTreeMap::new();
        for step in plantings.flat_map(|planting| &planting.steps) {
            for (by, day) in step.when.turns() {
                if let Some(class) = class(garden, by) {
                    *minutes.entry((class, day)).or_default() += step.minutes.0;
                }
            }
        }
        Self { garden, minutes }
    }

    /// The first lesson after a day in which a class that tends the plantings of some grades has so many minutes left beside
    /// all that is planned, which is then taken; where it has them in none, the first of all.
    pub fn take(
        &mut self,
        (by, grades): (By<'_>, &[String]),
        after: Date,
        minutes: f64,
    ) -> Option<Date> {
        let at = class(self.garden, by)?;
        let team = self.garden.team_with_ids(grades)?;
        let tends = |day: &Date| self.garden.tending(team, *day).has(at.grade);
        let open = |day: &Date| after < *day && *day <= self.garden.last_day() && tends(day);
        let lessons: Vec<Date> = self.garden.sessions(at).into_iter().filter(open).collect();
        let has_room = |day: &&Date| {
            let taken = self.minutes.get(&(at, **day)).copied().unwrap_or_default();
            taken + minutes <= self.garden.session_minutes(at, **day).0 + ROUNDING
        };
        let day = *lessons.iter().find(has_room).or(lessons.first())?;
        *self.minutes.entry((at, day)).or_default() += minutes;
        Some(day)
    }

    /// True if a class, if it is one, has a lesson on a day.
    pub fn is_held(&self, by: By<'_>, day: Date) -> bool {
        let year = &self.garden.school_year;
        let at = class(self.garden, by);
        at.is_none_or(|at| self.garden.class(at).meets_on(year, day))
    }
}

fn class(garden: &Garden, by: By<'_>) -> Option<ClassAt> {
    by.class().and_then(|name| garden.class_named(name))
}
