//! How a fault names a planting, a step, and what is done in it.

use crate::checker::{PlantingRef, StepRef};
use crate::words::step_words;

/// `planting 3 (carrot)`.
pub(super) fn planting(planting: &PlantingRef) -> String {
    format!("planting {} ({})", planting.number, planting.ingredient)
}

/// `step 2 (pot up) of planting 3 (carrot)`.
pub(super) fn step(step: &StepRef) -> String {
    format!(
        "step {} ({}) of {}",
        step.number,
        step_words::of(step.kind).plain,
        planting(&step.planting)
    )
}
