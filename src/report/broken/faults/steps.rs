//! Ways of growing, the order of steps, and the days on which they lie.

use crate::calendar::Date;
use crate::checker::Fault;
use crate::plan::StepKind;

use super::super::super::day_limits::told;
use super::super::super::step_words;
use super::super::super::steps::how_grown;
use super::references::{planting, step};
use crate::words::{Words, list, sentence as capital};

/// The sentence of a fault of this group.
pub(super) fn sentence(fault: &Fault, words: Words) -> Option<String> {
    let text = match fault {
        Fault::Method {
            planting: p,
            expected,
            got,
        } => format!(
            "{} is {}; allowed for it: {}.",
            capital(&planting(p)),
            how_grown(*got),
            list(&expected.iter().map(|m| how_grown(*m)).collect::<Vec<_>>())
        ),
        Fault::Steps {
            planting: p,
            expected,
            got,
        } => format!(
            "{} has the steps {}; its way of growing takes {}.",
            capital(&planting(p)),
            kinds(got),
            kinds(expected)
        ),
        Fault::Day {
            step: s,
            got,
            limit,
            from,
            to,
        } => format!(
            "{} is on {}: {}{}.",
            capital(&step(s)),
            words.day(*got),
            told(*limit).broken,
            days_that_would_do(*from, *to, words)
        ),
        _ => return None,
    };
    Some(text)
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
        (Some(from), Some(to)) if from <= to => format!(" (right: {})", words.days(from, to)),
        (Some(from), None) => format!(" (right: from {} on)", words.day(from)),
        (None, Some(to)) => format!(" (right: until {})", words.day(to)),
        _ => String::new(),
    }
}
