//! GHCN-Daily's files of fixed width: a line holds a month of one element, a value every eight columns.
//! Source: NOAA, readme of GHCN-Daily, section III: columns 1-11 station, 12-15 year, 16-17 month, 18-21
//! element, then five columns for a value and one each for the marks of measurement, quality and source.

use std::ops::Range;

use crate::calendar::Date;
use crate::diagnostic::{Code, Problem};

use super::super::names::quote;
use super::days::Given;
use super::element::Element;
use super::intake::Intake;
use super::lines::Line;
use super::names;
use super::order;

/// Where the values begin, and how long one is with its marks.
const VALUES: usize = 21;
const STRIDE: usize = 8;

/// The value of a day that is missing.
const MISSING: i64 = -9999;

/// True for a line that begins as these lines do.
pub fn is_fixed(line: &str) -> bool {
    let part = |at: Range<usize>| part(line, at);
    let id = part(0..11);
    let is_id = id.len() == 11
        && id
            .bytes()
            .all(|b| b.is_ascii_alphanumeric() || b"-_".contains(&b));
    let is_month = part(11..17).bytes().all(|b| b.is_ascii_digit()) && part(11..17).len() == 6;
    let is_element = part(17..21).bytes().all(|b| b.is_ascii_alphanumeric());
    let value = part(VALUES..VALUES + 5).trim();
    is_id && is_month && is_element && value.parse::<i64>().is_ok()
}

/// Reads a line.
pub fn read(line: Line<'_>, into: &mut Intake<'_>) {
    let text = line.text;
    if text.trim().is_empty() {
        return;
    }
    if !is_fixed(text) {
        let cause = "this line does not begin with a station, a year, a month and an element";
        let problem = Problem::new(Code::WeatherColumns, cause).remedy(
            "remove it, or download the file again: every line holds a month, such as \
             `AE000041196194403TMAX  380  I`, and no blanks stand before it",
        );
        into.wrong(line, 0..text.len().min(VALUES), problem);
        return;
    }
    let number = |at: Range<usize>| part(text, at).parse::<u32>().unwrap_or(0);
    let (year, month) = (number(11..15), number(15..17));
    if order::date(year, month, 1).is_none() {
        let cause = format!("{} is not a year and a month", quote(part(text, 11..17)));
        let problem = Problem::new(Code::ImpossibleDate, cause)
            .remedy("four digits and two, such as 199804; is the file damaged?");
        into.wrong(line, 11..17, problem);
        return;
    }
    if !into.is_station(line, part(text, 0..11), 0..11, None) {
        return;
    }
    if let Some(element) = element(part(text, 17..21)) {
        let days = (1..=31).map_while(|day| order::date(year, month, day));
        values(line, element, days, into);
    }
}

/// Reads the values of a line, one for each day of its month.
fn values(
    line: Line<'_>,
    element: Element,
    days: impl Iterator<Item = Date>,
    into: &mut Intake<'_>,
) {
    for (n, date) in days.enumerate() {
        let at = VALUES + n * STRIDE;
        let value = part(line.text, at..at + 5);
        // Blanks at the end of a line may be lost, but no part of a value.
        if value.len() < 5 {
            let cause = format!("this line ends before day {} of its month", n + 1);
            let problem = Problem::new(Code::WeatherColumns, cause).remedy(
                "the file may be cut: download it again, or remove this line; a line has 269 columns",
            );
            let end = line.text.len();
            into.wrong(line, end.saturating_sub(1)..end, problem);
            return;
        }
        let Ok(tenths) = value.trim().parse::<i64>() else {
            into.no_number(line, at..at + 5, value.trim(), element);
            continue;
        };
        let quality = part(line.text, at + 6..at + 7).trim();
        match () {
            () if tenths == MISSING => {}
            () if !quality.is_empty() => into.days.flag(element),
            () => {
                let number = tenths as f64;
                let given = Given {
                    number,
                    line: line.number,
                };
                into.put(line, at..at + 5, date, element, given);
            }
        }
    }
}

fn part(text: &str, at: Range<usize>) -> &str {
    text.get(at).unwrap_or_default()
}

/// The element of these archives that is read; all others are passed over.
pub fn element(name: &str) -> Option<Element> {
    matches!(name, "TMIN" | "TMAX" | "PRCP")
        .then(|| names::element(name))
        .flatten()
}
