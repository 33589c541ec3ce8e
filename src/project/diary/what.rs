//! What an entry of the diary tells, read from its section: work on plants, school that falls out, weather, words.

use super::super::figures::{count, number};
use super::super::kind::{date, flag, text, word};
use super::super::names::{listed, near, quote};
use super::super::school_year::CARE;
use super::super::table::Table;
use super::entry::{Happened, Names};
use crate::calendar::Date;
use crate::diagnostic::{Code, Given, Problem, Read, Reported, Span};
use crate::garden::Care;
use crate::plan::StepKind;

/// A school that is closed for longer has another project.
const LONGEST_CLOSURE: i64 = 366;

/// Reads what a section tells that is of a day.
///
/// # Errors
/// What is wrong with it.
pub(super) fn what(t: &mut Table<'_, '_>, names: &Names, on: Read<Date>) -> Read<Happened> {
    let words = t.maybe("words", "anything else", "", text());
    let back = t.maybe(
        "takes_back",
        "the number of an entry that does not count",
        "",
        count(1..=100_000),
    );
    let (plants, school, weather) = (plants(t, names), school(t, names, on), weather(t));
    let words = value(words?).map(Happened::Words);
    let back = value(back?).map(|number| Happened::TakenBack(number as usize));
    let told = [plants?, school?, weather?, words, back];
    let mut told = told.into_iter().flatten();
    match (told.next(), told.next()) {
        (Some(one), None) => Ok(one),
        _ => Err(t.report(not_one(t.span()))),
    }
}

/// Work on plants, or what became of them.
fn plants(t: &mut Table<'_, '_>, names: &Names) -> Read<Option<Happened>> {
    let steps = steps();
    let done = t.maybe("done", "a step that was done", "", word(&steps));
    let missed = t.maybe("missed", "a step that a class missed", "", word(&steps));
    let up = t.maybe("up", "how many are up", "", count(0..=100_000));
    let lost = t.maybe(
        "lost",
        "which part of what stood is lost",
        "",
        number(0.0..=1.0),
    );
    let ingredient = t.maybe("ingredient", "of which ingredient", "", text());
    let class = t.maybe("class", "which class", "", text());
    let of = t.maybe("of", "of so many that were sown", "", count(1..=100_000));
    let counted = t.maybe("count", "how many seeds or plants", "", count(1..=100_000));
    let kg = t.maybe("kg", "kilograms of a pick", "", number(0.0..=10_000.0));
    let cause = t.maybe("cause", "by what it is lost", "", text());
    let ingredient = known(
        t,
        ingredient?,
        &names.ingredients,
        (Code::NoSuchIngredient, "ingredient"),
    )?;
    let class = known(t, class?, &names.classes, (Code::NoSuchGrade, "class"))?;
    let named = |t: &mut Table<'_, '_>| ingredient.clone().ok_or_else(|| missing(t, "ingredient"));
    Ok(Some(match (done?, missed?, up?, lost?) {
        (Some(step), None, None, None) => Happened::Done {
            step: step.value,
            ingredient: named(t)?,
            class,
            count: value(counted?),
            kg: value(kg?),
        },
        (None, Some(step), None, None) => Happened::Missed {
            step: step.value,
            ingredient: named(t)?,
            class: class.ok_or_else(|| missing(t, "class"))?,
        },
        (None, None, Some(count), None) => Happened::Up {
            ingredient: named(t)?,
            count: count.value,
            of: value(of?),
        },
        (None, None, None, Some(share)) => Happened::Lost {
            ingredient: named(t)?,
            share: share.value,
            cause: value(cause?).unwrap_or_default(),
        },
        (None, None, None, None) => return Ok(None),
        _ => return Err(t.report(not_one(t.span()))),
    }))
}

/// School that falls out.
fn school(t: &mut Table<'_, '_>, names: &Names, on: Read<Date>) -> Read<Option<Happened>> {
    let from = t.maybe(
        "closed_from",
        "the first day on which the school is closed",
        "the day of the entry",
        date(),
    );
    let to = t.maybe(
        "closed_to",
        "the last day on which it is closed",
        "",
        date(),
    );
    let care = t.maybe("care", "who cares for plants then", "none", word(&CARE));
    let class = t.maybe("no_lesson", "the class whose lesson falls out", "", text());
    let day = t.maybe("day", "on which day", "the day of the entry", date());
    let class = known(t, class?, &names.classes, (Code::NoSuchGrade, "class"))?;
    Ok(Some(match (to?, class) {
        (Some(to), None) => {
            let from = value(from?).map_or(on, Ok)?;
            let days = (to.value - from).num_days();
            if !(0..LONGEST_CLOSURE).contains(&days) {
                let cause = format!(
                    "{} lies before {from}, or more than a year after it",
                    to.value
                );
                let problem = Problem::new(Code::DatesOutOfOrder, cause).at(to.span, "");
                let remedy = "give the last day on which the school is closed";
                return Err(t.report(problem.remedy(remedy)));
            }
            Happened::Closed {
                from,
                to: to.value,
                care: value(care?).unwrap_or(Care::Nobody),
            }
        }
        (None, Some(class)) => Happened::NoLesson {
            class,
            day: value(day?).map_or(on, Ok)?,
        },
        (None, None) if from?.is_some() => return Err(missing(t, "closed_to")),
        (None, None) => return Ok(None),
        (Some(_), Some(_)) => return Err(t.report(not_one(t.span()))),
    }))
}

/// What thermometer and rain gauge told.
fn weather(t: &mut Table<'_, '_>) -> Read<Option<Happened>> {
    let degrees = || number(-60.0..=60.0);
    let low = t.maybe("low_c", "the lowest temperature", "", degrees());
    let high = t.maybe("high_c", "the highest temperature", "", degrees());
    let rain = t.maybe("rain_mm", "rain in the gauge", "", number(0.0..=2000.0));
    let frost = t.maybe("frost", "true if frost was seen", "", flag());
    let (low, high, rain) = (value(low?), value(high?), value(rain?));
    let frost = value(frost?).unwrap_or(false);
    let told = frost || [low, high, rain].iter().any(Option::is_some);
    Ok(told.then_some(Happened::Weather {
        low,
        high,
        rain,
        frost,
    }))
}

fn value<T>(given: Option<Given<T>>) -> Option<T> {
    given.map(|given| given.value)
}

/// The kinds of steps by their keys.
fn steps() -> Vec<(&'static str, StepKind)> {
    StepKind::ALL
        .iter()
        .map(|kind| (kind.facts().key, *kind))
        .collect()
}

/// The problem of an entry that tells nothing, or several things.
fn not_one(span: Span) -> Problem {
    let remedy = "give one of done, missed, up, lost, closed_to, no_lesson, words, takes_back, or the weather";
    let problem = Problem::new(Code::ConflictingKeys, "an entry tells one thing");
    problem.at(span, "").remedy(remedy)
}

/// A name that the garden has, if one is given.
fn known(
    t: &mut Table<'_, '_>,
    given: Option<Given<String>>,
    names: &[String],
    (code, what): (Code, &str),
) -> Read<Option<String>> {
    let given = match given {
        Some(given) if !names.contains(&given.value) => given,
        known => return Ok(value(known)),
    };
    let all = || names.iter().map(String::as_str);
    let problem = Problem::new(code, format!("there is no {what} {}", quote(&given.value)));
    let remedy = match near(&given.value, all()) {
        Some(other) => format!("did you mean {}?", quote(other)),
        None => format!("there are {}", listed(all())),
    };
    Err(t.report(problem.at(given.span, "").remedy(remedy)))
}

fn missing(t: &mut Table<'_, '_>, key: &str) -> Reported {
    let problem = Problem::new(Code::MissingKey, format!("this entry has no `{key}`"));
    t.report(
        problem
            .at(t.span(), "")
            .remedy(format!("add a line such as `{key} = \"...\"`")),
    )
}
