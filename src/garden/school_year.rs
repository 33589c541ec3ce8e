//! Terms, breaks and days off: when school is in, and who cares for plants when it is not.

use chrono::{Datelike, Weekday};
use serde::{Deserialize, Serialize};

use crate::calendar::{Date, days_between};
use crate::units::Minutes;

/// A span of school.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Term {
    /// Its name, by which classes give later slots.
    pub name: String,
    /// First day of school.
    pub from: Date,
    /// Last day of school.
    pub to: Date,
}

/// Who cares for plants in a break.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Care {
    /// Nobody is on site.
    #[serde(rename = "none")]
    Nobody,
    /// Staff water, and pick only so that plants go on bearing.
    Staff,
    /// Families water, pick and cure.
    Families,
}

impl Care {
    /// Its word in a project file.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Nobody => "none",
            Self::Staff => "staff",
            Self::Families => "families",
        }
    }
}

/// A span without school.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Break {
    /// Its name.
    pub name: String,
    /// First day without school.
    pub from: Date,
    /// Last day without school.
    pub to: Date,
    /// Who cares for plants.
    pub care: Care,
}

/// A day of the harvest on which all classes meet, beside their weekly lessons.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HarvestDay {
    /// A school day.
    pub day: Date,
    /// How long the session of every class is.
    pub minutes: Minutes,
}

/// The school's year or years that the plan runs through.
#[derive(Debug, Clone, PartialEq)]
pub struct SchoolYear {
    /// The first day on which anyone may sow.
    pub start: Date,
    /// The day on which the grades move up, if it falls within the plan.
    pub moves_up: Option<Date>,
    /// Terms in order, without overlap.
    pub terms: Vec<Term>,
    /// Breaks in order.
    pub breaks: Vec<Break>,
    /// Single days without school, in order.
    pub days_off: Vec<Date>,
    /// Days on which all classes meet for the harvest, in order.
    pub harvest_days: Vec<HarvestDay>,
}

impl SchoolYear {
    /// Closes the school for some days more. Days that are in a break already stay as they are there.
    pub fn close(&mut self, closed: &Break) {
        let days = days_between(closed.from, closed.to);
        let open: Vec<Date> = days.filter(|day| self.break_on(*day).is_none()).collect();
        for run in open.chunk_by(|day, next| day.succ_opt() == Some(*next)) {
            if let (Some(from), Some(to)) = (run.first(), run.last()) {
                self.breaks.push(Break {
                    from: *from,
                    to: *to,
                    ..closed.clone()
                });
            }
        }
        self.breaks.sort_by_key(|pause| pause.from);
    }

    /// The term that a day lies in.
    #[must_use]
    pub fn term_on(&self, day: Date) -> Option<usize> {
        self.terms.iter().position(|t| t.from <= day && day <= t.to)
    }

    /// The break that a day lies in.
    #[must_use]
    pub fn break_on(&self, day: Date) -> Option<&Break> {
        self.breaks.iter().find(|b| b.from <= day && day <= b.to)
    }

    /// The day of the harvest that a day is.
    #[must_use]
    pub fn harvest_day(&self, day: Date) -> Option<HarvestDay> {
        self.harvest_days.iter().copied().find(|h| h.day == day)
    }

    /// True if school is in: a weekday within a term, not in a break, not a day off.
    #[must_use]
    pub fn school_is_in(&self, day: Date) -> bool {
        !matches!(day.weekday(), Weekday::Sat | Weekday::Sun)
            && self.term_on(day).is_some()
            && self.break_on(day).is_none()
            && !self.days_off.contains(&day)
    }

    /// The last school day on or before a day, for what a school is told to do by then; before the
    /// first term the last weekday.
    #[must_use]
    pub fn school_day_until(&self, day: Date) -> Date {
        let first = self.terms.first().map(|term| term.from);
        let weekday = |day: &Date| !matches!(day.weekday(), Weekday::Sat | Weekday::Sun);
        let at_school = |day: &Date| match first.is_some_and(|first| *day >= first) {
            true => self.school_is_in(*day),
            false => weekday(day),
        };
        let mut days = std::iter::successors(Some(day), |d| d.pred_opt());
        days.find(at_school).unwrap_or(day)
    }

    /// The school day `n` school days before `day`; `None` if the year has not that many.
    #[must_use]
    pub fn school_days_before(&self, day: Date, n: usize) -> Option<Date> {
        let first = self.terms.first()?.from;
        std::iter::successors(day.pred_opt(), |d| d.pred_opt())
            .take_while(|d| *d >= first)
            .filter(|d| self.school_is_in(*d))
            .nth(n.checked_sub(1)?)
    }
}
