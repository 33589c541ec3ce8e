//! Beds by their names.

use crate::facts::places;
use crate::plan::Place;
use crate::report::words::list;

/// `bed 2`, `beds 7 and 8`, each once, in the order of their names.
pub fn beds<'a>(ids: impl Iterator<Item = &'a str>) -> String {
    named(&places::in_order(ids))
}

/// `bed 2`, `beds 7 and 8`.
pub fn named(ids: &[&str]) -> String {
    let word = if ids.len() == 1 { "bed" } else { "beds" };
    format!("{word} {}", list(ids))
}

/// The beds of a planting.
pub fn beds_of(places: &[Place]) -> String {
    named(&places::beds(places))
}
