//! The names by which a person asks for a step: `carrot sow`, `tomato plant out`.

use crate::checker::{CheckedPlan, StepAt};
use crate::plan::{Planting, StepKind};

use super::broken;
use super::steps;

/// A step under its names; the first is the one that is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StepName {
    /// Which step; of a pick window the first one.
    pub at: StepAt,
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
        let name = match sowings {
            1 => planned.ingredient.to_lowercase(),
            _ => format!("{} {number}", planned.ingredient.to_lowercase()),
        };
        let is_pick = |s: &&crate::plan::Step| s.kind == StepKind::Pick;
        let picks = planned.steps.iter().filter(is_pick).count();
        for (step, done) in planned.steps.iter().enumerate() {
            if matches!(done.kind, StepKind::Harden | StepKind::Cure) {
                continue;
            }
            let nth = planned.steps.iter().take(step + 1).filter(is_pick).count();
            let plain = broken::kind(done.kind).to_owned();
            let mut kinds = vec![plain, steps::name(planned.method, done.kind).to_lowercase()];
            if done.kind == StepKind::Pick && picks > 1 {
                kinds = vec![format!("pick {nth}")];
            }
            kinds.dedup();
            found.push(StepName {
                at: StepAt { planting, step },
                names: kinds.iter().map(|kind| format!("{name} {kind}")).collect(),
            });
        }
    }
    found
}
