//! What to have at hand for a step (common practice).

use crate::garden::Method;
use crate::plan::StepKind;

/// What to bring; `None` where nothing is asked for beyond what is there every day.
pub(super) fn bring(method: Method, kind: StepKind) -> Option<&'static str> {
    match (kind, method) {
        (StepKind::Sow, Method::Indoor) => {
            Some("the seed, flats, seed-raising mix, labels with pencils, a fine watering can")
        }
        (StepKind::Sow, Method::Pieces | Method::Bought) => {
            Some("what is planted, trowels, a string line, labels, watering cans")
        }
        (StepKind::Sow, _) => Some("the seed, a string line, rakes, labels, a fine watering can"),
        (StepKind::PotUp, _) => Some("pots, potting mix, labels, a watering can"),
        (StepKind::PlantOut, _) => {
            Some("the plants, trowels, a string line, labels, watering cans")
        }
        (StepKind::Thin, _) => Some("blunt scissors, a bowl for what comes out, a watering can"),
        (StepKind::Pick, _) => Some("clean crates, a scale, clean hands; knives only for adults"),
        (StepKind::Harden | StepKind::Cure, _) => None,
    }
}
