//! Days that a record lacks: a few in a row are filled, more are told.

use crate::calendar::{Date, plus_days};
use crate::diagnostic::{Code, Findings, Problem, Read, Span};
use crate::units::Millimetres;
use crate::weather::Daily;

use super::row::Row;

/// Days in a row that are filled. The World Meteorological Organization gives no monthly mean where
/// five days in a row or more are missing (WMO-No. 1203; from memory).
const LONGEST_FILLED: i64 = 5;

/// The first and the last day of each gap.
pub type Gaps = Vec<(Date, Date)>;

/// All days of sound rows that are in order, and the gaps that were filled, by their first and last day.
pub fn fill(rows: &[Row], findings: &mut Findings) -> Read<(Vec<Daily>, Gaps)> {
    let (mut days, mut filled) = (Vec::new(), Vec::new());
    let mut result = Ok(());
    for (n, row) in rows.iter().enumerate() {
        let before = n.checked_sub(1).and_then(|n| rows.get(n));
        if let Some(before) = before {
            let missing = (row.date - before.date).num_days() - 1;
            if missing > LONGEST_FILLED {
                result = Err(findings.report(gap(before.date, row)));
            } else if missing > 0 {
                filled.push((plus_days(before.date, 1), plus_days(row.date, -1)));
                let (a, b) = (before.daily, row.daily);
                days.extend((1..=missing).map(|n| Ok(between(&a?, &b?, n, missing))));
            }
        }
        days.push(row.daily);
    }
    result?;
    Ok((days.into_iter().collect::<Read<_>>()?, filled))
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
        "give these days, for example from a station nearby; only gaps of up to {LONGEST_FILLED} \
         days are filled"
    );
    let Span { start, end } = row.span;
    Problem::new(Code::WeatherGap, cause)
        .at(Span { start, end }, "before this day")
        .remedy(remedy)
}
