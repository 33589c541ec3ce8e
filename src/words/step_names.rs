//! The names by which a person asks for a step: `carrot sow`, `tomato plant out`.

use crate::facts::Facts;
use crate::facts::asked::Asked;
use crate::facts::sowings::Sowing;
use crate::plan::{Plan, StepAt};

use super::{step_words, tasks};

/// A step under its names; the first is the one that is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepName {
    /// Which step; of a pick window the first one.
    pub at: StepAt,
    /// Its ingredient, in lower case.
    pub ingredient: String,
    /// Its names, in lower case.
    pub names: Vec<String>,
}

/// The names of all steps that can be asked for, in the order of the plan. Where an ingredient
/// is sown several times, its name is followed by the number of the sowing; where it is picked
/// on several days, "pick" is followed by the number of the day.
#[must_use]
pub fn step_names(facts: &Facts<'_>) -> Vec<StepName> {
    let names = |asked: Asked<'_>| {
        let own = asked.planting.ingredient.to_lowercase();
        let called = called(facts, &own, asked.sowing);
        let kinds = kinds(&asked);
        let under = |name: &String| {
            let kinds = kinds.iter();
            kinds
                .map(|kind| format!("{name} {kind}"))
                .collect::<Vec<_>>()
        };
        StepName {
            at: asked.at,
            names: called.iter().flat_map(under).collect(),
            ingredient: own,
        }
    };
    facts.asked().into_iter().map(names).collect()
}

/// What a sowing of an ingredient is called.
fn called(facts: &Facts<'_>, own: &str, sowing: Sowing) -> Vec<String> {
    let mut called = match sowing.of {
        1 => vec![own.to_owned()],
        _ => {
            let nth = tasks::ordinal(sowing.number);
            vec![
                format!("{own} {}", sowing.number),
                format!("{nth} {own}"),
                format!("{own}, {nth} sowing,"),
            ]
        }
    };
    called.extend(short(facts.plan, &called));
    called
}

/// What is done, under all its names.
fn kinds(asked: &Asked<'_>) -> Vec<String> {
    let method = asked.planting.method;
    let words = step_words::of(asked.kind);
    let mut kinds = match asked.chance {
        Some(chance) => vec![format!("pick {}", chance.number)],
        None => vec![words.plain.to_owned(), (words.name)(method).to_lowercase()],
    };
    if asked.chance.is_none_or(|chance| chance.number == 1) {
        let also = (words.also)(method).iter();
        kinds.extend(also.map(|word| (*word).to_owned()));
    }
    kinds.dedup();
    kinds
}

/// The same names without what is in brackets, such as "lettuce" for "lettuce (leaf)", if no
/// other ingredient is called so.
fn short(plan: &Plan, called: &[String]) -> Vec<String> {
    let plain = |name: &str| {
        let (before, rest) = name.split_once(" (")?;
        let (_, after) = rest.split_once(')')?;
        Some(format!("{before}{after}"))
    };
    let others: Vec<String> = plan
        .plantings
        .iter()
        .map(|p| p.ingredient.to_lowercase())
        .filter(|name| !called.iter().any(|called| called.contains(name)))
        .collect();
    let clear = |name: &String| {
        let same = |other: &String| plain(other).as_ref() == Some(name) || other == name;
        !others.iter().any(same)
    };
    let short = called.iter().filter_map(|name| plain(name));
    short.filter(clear).collect()
}
