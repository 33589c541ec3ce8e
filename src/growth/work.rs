//! Minutes that a step takes of a class's session. All figures are common practice, from memory.

use crate::garden::{Crop, SeedSize};
use crate::plan::StepKind;
use crate::units::Minutes;

use super::amount::Need;

/// Setting up, and washing hands at the end.
pub const SET_UP: Minutes = Minutes(10.0);

/// Minutes that each class needs for a step when the grade's `children` share the work: the
/// setting up, and each child's part of the seeds, pots or plants, one after the other.
/// Steps that take no session (hardening, curing) take no minutes.
#[must_use]
pub fn minutes(step: StepKind, crop: &Crop, need: &Need, children: u32) -> Minutes {
    let (items, each) = match step {
        StepKind::Sow if need.flats_sown > 0 => (need.seeds, 0.4),
        StepKind::Sow => (need.seeds, by_hand(crop.seed_size)),
        StepKind::PotUp => (need.potted(), 1.5),
        StepKind::PlantOut => (need.plants, 1.5),
        StepKind::Thin => (need.plants, 0.2),
        StepKind::Pick => (need.plants, 0.5),
        StepKind::Harden | StepKind::Cure => return Minutes(0.0),
    };
    let per_child = f64::from(items) / f64::from(children.max(1));
    SET_UP + Minutes(per_child * each)
}

/// Minutes to sow one seed in the bed: tiny seed is strewn, large seed is set singly.
fn by_hand(size: SeedSize) -> f64 {
    match size {
        SeedSize::Tiny => 0.05,
        SeedSize::Medium => 0.1,
        SeedSize::Large => 0.2,
    }
}
