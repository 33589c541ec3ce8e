//! Which calendar years of a record stay: those in which no more days in a row are missing than are filled.

use std::collections::{BTreeMap, BTreeSet};

use chrono::Datelike;

use crate::calendar::{Date, plus_days};

use super::super::weather::LONGEST_FILLED;
use super::days::{Day, daily};
use super::element::Element;

/// A calendar year that is left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LeftOut {
    /// The year.
    pub year: i32,
    /// Its days that lack the lowest, the highest, the rain.
    pub lacking: [usize; 3],
}

/// The years that are left out of days in order: a gap that is too long takes all years along that it
/// touches, also where only leaving out a year made it so long.
pub fn left_out(days: &[Date]) -> BTreeSet<i32> {
    let mut left_out = BTreeSet::new();
    loop {
        let before = left_out.len();
        let kept: Vec<Date> = days
            .iter()
            .filter(|day| !left_out.contains(&day.year()))
            .copied()
            .collect();
        for pair in kept.windows(2) {
            let [a, b] = pair else { continue };
            if (*b - *a).num_days() - 1 > LONGEST_FILLED {
                left_out.extend(plus_days(*a, 1).year()..=plus_days(*b, -1).year());
            }
        }
        if left_out.len() == before {
            return left_out;
        }
    }
}

/// What the years lack that are left out, of the days that the files tell of.
pub fn lacking(years: &BTreeSet<i32>, days: &BTreeMap<Date, Day<f64>>) -> Vec<LeftOut> {
    let of_year = |year: &i32| {
        let first = Date::from_ymd_opt(*year, 1, 1);
        let next = Date::from_ymd_opt(*year + 1, 1, 1);
        let mut lacking = [0; 3];
        let all = first
            .zip(next)
            .map(|(first, next)| (next - first).num_days());
        for day in (0..all.unwrap_or(0)).filter_map(|n| Some(plus_days(first?, n))) {
            let given = days.get(&day);
            for (element, count) in Element::ALL.into_iter().zip(&mut lacking) {
                let has = given.and_then(|day| day.get(element as usize).copied().flatten());
                *count += usize::from(has.is_none());
            }
        }
        LeftOut {
            year: *year,
            lacking,
        }
    };
    years.iter().map(of_year).collect()
}

/// Days that have all three values.
pub fn complete(days: &BTreeMap<Date, Day<f64>>) -> Vec<(Date, crate::weather::Daily)> {
    let complete = days
        .iter()
        .filter_map(|(date, day)| Some((*date, daily(day)?)));
    complete.collect()
}
