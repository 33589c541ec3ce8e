//! Lesson time: how many of its sessions each class gives to the plan, how many minutes, and the
//! fullest.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::{ClassAt, GradeAt};
use crate::units::Minutes;

use super::Facts;

/// The lessons that a class gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lessons {
    /// How many of its sessions it gives.
    pub given: usize,
    /// How many it has within the plan.
    pub of: usize,
    /// Minutes of all of them.
    pub minutes: Minutes,
    /// The first session of those that are filled most.
    pub fullest: Option<Fullest>,
}

/// The fullest session of a class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fullest {
    /// Its day.
    pub day: Date,
    /// Minutes that are given.
    pub minutes: Minutes,
    /// How long it is.
    pub of: Minutes,
}

/// What the classes of a grade give at the most, each figure by itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Most {
    /// Sessions.
    pub sessions: usize,
    /// Minutes of all of them.
    pub minutes: Minutes,
    /// Minutes of one session.
    pub fullest: Minutes,
}

impl Facts<'_> {
    /// The lessons that a class gives.
    #[must_use]
    pub fn lessons_of(&self, class: ClassAt) -> Lessons {
        let none = BTreeMap::new();
        let days = self.given.get(&class).unwrap_or(&none);
        let fullest = days
            .iter()
            .max_by(|a, b| a.1.total_cmp(b.1).then(b.0.cmp(a.0)));
        Lessons {
            given: days.len(),
            of: self.garden.sessions(class).len(),
            minutes: Minutes(days.values().sum()),
            fullest: fullest.map(|(day, minutes)| Fullest {
                day: *day,
                minutes: Minutes(*minutes),
                of: self.garden.session_minutes(class, *day),
            }),
        }
    }

    /// What the classes of a grade give at the most; `None` where they have nothing to do.
    #[must_use]
    pub fn most_of_grade(&self, grade: GradeAt) -> Option<Most> {
        let classes = self.garden.classes_of(grade);
        classes
            .filter_map(|class| self.given.get(&class))
            .map(|days| Most {
                sessions: days.len(),
                minutes: Minutes(days.values().sum()),
                fullest: Minutes(days.values().copied().fold(0.0, f64::max)),
            })
            .reduce(|a, b| Most {
                sessions: a.sessions.max(b.sessions),
                minutes: a.minutes.max(b.minutes),
                fullest: a.fullest.max(b.fullest),
            })
    }
}
