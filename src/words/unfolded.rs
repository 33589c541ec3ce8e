//! What planning again in the season changes, in words.

use crate::facts::unfolded::{Change, Days, OtherWay, Years};
use crate::garden::Garden;
use crate::pipeline::Unfolded;
use crate::project::diary::Entry;

use super::figures::way;
use super::happened::happened;
use super::{Words, list, step_words};

/// As of which day is planned, and by what.
#[must_use]
pub fn as_of(unfolded: &Unfolded, words: Words) -> String {
    let day = words.full_day(unfolded.garden.as_of());
    let entries = match unfolded.entries {
        0 => "a diary without an entry by then".to_owned(),
        1 => "one entry of the diary".to_owned(),
        n => format!("{n} entries of the diary"),
    };
    format!(
        "Planned as of {day}, by the saved plan and {entries}. What was due before that day is taken as \
         done, unless the diary says otherwise."
    )
}

/// All that changes, a row each: who, what, was, is, why.
#[must_use]
pub fn rows(garden: &Garden, changes: &[Change<'_>], ways: &[OtherWay<'_>]) -> Vec<Vec<String>> {
    let words = Words::of(garden);
    let days = |days: Option<Days>| days.map_or("-".to_owned(), |(from, to)| words.span(from, to));
    let of_ways = ways.iter().map(|other| {
        let [was, is] = [other.was, other.is].map(|method| way(method).to_owned());
        let what = other.ingredient.to_owned();
        vec![
            who(garden, other.grade),
            what,
            was,
            is,
            why(other.cause, words),
        ]
    });
    let of_days = changes.iter().map(|change| {
        let what = format!(
            "{} {}",
            step_words::of(change.kind).plain,
            change.ingredient
        );
        let (was, is) = (days(change.was), days(change.is));
        vec![
            who(garden, change.grade),
            what,
            was,
            is,
            why(change.cause, words),
        ]
    });
    of_ways.chain(of_days).collect()
}

/// The name of the grade with an id.
fn who(garden: &Garden, id: &str) -> String {
    let grade = garden.grade_with_id(id);
    grade.map_or_else(|| id.to_owned(), |at| garden[at].name.clone())
}

fn why(cause: Option<&Entry>, words: Words) -> String {
    cause.map_or_else(String::new, |entry| {
        format!(
            "{}, {}",
            words.short(entry.on),
            happened(&entry.what, words)
        )
    })
}

/// What it costs in ready years, or wins.
#[must_use]
pub fn years(all: &[Years<'_>], weather_years: u32) -> String {
    let each = all.iter().map(|years| {
        let what = years.ingredient.unwrap_or("the whole dish");
        match years.was == years.is {
            true => format!("{what} in {}, as before", years.is),
            false => format!("{what} in {} instead of {}", years.is, years.was),
        }
    });
    let each: Vec<String> = each.collect();
    format!(
        "Ready in the {weather_years} weather years of the plan: {}.",
        list(&each)
    )
}

/// Entries that change nothing.
#[must_use]
pub fn without_effect(numbers: &[usize]) -> Option<String> {
    let each: Vec<String> = numbers.iter().map(usize::to_string).collect();
    match numbers {
        [] => None,
        [one] => Some(format!(
            "Entry {one} of the diary changes nothing in the plan."
        )),
        _ => Some(format!(
            "Entries {} of the diary change nothing in the plan.",
            list(&each)
        )),
    }
}
