//! What children share out in a step: seeds, pieces, plants.

use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind};

/// Something that is counted and handed out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thing {
    /// A seed.
    Seed,
    /// A piece, set or clove.
    SeedPiece,
    /// A plant that was bought.
    BoughtPlant,
    /// A plant that the school has raised.
    Plant,
}

impl Thing {
    /// What is sown or planted first, by the way in which it is grown.
    #[must_use]
    pub fn sown(method: Method) -> Self {
        match method {
            Method::Direct | Method::Indoor => Self::Seed,
            Method::Seedlings | Method::Growing | Method::Patch => Self::Seed,
            Method::Pieces => Self::SeedPiece,
            Method::Bought => Self::BoughtPlant,
        }
    }
}

/// What children share out in a step, and how many of it there are; `None` where nothing is
/// counted.
#[must_use]
pub fn shared_out(planting: &Planting, step: &Step) -> Option<(u32, Thing)> {
    let sown = Thing::sown(planting.method);
    match (step.kind, planting.method) {
        (StepKind::Sow, _) | (StepKind::PlantOut, Method::Bought) => Some((planting.seeds, sown)),
        (StepKind::PlantOut, _) => Some((planting.plants, Thing::Plant)),
        (
            StepKind::PotUp | StepKind::Harden | StepKind::Thin | StepKind::Pick | StepKind::Cure,
            _,
        ) => None,
    }
}
