//! The caution about raw manure, with the dates that follow from the first pick of a plan.

use crate::facts::manure::last_raw_manure;

use crate::words::view::View;

/// The caution for a plan; `None` if nothing is picked.
pub(super) fn of(view: &View<'_>) -> Option<String> {
    let first_pick = view.first_pick()?;
    let (touching, above) = last_raw_manure(first_pick);
    let words = view.words;
    Some(format!(
        "Raw manure: use none. If it was spread all the same, organic farms let 120 days pass \
         before they pick what touches the soil, and 90 days else: before the first pick on {} \
         none after {}, or {}.",
        words.day(first_pick),
        words.day(touching),
        words.day(above)
    ))
}
