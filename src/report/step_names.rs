//! The names by which a person asks for a step: `carrot sow`, `tomato plant out`.

use crate::checker::CheckedPlan;
use crate::plan::{Planting, PlantingAt, StepAt};

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
pub fn step_names(checked: &CheckedPlan) -> Vec<StepName> {
    let plantings = &checked.plan().plantings;
    let mut found = Vec::new();
    for (planting, planned) in plantings.iter().enumerate() {
        let same = |p: &&Planting| p.ingredient == planned.ingredient;
        let sowings = plantings.iter().filter(same).count();
        let number = plantings.iter().take(planting + 1).filter(same).count();
        let own = planned.ingredient.to_lowercase();
        let name = match sowings {
            1 => own.clone(),
            _ => format!("{own} {number}"),
        };
        let mut called = vec![name];
        if sowings > 1 {
            let nth = tasks::ordinal(number);
            called.push(format!("{nth} {own}"));
            called.push(format!("{own}, {nth} sowing,"));
        }
        called.extend(short(checked, &called));
        let is_pick = |s: &&crate::plan::Step| s.kind.is_harvest();
        let picks = planned.steps.iter().filter(is_pick).count();
        for (step, done) in planned.steps.iter().enumerate() {
            if done.kind.is_span() {
                continue;
            }
            let nth = planned.steps.iter().take(step + 1).filter(is_pick).count();
            let words = step_words::of(done.kind);
            let name = (words.name)(planned.method).to_lowercase();
            let mut kinds = vec![words.plain.to_owned(), name];
            if done.kind.is_harvest() && picks > 1 {
                kinds = vec![format!("pick {nth}")];
            }
            if picks <= 1 || nth == 1 {
                let also = (words.also)(planned.method).iter();
                kinds.extend(also.map(|word| (*word).to_owned()));
            }
            kinds.dedup();
            let under = |name: &String| {
                let kinds = kinds.iter();
                kinds
                    .map(|kind| format!("{name} {kind}"))
                    .collect::<Vec<_>>()
            };
            found.push(StepName {
                at: StepAt {
                    planting: PlantingAt(planting),
                    step,
                },
                ingredient: own.clone(),
                names: called.iter().flat_map(under).collect(),
            });
        }
    }
    found
}

/// The same names without what is in brackets, such as "lettuce" for "lettuce (leaf)", if no
/// other ingredient is called so.
fn short(checked: &CheckedPlan, called: &[String]) -> Vec<String> {
    let plain = |name: &str| {
        let (before, rest) = name.split_once(" (")?;
        let (_, after) = rest.split_once(')')?;
        Some(format!("{before}{after}"))
    };
    let others: Vec<String> = checked
        .plan()
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
