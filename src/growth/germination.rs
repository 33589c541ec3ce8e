//! How long seed takes to come up, indoors at room warmth and outdoors day by day.

use crate::garden::Germination;
use crate::units::Celsius;

/// Degrees between the columns of a germination table.
const COLUMN: f64 = 5.0;

/// Days to come up at a steady temperature; `None` where it does not germinate. Between the
/// table's columns the days are read on a straight line; next to a column without
/// germination there is none, but for the line below the first column of an extended table.
/// Source of the tables (HM1954): Harrington, J.F. and Minges, P.A. 1954. Vegetable seed
/// germination. University of California Agricultural Extension.
#[must_use]
pub fn days_to_emerge(germination: &Germination, at: Celsius) -> Option<f64> {
    match germination {
        Germination::Table(columns) => read(columns, at),
        Germination::Extended { days, least } => {
            read(days, at).or_else(|| below(first_printed(days)?, *least, at))
        }
        Germination::Range {
            min,
            optimum,
            max,
            days,
        } => {
            if at <= *min || at > *max {
                None
            } else if at >= *optimum {
                Some(*days)
            } else {
                Some(days * ((*optimum - *min) / (at - *min)))
            }
        }
    }
}

/// The median of the days on which seed is up, one for each weather year (the later of the two in
/// the middle). Years in which it never is are left out: a seedbed is cared for as long as something
/// may come of it. `None` if nothing ever does.
#[must_use]
pub fn median_up(up: impl IntoIterator<Item = Option<usize>>) -> Option<usize> {
    let mut days: Vec<usize> = up.into_iter().flatten().collect();
    days.sort_unstable();
    days.get(days.len() / 2).copied()
}

/// The share of the way to emergence that one day at a temperature brings, 0 where it does
/// not germinate. Days at changing temperatures add up (a common approximation).
#[must_use]
pub fn rate(germination: &Germination, at: Celsius) -> f64 {
    days_to_emerge(germination, at).map_or(0.0, |days| 1.0 / days)
}

/// Days to come up at the best temperature; `None` if the table is empty.
#[must_use]
pub fn least_days(germination: &Germination) -> Option<f64> {
    match germination {
        Germination::Table(columns) | Germination::Extended { days: columns, .. } => {
            columns.iter().flatten().copied().reduce(f64::min)
        }
        Germination::Range { days, .. } => Some(*days),
    }
}

/// The first printed cell of a table: its temperature and days.
fn first_printed(columns: &[Option<f64>; 9]) -> Option<(Celsius, f64)> {
    let mut columns = (0..).zip(columns);
    columns.find_map(|(place, days)| Some((Celsius(COLUMN * f64::from(place)), (*days)?)))
}

/// Days below the first printed cell, on a line of the rate; `None` at the least and below it, and where
/// the table has its say.
fn below((printed, days): (Celsius, f64), least: Celsius, at: Celsius) -> Option<f64> {
    (least < at && at < printed).then(|| days * ((printed - least) / (at - least)))
}

/// Reads a table whose columns stand at 0, 5, ... C.
fn read(columns: &[Option<f64>; 9], at: Celsius) -> Option<f64> {
    if at.0 < 0.0 {
        return None;
    }
    let place = at.0 / COLUMN;
    let beyond = place.fract();
    let left = (*columns.get(place as usize)?)?;
    if beyond == 0.0 {
        return Some(left);
    }
    let right = (*columns.get(place as usize + 1)?)?;
    Some(left + (right - left) * beyond)
}
