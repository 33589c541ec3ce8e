//! The days of a file, a school year later, and years in the names of its terms and breaks.

use std::ops::{Range, RangeInclusive};

use chrono::Datelike;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::calendar::{Date, plus_days};
use crate::garden::Garden;

use super::edits::Edits;

/// A school year: whole weeks, so that every day keeps its weekday.
const YEAR: i64 = 52 * 7;

/// Sections that tell what stood on certain days, which are over.
const OVER: [&str; 2] = ["growing", "seedlings"];

/// The same weekday a school year later.
pub fn next(day: Date) -> Date {
    plus_days(day, YEAR)
}

/// Moves every day of the file but those of what stands, and of beds that are free from a day on. Terms and breaks
/// that are named after a year are named after the next.
pub fn move_all(file: &DeTable<'_>, garden: &Garden, edits: &mut Edits<'_>) {
    let years = years(garden);
    for (name, section) in file.iter() {
        let name = name.get_ref().as_ref();
        if !OVER.contains(&name) {
            move_in(name, section, edits);
        }
        if name == "calendar" {
            names(section, &years, edits);
        }
        if name == "grade" {
            terms(section, &years, edits);
        }
    }
}

/// The calendar years in which the file has a day.
fn years(garden: &Garden) -> RangeInclusive<i32> {
    let (first, last) = garden.calendar_span();
    first.year()..=last.year()
}

fn move_in(key: &str, value: &Spanned<DeValue<'_>>, edits: &mut Edits<'_>) {
    match value.get_ref() {
        DeValue::Datetime(at) if key != "free_from" => {
            let Some(date) = at.date else { return };
            let (year, month, day) = (date.year.into(), date.month.into(), date.day.into());
            if let Some(day) = Date::from_ymd_opt(year, month, day) {
                edits.put(value.span(), next(day).to_string());
            }
        }
        DeValue::Table(table) => {
            for (key, value) in table.iter() {
                move_in(key.get_ref(), value, edits);
            }
        }
        DeValue::Array(list) => {
            for value in list.iter() {
                move_in(key, value, edits);
            }
        }
        _ => {}
    }
}

/// The names of terms and breaks.
fn names(value: &Spanned<DeValue<'_>>, years: &RangeInclusive<i32>, edits: &mut Edits<'_>) {
    match value.get_ref() {
        DeValue::String(_) => rename(value.span(), years, edits),
        DeValue::Table(table) => table
            .iter()
            .for_each(|(_, inner)| names(inner, years, edits)),
        DeValue::Array(list) => list.iter().for_each(|inner| names(inner, years, edits)),
        _ => {}
    }
}

/// The names of terms in the slots of classes.
fn terms(value: &Spanned<DeValue<'_>>, years: &RangeInclusive<i32>, edits: &mut Edits<'_>) {
    match value.get_ref() {
        DeValue::Table(table) => {
            for (key, inner) in table.iter() {
                match (key.get_ref().as_ref(), inner.get_ref()) {
                    ("in_term", DeValue::Table(of_terms)) => {
                        let keys = of_terms.iter().map(|(term, _)| term.span());
                        keys.for_each(|term| rename(term, years, edits));
                    }
                    _ => terms(inner, years, edits),
                }
            }
        }
        DeValue::Array(list) => list.iter().for_each(|inner| terms(inner, years, edits)),
        _ => {}
    }
}

fn rename(place: Range<usize>, years: &RangeInclusive<i32>, edits: &mut Edits<'_>) {
    let was = edits.text.get(place.clone()).unwrap_or_default();
    let is = a_year_on(was, years);
    if is != was {
        edits.put(place, is);
    }
}

/// The name of the next feast: that of this one with the next year in it, at its end if no year stands in it.
pub fn next_name(garden: &Garden) -> String {
    let name = a_year_on(&garden.name, &years(garden));
    match name == garden.name {
        true => format!("{name} {}", next(garden.feast.day).year()),
        false => name,
    }
}

/// A text with each of these years one more: `2027`, and `2026/27`.
fn a_year_on(text: &str, years: &RangeInclusive<i32>) -> String {
    let (mut new, mut rest) = (String::new(), text);
    let mut last: Option<i32> = None;
    while let Some(at) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, from) = rest.split_at(at);
        let end = from
            .find(|c: char| !c.is_ascii_digit())
            .unwrap_or(from.len());
        let (digits, after) = from.split_at(end);
        let number = digits.parse::<i32>().ok();
        // `/27` after `2026`.
        let short = last.filter(|_| digits.len() == 2 && ["/", "-"].contains(&before));
        let of_two = short.filter(|year| number == Some((year + 1) % 100));
        let whole = number.filter(|number| digits.len() == 4 && years.contains(number));
        new += before;
        new += &match (whole, of_two) {
            (Some(year), _) => (year + 1).to_string(),
            (None, Some(year)) => format!("{:02}", (year + 2) % 100),
            (None, None) => digits.to_owned(),
        };
        (last, rest) = (whole, after);
    }
    new + rest
}
