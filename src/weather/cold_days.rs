//! The last cold day while the year grows warmer and the first while it cools, over the years
//! of a record, north or south of the equator. What counts as cold is asked for.

use std::ops::Range;

use chrono::{Datelike, Months};

use crate::calendar::{Date, days_between, plus_days};
use crate::units::{Celsius, Latitude};

use super::Record;
use super::rank::nearest_rank;

/// Air at or below this is a light frost: 32 F, the first column of tables of freeze dates
/// (MNDNR-FREEZE: Minnesota DNR State Climatology Office, Freeze dates, 1991-2020).
pub const FREEZING: Celsius = Celsius(0.0);

/// Air at or below this is a hard frost: 28 F, the second column of those tables, and the
/// usual "hard freeze" (Knapp, M. 2018. Kansas State University, Weather Data Library, 6 April).
pub const HARD_FROST: Celsius = Celsius(-2.2);

/// A year without leap day, in which days of no particular year are given.
const PATTERN_YEAR: i32 = 2001;

/// Cold days at the edges of the warm season. "Spring" is the half of the year in which days
/// grow warmer, January to June in the north and July to December in the south; "autumn" is
/// the other half. Days are given as dates of 2001, which has no leap day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ColdDays {
    /// True where spring is the second half of the year.
    south: bool,
    /// Last cold days of the springs, earliest first; those without any come first of all.
    last: Vec<Option<Date>>,
    /// First cold days of the autumns, earliest first; those without any come last.
    first: Vec<Option<Date>>,
    /// Days from the last to the first, of each spring with its autumn, fewest first.
    free: Vec<i64>,
}

impl ColdDays {
    /// The cold days of a record; `cold` is asked for day numbers of the record.
    #[must_use]
    pub fn of(record: &Record, latitude: Latitude, cold: impl Fn(usize) -> bool) -> Self {
        let south = latitude.0 < 0.0;
        let mut found = Self {
            south,
            last: Vec::new(),
            first: Vec::new(),
            free: Vec::new(),
        };
        // The last cold day of the spring just before, as a position in the record.
        let mut spring: Option<usize> = None;
        for (month, half) in halves(record) {
            let date = |day: usize| pattern(plus_days(record.first(), day as i64));
            if (month == 1) != south {
                let last = half.clone().rev().find(|day| cold(*day));
                found.last.push(last.map(date));
                spring = Some(last.unwrap_or(half.start));
            } else {
                let first = half.clone().find(|day| cold(*day));
                found.first.push(first.map(date));
                if let Some(last) = spring.take() {
                    found.free.push((first.unwrap_or(half.end) - last) as i64);
                }
            }
        }
        found.last.sort_unstable();
        found.first.sort_unstable_by_key(|d| d.unwrap_or(Date::MAX));
        found.free.sort_unstable();
        found
    }

    /// The frosts of a record: days as cold as `limit` or colder.
    #[must_use]
    pub fn frosts(record: &Record, latitude: Latitude, limit: Celsius) -> Self {
        Self::of(record, latitude, |day| record.days()[day].tmin <= limit)
    }

    /// In this share of the springs it is cold once more after the day that is given. `None`:
    /// in so many springs it is not cold at all, or there is no spring.
    #[must_use]
    pub fn still_after(&self, share: f64) -> Option<Date> {
        nearest_rank(&self.last, 1.0 - share).flatten()
    }

    /// In this share of the autumns it is cold before the day that is given. `None`: in so
    /// many autumns it is not.
    #[must_use]
    pub fn already_before(&self, share: f64) -> Option<Date> {
        nearest_rank(&self.first, share).flatten()
    }

    /// The share of the years in which it is still cold on a day or after it, if that lies in
    /// spring, and in which it has already been cold by then, if it lies in autumn. `None` if the
    /// record holds no such half-year.
    #[must_use]
    pub fn share_around(&self, day: Date) -> Option<f64> {
        let day = pattern(day);
        let cold = |days: &[Option<Date>], holds: &dyn Fn(&Date) -> bool| {
            let cold = days.iter().flatten().filter(|d| holds(d)).count();
            (!days.is_empty()).then(|| cold as f64 / days.len() as f64)
        };
        if (day.month() <= 6) != self.south {
            cold(&self.last, &|last| *last >= day)
        } else {
            cold(&self.first, &|first| *first <= day)
        }
    }

    /// The days from the last cold day of spring to the first of autumn, of which a share of
    /// the years has fewer; a half without cold days counts whole. `None` without a whole year.
    #[must_use]
    pub fn free_days(&self, share: f64) -> Option<i64> {
        nearest_rank(&self.free, share)
    }

    /// How many springs had cold days, and how many there are.
    #[must_use]
    pub fn springs(&self) -> (usize, usize) {
        (self.last.iter().flatten().count(), self.last.len())
    }

    /// How many autumns had cold days, and how many there are.
    #[must_use]
    pub fn autumns(&self) -> (usize, usize) {
        (self.first.iter().flatten().count(), self.first.len())
    }
}

/// The half-years that a record holds whole, in order: the month in which each begins, and
/// its days.
fn halves(record: &Record) -> impl Iterator<Item = (u32, Range<usize>)> + '_ {
    let first = record.first();
    let end = record.days().len();
    let last_year = plus_days(first, end as i64).year();
    (first.year()..=last_year)
        .flat_map(|year| [(year, 1), (year, 7)])
        .filter_map(move |(year, month)| {
            let from = Date::from_ymd_opt(year, month, 1)?;
            let to = from.checked_add_months(Months::new(6))?.pred_opt()?;
            let start = usize::try_from((from - first).num_days()).ok()?;
            let half = start..start + days_between(from, to).count();
            record.holds(&half).then_some((month, half))
        })
}

/// The same day of the year 2001; of a leap day, the day before.
fn pattern(day: Date) -> Date {
    day.with_year(PATTERN_YEAR)
        .or_else(|| day.pred_opt()?.with_year(PATTERN_YEAR))
        .unwrap_or(day)
}
