//! The 52 weeks and 12 months of the year, and when they ran in a record.

use std::ops::Range;

use chrono::{Datelike, Months};

use crate::calendar::{Date, plus_days};
use crate::units::Latitude;

use super::Record;

/// A part of the year, such as a week, and its days in every year of a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Part {
    /// Its first day, as a date of 2001 or, in the second half of a southern year, 2002:
    /// years without a leap day.
    pub first: Date,
    /// Its last day.
    pub last: Date,
    /// Positions in the record, one run per year that the record holds it whole.
    pub runs: Vec<Range<usize>>,
}

/// The year's 52 weeks in a record, so that summer lies in the middle: from 1 January in the
/// north, from 1 July in the south. The last one has eight days, as has one with a leap day.
#[must_use]
pub fn weeks(record: &Record, latitude: Latitude) -> Vec<Part> {
    let Some(first) = new_year(latitude) else {
        return Vec::new();
    };
    let starts = (0..52).map(|week| plus_days(first, week * 7));
    parts(record, first, starts)
}

/// The year's twelve months in a record, in the order in which `weeks` begins.
#[must_use]
pub fn months(record: &Record, latitude: Latitude) -> Vec<Part> {
    let Some(first) = new_year(latitude) else {
        return Vec::new();
    };
    let starts = (0..12).filter_map(|month| first.checked_add_months(Months::new(month)));
    parts(record, first, starts)
}

/// The first day of the year as a gardener sees it, when winter is deepest.
fn new_year(latitude: Latitude) -> Option<Date> {
    Date::from_ymd_opt(2001, if latitude.0 < 0.0 { 7 } else { 1 }, 1)
}

fn parts(record: &Record, first: Date, starts: impl Iterator<Item = Date>) -> Vec<Part> {
    let starts: Vec<Date> = starts.collect();
    let next = first.with_year(first.year() + 1);
    let ends = starts.iter().skip(1).copied().chain(next);
    starts
        .iter()
        .zip(ends)
        .map(|(from, to)| Part {
            first: *from,
            last: plus_days(to, -1),
            runs: runs(record, *from, to),
        })
        .collect()
}

/// The runs of a part of the year that lie wholly within the record.
fn runs(record: &Record, from: Date, to: Date) -> Vec<Range<usize>> {
    let begin = record.first();
    let end = record.days().len();
    let last_year = plus_days(begin, end as i64).year();
    let at = |day: Date| usize::try_from((day - begin).num_days()).ok();
    (begin.year()..=last_year)
        .filter_map(|year| {
            let over_new_year = to.year() - from.year();
            let from = at(from.with_year(year)?)?;
            let to = at(to.with_year(year + over_new_year)?)?;
            record.holds(&(from..to)).then_some(from..to)
        })
        .collect()
}
