//! Answers as people type them, each read into what it means, or told how it should be written.

use chrono::{Datelike, Weekday};

use super::figures::{Measures, Quantity, figures};
use super::school::{Beds, Class, Span};
use crate::calendar::{Date, Time};
use crate::catalogue::Catalogue;
use crate::garden::Care;
use crate::project::meant;
use crate::project::names::near;

/// Other words than those of the file for who looks after the garden in a break.
const CARES: [(&str, Care); 5] = [
    ("nobody", Care::Nobody),
    ("no one", Care::Nobody),
    ("teachers", Care::Staff),
    ("family", Care::Families),
    ("parents", Care::Families),
];

/// The most children that a class may have.
const MOST_CHILDREN: u32 = 200;

/// A place: `44.3 N 93.2 W`, or its latitude alone. Without letters south and west are negative.
///
/// # Errors
/// What is wrong with it.
pub fn place(text: &str) -> Result<(f64, Option<f64>), String> {
    let wrong = || "write degrees, such as 44.3 N 93.2 W".to_owned();
    let text = text
        .replace(['\u{b0}', ','], " ")
        .replace('\u{2212}', "-")
        .to_lowercase();
    // `44.3n` and `44.3 n` alike.
    let text: String = text
        .chars()
        .map(|c| {
            if c.is_alphabetic() {
                format!(" {c}")
            } else {
                c.to_string()
            }
        })
        .collect();
    let mut degrees: Vec<f64> = Vec::new();
    for word in text.split_whitespace() {
        match (word, degrees.last_mut(), degrees_of(word)) {
            (_, _, Some(figure)) => degrees.push(figure),
            ("s" | "w", Some(last), None) => *last = -last.abs(),
            ("n" | "e", Some(_), None) => {}
            _ => return Err(wrong()),
        }
    }
    let (latitude, longitude) = match degrees.as_slice() {
        [latitude] => (*latitude, None),
        [latitude, longitude] => (*latitude, Some(*longitude)),
        _ => return Err(wrong()),
    };
    if !(-66.0..=66.0).contains(&latitude) {
        return Err("between the polar circles: 66 S to 66 N, the latitude first".to_owned());
    }
    match longitude.is_none_or(|degrees| (-180.0..=180.0).contains(&degrees)) {
        true => Ok((latitude, longitude)),
        false => Err("180 W to 180 E".to_owned()),
    }
}

fn degrees_of(word: &str) -> Option<f64> {
    word.parse()
        .ok()
        .filter(|degrees: &f64| degrees.is_finite())
}

/// A day in any form that is clear. Without a year it is the next one on or after a day.
///
/// # Errors
/// What is wrong with it.
pub fn day(text: &str, after: Date, measures: Measures) -> Result<Date, String> {
    let unclear = || {
        format!(
            "\"{}\" is no day; write for instance 8 October 2027",
            text.trim()
        )
    };
    let readings = |text: &str| match text.trim().parse::<Date>() {
        Ok(date) => vec![date],
        Err(_) => meant::dates(text),
    };
    let found = match readings(text) {
        found if found.is_empty() => {
            let years = after.year()..=after.year() + 1;
            let mut next = years.flat_map(|year| readings(&format!("{} {year}", text.trim())));
            next.find(|date| *date >= after).into_iter().collect()
        }
        found => found,
    };
    match (found.as_slice(), measures) {
        ([only], _) => Ok(*only),
        // `6/11/2027`: `meant` tells the month-first reading first.
        ([month_first, _], Measures::Feet) => Ok(*month_first),
        ([_, day_first], Measures::Metric) => Ok(*day_first),
        _ => Err(unclear()),
    }
}

/// A span with its name: `Spring: 11 Jan - 18 Jun 2027`. Without a name it takes the one given.
///
/// # Errors
/// What is wrong with it.
pub fn span(text: &str, name: &str, after: Date, measures: Measures) -> Result<Span, String> {
    let (name, days) = match text.split_once(':') {
        Some((name, days)) => (name.trim(), days),
        None => (name, text),
    };
    let parted = [" to ", " - ", " \u{2013} ", "\u{2013}", " until ", ".."];
    let parted = parted.iter().find_map(|sign| days.split_once(sign));
    let (first, last) = parted.ok_or("write two days: 11 Jan 2027 - 18 Jun 2027")?;
    // A year behind the last day alone holds for both.
    let from = day(first, after, measures)?;
    let to = day(last, from, measures)?;
    let with_year = |year: i32| day(&format!("{} {year}", first.trim()), after, measures).ok();
    let same_year = with_year(to.year()).filter(|first| first <= &to);
    let from = same_year.unwrap_or(from);
    match from <= to {
        true => Ok(Span {
            name: name.to_owned(),
            from,
            to,
        }),
        false => Err(format!("{to} is before {from}")),
    }
}

/// A break and who looks after the garden then: `Summer: 19 Jun - 29 Aug, families`.
///
/// # Errors
/// What is wrong with it.
pub fn time_off(text: &str, after: Date, measures: Measures) -> Result<(Span, Care), String> {
    let (days, who) = match text.rsplit_once(',') {
        Some((days, who)) => (days, who.trim().to_lowercase()),
        None => (text, "nobody".to_owned()),
    };
    let keys = [Care::Nobody, Care::Staff, Care::Families].map(|care| (care.key(), care));
    let mut words = keys.iter().chain(&CARES);
    let care = words.find(|(word, _)| *word == who);
    let (_, care) = care.ok_or("behind the comma stands nobody, staff or families")?;
    Ok((span(days, "Break", after, measures)?, *care))
}

/// A class: `3a 22 Tue 10:15`, with `every 2` for every second week.
///
/// # Errors
/// What is wrong with it.
pub fn class(text: &str) -> Result<Class, String> {
    let text = text.replace(',', " ");
    let mut words = text.split_whitespace().peekable();
    let name = words
        .next()
        .ok_or("write the class's name first")?
        .to_owned();
    let count = "behind its name stands how many children it has";
    let children = words
        .next()
        .and_then(|word| word.parse().ok())
        .ok_or(count)?;
    if !(1..=MOST_CHILDREN).contains(&children) {
        return Err(format!("a class has 1 to {MOST_CHILDREN} children"));
    }
    let which = words.next().and_then(|word| word.get(..3));
    let day = which
        .and_then(|word| word.parse().ok())
        .filter(|day| is_of_school(*day));
    let day = day.ok_or("then comes the day of its lesson, Mon to Fri")?;
    let mut class = Class {
        name,
        children,
        day,
        at: None,
        every: 1,
    };
    while let Some(word) = words.next() {
        match (word.to_lowercase().as_str(), words.peek()) {
            ("every", Some(&("1" | "2"))) => class.every = u32::from(words.next() == Some("2")) + 1,
            (word, _) => class.at = Some(time(word)?),
        }
    }
    Ok(class)
}

fn is_of_school(day: Weekday) -> bool {
    !matches!(day, Weekday::Sat | Weekday::Sun)
}

fn time(word: &str) -> Result<Time, String> {
    meant::time(word)
        .ok_or_else(|| format!("\"{word}\" is no time of day; write 10:15, or every 2"))
}

/// Beds of one size: `4 beds 3.6 x 1.2`, or one: `12 ft x 4 ft`.
///
/// # Errors
/// What is wrong with it.
pub fn beds(text: &str, measures: Measures) -> Result<Beds, String> {
    let found = figures(text);
    let (count, size) = match found.as_slice() {
        [length, width] => (1.0, [length, width]),
        [(count, unit), length, width] if unit.is_empty() || unit.starts_with("bed") => {
            (*count, [length, width])
        }
        _ => return Err("write how many, length and width: 4 beds 3.6 x 1.2".to_owned()),
    };
    if !(1.0..=50.0).contains(&count) || count.fract() != 0.0 {
        return Err("1 to 50 beds can be planned".to_owned());
    }
    // A unit behind the width alone holds for both.
    let shared = &size[1].1;
    let read = size.map(|(figure, unit)| {
        let unit = if unit.is_empty() { shared } else { unit };
        Quantity::Length.read(*figure, unit, measures)
    });
    match read {
        [Some(length), Some(width)] if length > 0.0 && width > 0.0 => Ok(Beds {
            count: count as u32,
            length: length.max(width),
            width: length.min(width),
        }),
        _ => Err("length and width are in m or ft".to_owned()),
    }
}

/// Ingredients with their grams for one: `carrot 25, potato 60`.
///
/// # Errors
/// What is wrong with it.
pub fn parts(
    text: &str,
    catalogue: &Catalogue,
    measures: Measures,
) -> Result<Vec<(String, f64)>, String> {
    let parts = text.split(',').filter(|part| !part.trim().is_empty());
    let part = |part: &str| {
        let at = part.find(|c: char| c.is_ascii_digit());
        let at = at.ok_or_else(|| format!("how much of {} for one person?", part.trim()))?;
        let (name, amount) = part.split_at(at);
        let (figure, unit) =
            meant::figure(amount).ok_or_else(|| format!("\"{amount}\" is no amount"))?;
        let unit = match (unit, measures) {
            ("", Measures::Metric) => "g",
            ("", Measures::Feet) => "oz",
            (unit, _) => unit,
        };
        let grams = meant::converted(figure, unit, Some("g"));
        let grams = grams.ok_or_else(|| format!("\"{unit}\" is no unit of weight"))?;
        Ok((crop(name.trim(), catalogue)?, grams))
    };
    let parts: Vec<(String, f64)> = parts.map(part).collect::<Result<_, String>>()?;
    match parts.is_empty() {
        true => Err("write them with their amounts: carrot 25, potato 60".to_owned()),
        false => Ok(parts),
    }
}

/// A crop of the catalogue by a name that it has.
fn crop(name: &str, catalogue: &Catalogue) -> Result<String, String> {
    match catalogue.get(&name.to_lowercase()) {
        Some(crop) => Ok(crop.name.clone()),
        None => Err(match near(name, catalogue.all_names()) {
            Some(other) => format!("no crop is called \"{name}\"; did you mean \"{other}\"?"),
            None => format!("no crop is called \"{name}\"; `tureen crops` lists all"),
        }),
    }
}

/// How many eat.
///
/// # Errors
/// What is wrong with it.
pub fn eaters(text: &str) -> Result<u32, String> {
    let count = text
        .trim()
        .parse()
        .ok()
        .filter(|n| (1..=100_000).contains(n));
    count.ok_or_else(|| "write a whole number of people".to_owned())
}
