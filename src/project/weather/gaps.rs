//! Days that a record lacks: a few in a row are filled, whole calendar years are left out, all else is told.

use std::ops::Range;

use chrono::Datelike;

use crate::calendar::{Date, plus_days};
use crate::diagnostic::{Code, Findings, Problem, Read};
use crate::units::Millimetres;
use crate::weather::Daily;

use super::row::Row;

/// Days in a row that are filled. The World Meteorological Organization gives no monthly mean where
/// five days in a row or more are missing (WMO-No. 1203; from memory).
pub const LONGEST_FILLED: i64 = 5;

/// Days in a row that are left out: more than a hundred years are a date that is written wrongly.
const LONGEST_LEFT_OUT: i64 = 36_525;

/// The first and the last day of each gap.
pub type Gaps = Vec<(Date, Date)>;

/// Days without a hole.
pub struct Whole {
    pub days: Vec<Daily>,
    /// Gaps that were filled.
    pub filled: Gaps,
    /// The positions of calendar years that are left out.
    pub left_out: Vec<Range<usize>>,
}

/// All days of sound rows that are in order.
pub fn fill(rows: &[Row], findings: &mut Findings) -> Read<Whole> {
    let (mut days, mut filled, mut left_out) = (Vec::new(), Vec::new(), Vec::new());
    let mut result = Ok(());
    for (n, row) in rows.iter().enumerate() {
        let before = n.checked_sub(1).and_then(|n| rows.get(n));
        if let Some(before) = before {
            let missing = (row.date - before.date).num_days() - 1;
            let may_be_left_out = missing <= LONGEST_LEFT_OUT && are_years(before.date, row.date);
            if missing > LONGEST_FILLED && !may_be_left_out {
                result = Err(findings.report(gap(before.date, row)));
            } else if missing > 0 {
                match missing > LONGEST_FILLED {
                    true => left_out.push(days.len()..days.len() + missing as usize),
                    false => filled.push((plus_days(before.date, 1), plus_days(row.date, -1))),
                }
                let (a, b) = (before.daily, row.daily);
                days.extend((1..=missing).map(|n| Ok(between(&a?, &b?, n, missing))));
            }
        }
        days.push(row.daily);
    }
    result?;
    Ok(Whole {
        days: days.into_iter().collect::<Read<_>>()?,
        filled,
        left_out,
    })
}

/// True if the days between two others are whole calendar years.
fn are_years(before: Date, after: Date) -> bool {
    (before.month(), before.day(), after.ordinal()) == (12, 31, 1)
}

/// Day `n` of so many missing ones: temperatures on a straight line, and no rain, so that nobody
/// counts on water of which nothing is known.
fn between(before: &Daily, after: &Daily, n: i64, missing: i64) -> Daily {
    let part = n as f64 / (missing + 1) as f64;
    Daily {
        tmin: before.tmin * (1.0 - part) + after.tmin * part,
        tmax: before.tmax * (1.0 - part) + after.tmax * part,
        rain: Millimetres(0.0),
    }
}

fn gap(before: Date, row: &Row) -> Problem {
    let (first, last) = (plus_days(before, 1), plus_days(row.date, -1));
    let missing = (row.date - before).num_days() - 1;
    let cause = format!("{missing} days are missing: {first} to {last}");
    let remedy = format!(
        "give these days, for example from a station nearby, or leave out the whole calendar year; \
         only gaps of up to {LONGEST_FILLED} days are filled"
    );
    Problem::new(Code::WeatherGap, cause)
        .at(row.span, "before this day")
        .remedy(remedy)
}
