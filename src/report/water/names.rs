//! Beds by their names.

use crate::plan::Place;
use crate::report::view::View;
use crate::report::words::list;

/// `bed 2`, `beds 7 and 8`, each once.
pub fn beds<'a>(view: &View<'_>, ids: impl Iterator<Item = &'a str> + Clone) -> String {
    let ids: Vec<&str> = view
        .garden
        .beds
        .iter()
        .map(|bed| bed.id.as_str())
        .filter(|id| ids.clone().any(|other| other == *id))
        .collect();
    named(&ids)
}

/// `bed 2`, `beds 7 and 8`.
pub fn named(ids: &[&str]) -> String {
    let word = if ids.len() == 1 { "bed" } else { "beds" };
    format!("{word} {}", list(ids))
}

/// The beds of a planting.
pub fn beds_of(view: &View<'_>, places: &[Place]) -> String {
    beds(view, places.iter().map(|p| p.bed.as_str()))
}
