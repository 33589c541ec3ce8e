//! What planning again in the season changes, in words.

use crate::calendar::Date;
use crate::facts::unfolded::{Change, Moved, Years};
use crate::garden::Garden;
use crate::pipeline::Unfolded;

use super::figures::way;
use super::happened::happened;
use super::{Words, list, step_words};

/// As of which day is planned, and by what.
#[must_use]
pub fn as_of(unfolded: &Unfolded, words: Words) -> String {
    let day = words.full_day(unfolded.garden.as_of());
    let by = match unfolded.entries {
        0 => "by the saved plan; nothing else is written down".to_owned(),
        1 => "by the saved plan and one entry of the diary".to_owned(),
        n => format!("by the saved plan and {n} entries of the diary"),
    };
    format!(
        "Planned as of {day}, {by}. What was due before that day is taken as \
         done, unless the diary says otherwise."
    )
}

/// The row of a change: who, what, was, is, why.
#[must_use]
pub fn row(garden: &Garden, change: &Change<'_>) -> Vec<String> {
    let words = Words::of(garden);
    let name = change.ingredient;
    let (what, was, is) = match &change.moved {
        Moved::Way { was, is } => (name.to_owned(), way(*was).to_owned(), way(*is).to_owned()),
        Moved::Days {
            method,
            kind,
            was,
            is,
        } => {
            let step = step_words::name(*method, *kind);
            let (was, is) = days(was, is, words);
            (format!("{step}: {name}"), was, is)
        }
    };
    let why = change.cause.map_or_else(String::new, |entry| {
        format!(
            "{}, {}",
            words.short(entry.on),
            happened(&entry.what, words)
        )
    });
    vec![who(garden, change.grades), what, was, is, why]
}

/// Days before and now: first and last, or each where these are the same.
fn days(was: &[Date], is: &[Date], words: Words) -> (String, String) {
    let span = |days: &[Date]| match days {
        [] => "-".to_owned(),
        [one] => words.short(*one),
        [first, .., last] => words.span(*first, *last),
    };
    let each = |days: &[Date]| {
        let days: Vec<String> = days.iter().map(|day| words.short(*day)).collect();
        days.join(", ")
    };
    match (span(was) == span(is), was == is) {
        (false, _) => (span(was), span(is)),
        (true, false) => (each(was), each(is)),
        (true, true) => (span(was), "the same days, other classes".to_owned()),
    }
}

/// The names of the grades with some ids.
fn who(garden: &Garden, ids: &[String]) -> String {
    let name = |id: &String| {
        let grade = garden.grade_with_id(id);
        grade
            .map_or(id.as_str(), |at| garden[at].name.as_str())
            .to_owned()
    };
    list(&ids.iter().map(name).collect::<Vec<_>>())
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
