//! How a fault names a planting, a step, and what is done in it.

use crate::checker::{PlantingRef, StepRef};
use crate::plan::StepKind;

/// `planting 3 (carrot)`.
pub(super) fn planting(planting: &PlantingRef) -> String {
    format!("planting {} ({})", planting.number, planting.ingredient)
}

/// `step 2 (pot up) of planting 3 (carrot)`.
pub(super) fn step(step: &StepRef) -> String {
    format!(
        "step {} ({}) of {}",
        step.number,
        kind(step.kind),
        planting(&step.planting)
    )
}

/// The name of a step without regard to the way of growing.
pub(super) fn kind(kind: StepKind) -> &'static str {
    match kind {
        StepKind::Sow => "sow",
        StepKind::PotUp => "pot up",
        StepKind::Harden => "harden off",
        StepKind::PlantOut => "plant out",
        StepKind::Thin => "thin",
        StepKind::Pick => "pick",
        StepKind::Cure => "dry or cure",
    }
}
