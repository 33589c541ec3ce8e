//! Days on which nobody is on site, the gaps that they form, and days on which somebody is there who keeps
//! bearing plants picked.

use chrono::{Datelike, Weekday};

use crate::calendar::{Date, Horizon, days_between};

use super::school_year::{Care, SchoolYear};

/// The longest run of days without anyone that plants are taken to bear: a weekend
/// (watered from below on Friday; common practice).
pub const BEARABLE_DAYS: usize = 2;

/// A run of more than two days on which nobody is on site.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Gap {
    /// First day without anyone.
    pub from: Date,
    /// Last day without anyone.
    pub to: Date,
}

impl Gap {
    /// Days beyond what plants bear: the days for which someone has to be found.
    #[must_use]
    pub fn unattended_days(&self) -> u32 {
        ((self.to - self.from).num_days() + 1 - BEARABLE_DAYS as i64).max(0) as u32
    }

    /// True if the gap shares a day with the span `from..=to`.
    #[must_use]
    pub fn touches(&self, from: Date, to: Date) -> bool {
        self.from <= to && from <= self.to
    }
}

/// True if someone is on site: school is in, or a break has staff or families.
fn attended(year: &SchoolYear, day: Date) -> bool {
    match year.break_on(day) {
        Some(b) => b.care != Care::Nobody,
        None => year.school_is_in(day),
    }
}

/// Who picks what is ripe, so that a plant goes on bearing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeepsPicked {
    /// School is in: a class in its lesson, or else an adult.
    School,
    /// Staff who water in a break.
    Staff,
    /// Families who care in a break.
    Families,
}

/// Who is there on a day to pick what is ripe: in a break staff on weekdays, families on any day.
pub fn keeps_picked(year: &SchoolYear, day: Date) -> Option<KeepsPicked> {
    let weekend = matches!(day.weekday(), Weekday::Sat | Weekday::Sun);
    match year.break_on(day).map(|b| b.care) {
        None => year.school_is_in(day).then_some(KeepsPicked::School),
        Some(Care::Staff) => (!weekend).then_some(KeepsPicked::Staff),
        Some(Care::Families) => Some(KeepsPicked::Families),
        Some(Care::Nobody) => None,
    }
}

/// All gaps in order.
pub fn gaps(year: &SchoolYear, horizon: Horizon) -> Vec<Gap> {
    let mut gaps: Vec<Gap> = Vec::new();
    for day in days_between(horizon.first(), horizon.last()).filter(|d| !attended(year, *d)) {
        match gaps.last_mut() {
            Some(gap) if gap.to.succ_opt() == Some(day) => gap.to = day,
            _ => gaps.push(Gap { from: day, to: day }),
        }
    }
    gaps.retain(|g| g.unattended_days() > 0);
    gaps
}
