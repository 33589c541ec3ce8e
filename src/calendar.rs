//! Days, weeks and the span that a plan covers, across New Year and leap days.

use chrono::{Datelike, Days, NaiveDate, NaiveTime};

/// A day without a time.
pub type Date = NaiveDate;

/// A time of day as the clock on the wall shows it, of no particular time zone.
pub type Time = NaiveTime;

/// The longest span that a plan may cover, in weeks.
pub const LONGEST_WEEKS: usize = 80;

/// The months by name, January first.
pub const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// The Monday on or before a day.
#[must_use]
pub fn monday_of(day: Date) -> Date {
    day - Days::new(u64::from(day.weekday().num_days_from_monday()))
}

/// `day` plus `n` days; `n` may be negative.
#[must_use]
pub fn plus_days(day: Date, n: i64) -> Date {
    day + chrono::TimeDelta::days(n)
}

/// The days of a span, both ends included.
pub fn days_between(from: Date, to: Date) -> impl Iterator<Item = Date> + Clone {
    let n = (to - from).num_days().max(-1) + 1;
    (0..n).map(move |k| plus_days(from, k))
}

/// The weeks that a plan covers: whole weeks, Monday to Sunday, counted from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Horizon {
    first: Date,
    weeks: usize,
}

impl Horizon {
    /// The whole weeks that hold `from` and `to`.
    #[must_use]
    pub fn spanning(from: Date, to: Date) -> Self {
        let first = monday_of(from);
        let days = (to - first).num_days().max(0);
        Self {
            first,
            weeks: usize::try_from(days / 7).unwrap_or(0) + 1,
        }
    }

    /// The first day, a Monday.
    #[must_use]
    pub fn first(&self) -> Date {
        self.first
    }

    /// The last day, a Sunday.
    #[must_use]
    pub fn last(&self) -> Date {
        plus_days(self.first, self.days() as i64 - 1)
    }

    /// How many calendar years it touches.
    #[must_use]
    pub fn calendar_years(&self) -> u32 {
        u32::try_from(self.last().year() - self.first.year()).unwrap_or(0) + 1
    }

    /// How many weeks.
    #[must_use]
    pub fn weeks(&self) -> usize {
        self.weeks
    }

    /// How many days.
    #[must_use]
    pub fn days(&self) -> usize {
        self.weeks * 7
    }

    /// Day number of a date from the first day; `None` outside the span.
    #[must_use]
    pub fn day_number(&self, day: Date) -> Option<usize> {
        usize::try_from((day - self.first).num_days())
            .ok()
            .filter(|&n| n < self.days())
    }

    /// Day number of a date, clamped into the span.
    #[must_use]
    pub fn day(&self, day: Date) -> usize {
        (day - self.first)
            .num_days()
            .clamp(0, self.days() as i64 - 1) as usize
    }

    /// The date of a day number.
    #[must_use]
    pub fn date(&self, day_number: usize) -> Date {
        plus_days(self.first, day_number as i64)
    }

    /// The Monday of a week.
    #[must_use]
    pub fn monday(&self, week: usize) -> Date {
        self.date(week * 7)
    }
}
