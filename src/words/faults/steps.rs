//! Ways of growing, the order of steps, and the days on which they lie.

use crate::calendar::Date;
use crate::checker::Fault;
use crate::plan::StepKind;

use super::references::{planting, step};
use super::told::Told;
use crate::words::day_limits;
use crate::words::step_words;
use crate::words::steps::how_grown;
use crate::words::{Words, list};

/// The words of a fault of this group.
pub(super) fn told(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::Method {
            planting: p,
            expected,
            got,
        } => Told::of(
            &planting(p),
            format!(
                "it is {}; allowed for it: {}",
                how_grown(*got),
                list(&expected.iter().map(|m| how_grown(*m)).collect::<Vec<_>>())
            ),
        ),
        Fault::Steps {
            planting: p,
            expected,
            got,
        } => Told::of(
            &planting(p),
            format!(
                "it has the steps {}; its way of growing takes {}",
                kinds(got),
                kinds(expected)
            ),
        ),
        Fault::Day {
            step: s,
            got,
            limit,
            from,
            to,
        } => Told::of(
            &format!("{}, on {}", step(s), words.day(*got)),
            format!(
                "{}{}",
                day_limits::told(*limit),
                days_that_would_do(*from, *to, words)
            ),
        ),
        _ => return of_the_season(fault, words),
    };
    Some(told)
}

/// What has begun, and days that are over.
fn of_the_season(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::NotAsBegun { ingredient, got: 0 } => Told::of(
            ingredient,
            "it has begun, and no planting of the plan goes on with it on its strips and days",
        ),
        Fault::NotAsBegun { ingredient, got } => Told::of(
            ingredient,
            format!("it has begun once, and {got} plantings go on with it"),
        ),
        Fault::GoneBy {
            step: s,
            day,
            as_of,
        } => Told::of(
            &step(s),
            format!(
                "{} is over: what is new begins on {} or later",
                words.day(*day),
                words.day(*as_of)
            ),
        ),
        _ => return None,
    };
    Some(told)
}

fn kinds(steps: &[StepKind]) -> String {
    if steps.is_empty() {
        return "none".to_owned();
    }
    steps
        .iter()
        .map(|kind| step_words::of(*kind).plain)
        .collect::<Vec<_>>()
        .join(", ")
}

fn days_that_would_do(from: Option<Date>, to: Option<Date>, words: Words) -> String {
    match (from, to) {
        (Some(from), Some(to)) if from <= to => format!(" (possible {})", words.days(from, to)),
        (Some(from), None) => format!(" (possible from {} on)", words.day(from)),
        (None, Some(to)) => format!(" (possible until {})", words.day(to)),
        _ => String::new(),
    }
}
