//! Beds by their names.

use crate::plan::Place;
use crate::report::words::{list, natural};

/// `bed 2`, `beds 7 and 8`, each once, in the order of their names.
pub fn beds<'a>(ids: impl Iterator<Item = &'a str>) -> String {
    let mut ids: Vec<&str> = ids.collect();
    ids.sort_by(|a, b| natural(a, b));
    ids.dedup();
    named(&ids)
}

/// `bed 2`, `beds 7 and 8`.
pub fn named(ids: &[&str]) -> String {
    let word = if ids.len() == 1 { "bed" } else { "beds" };
    format!("{word} {}", list(ids))
}

/// The beds of a planting.
pub fn beds_of(places: &[Place]) -> String {
    beds(places.iter().map(|p| p.bed.as_str()))
}
