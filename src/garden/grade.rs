//! Grades, their classes, and the weekly or fortnightly slots in which classes meet.

use chrono::{Datelike, Weekday};

use crate::calendar::{Date, Horizon, Time, days_between, monday_of};
use crate::units::Minutes;

use super::at::GradeAt;
use super::school_year::SchoolYear;

/// Who carries a grade's plantings on after the grades move up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HandOver {
    /// The children who sowed, now one grade higher, in the same classes.
    SameChildren,
    /// The children who enter the grade; the slot stays the grade's.
    SameGrade,
    /// The grade leaves the school; another grade adopts its plantings.
    Leaves {
        /// The grade that takes over.
        adopter: GradeAt,
    },
}

/// Who does a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hands {
    /// Children in their session.
    Children,
    /// Families in a break.
    Families,
}

/// When a class meets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slot {
    /// Weekday of the session.
    pub day: Weekday,
    /// Every week (1) or every second week (2).
    pub every_weeks: u32,
    /// A day in a week in which the class meets; fixes which weeks a fortnightly slot takes.
    /// No session lies before it.
    pub from: Date,
    /// Length of the session.
    pub minutes: Minutes,
    /// The time of day at which it begins, as the school's clock shows it, if given.
    pub at: Option<Time>,
}

/// One class.
#[derive(Debug, Clone, PartialEq)]
pub struct Class {
    /// Its name, unique in the school.
    pub name: String,
    /// How many children.
    pub children: u32,
    /// The slot for each term, in the order of the terms.
    pub slots: Vec<Slot>,
    /// Days on which its lesson falls out.
    pub falls_out: Vec<Date>,
}

/// One grade.
#[derive(Debug, Clone, PartialEq)]
pub struct Grade {
    /// The id by which other parts of the file refer to it.
    pub id: String,
    /// The name that people read.
    pub name: String,
    /// How old most of its children are when the plan begins, in years, if that is given.
    pub age: Option<u32>,
    /// Its classes, at least one.
    pub classes: Vec<Class>,
    /// Who carries on after moving up.
    pub hand_over: HandOver,
}

impl Class {
    /// The slot that holds on a day; outside all terms that of the next term, or the last. On a day of the
    /// harvest the session is as long as that day's, or as the lesson that it takes in, if that is longer.
    #[must_use]
    pub fn slot_on(&self, year: &SchoolYear, day: Date) -> Slot {
        let weekly = self.weekly_slot(year, day);
        match year.harvest_day(day) {
            None => weekly,
            Some(harvest) if self.has_lesson_on(year, day) => Slot {
                minutes: Minutes(weekly.minutes.0.max(harvest.minutes.0)),
                ..weekly
            },
            Some(harvest) => Slot {
                day: day.weekday(),
                every_weeks: 1,
                from: day,
                minutes: harvest.minutes,
                at: None,
            },
        }
    }

    fn weekly_slot(&self, year: &SchoolYear, day: Date) -> Slot {
        let term = year
            .terms
            .iter()
            .position(|t| day <= t.to)
            .unwrap_or(self.slots.len() - 1);
        self.slots[term.min(self.slots.len() - 1)]
    }

    /// True if the class has its weekly or fortnightly lesson on a day.
    #[must_use]
    pub fn has_lesson_on(&self, year: &SchoolYear, day: Date) -> bool {
        let slot = self.weekly_slot(year, day);
        let weeks = (monday_of(day) - monday_of(slot.from)).num_days() / 7;
        day.weekday() == slot.day
            && day >= slot.from
            && weeks % i64::from(slot.every_weeks) == 0
            && year.school_is_in(day)
            && !self.falls_out.contains(&day)
    }

    /// True if the class meets on a day: in its lesson, or for the harvest.
    #[must_use]
    pub fn meets_on(&self, year: &SchoolYear, day: Date) -> bool {
        self.has_lesson_on(year, day) || (year.harvest_day(day).is_some() && year.school_is_in(day))
    }

    /// All days of the span on which the class meets, in order.
    #[must_use]
    pub fn sessions(&self, year: &SchoolYear, horizon: Horizon) -> Vec<Date> {
        days_between(horizon.first(), horizon.last())
            .filter(|d| self.meets_on(year, *d))
            .collect()
    }
}

impl Grade {
    /// How many weeks a round takes: 2 if some class meets every second week, else 1.
    #[must_use]
    pub fn round_weeks(&self) -> u32 {
        self.classes
            .iter()
            .flat_map(|c| &c.slots)
            .map(|s| s.every_weeks)
            .max()
            .unwrap_or(1)
    }
}
