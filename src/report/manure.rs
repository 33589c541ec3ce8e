//! The caution about raw manure, with the dates that follow from the first pick of a plan.

use chrono::Days;

use crate::calendar::Date;
use crate::plan::{Plan, StepKind};

use super::words::Words;
use crate::facts::spans::span_of;

/// Days from working raw manure into the ground to a harvest that touches the soil.
/// Source: US Code of Federal Regulations, Title 7, section 205.203(c)(1).
const TOUCHING_SOIL: Days = Days::new(120);

/// The same for a harvest that does not touch the soil.
const ABOVE_SOIL: Days = Days::new(90);

/// The last days on which raw manure could have been worked in before a harvest that touches
/// the soil, and before one that does not.
#[must_use]
pub fn last_raw_manure(harvest: Date) -> (Date, Date) {
    (harvest - TOUCHING_SOIL, harvest - ABOVE_SOIL)
}

/// The caution for a plan; `None` if nothing is picked.
pub(super) fn of(plan: &Plan, words: Words) -> Option<String> {
    let plantings = plan.plantings.iter();
    let first_pick = plantings
        .filter_map(|p| span_of(p, StepKind::Pick))
        .map(|s| s.0)
        .min()?;
    let (touching, above) = last_raw_manure(first_pick);
    Some(format!(
        "Raw manure: use none. If it was spread all the same, organic farms let 120 days pass \
         before they pick what touches the soil, and 90 days else: before the first pick on {} \
         none after {}, or {}.",
        words.day(first_pick),
        words.day(touching),
        words.day(above)
    ))
}

/// Which compost counts as safe. Source: the same section, (c)(2): 131 to 170 F.
pub(super) const COMPOST: &str = "Compost counts as safe once it was hot, 55 to 77 C for 15 days with five turnings (three \
     days in a closed or aired vessel); ask whoever sells it.";
