//! Where a planting stands, in words.

use crate::facts::places::{is_whole_bed, places};
use crate::garden::Garden;
use crate::plan::Place;

use crate::words::list;

/// `bed 2`, `beds 7 and 8`.
#[must_use]
pub fn beds<T: AsRef<str>>(ids: &[T]) -> String {
    let word = if ids.len() == 1 { "bed" } else { "beds" };
    let ids: Vec<&str> = ids.iter().map(AsRef::as_ref).collect();
    format!("{word} {}", list(&ids))
}

/// `bed 3 (strips 1 to 6) and all of bed 4`.
#[must_use]
pub fn in_words(garden: &Garden, given: &[Place]) -> String {
    let one = |p: &Place| match p.strips {
        _ if is_whole_bed(garden, p) => format!("all of bed {}", p.bed),
        1 => format!("bed {} (strip {})", p.bed, p.first_strip),
        n => format!(
            "bed {} (strips {} to {})",
            p.bed,
            p.first_strip,
            p.first_strip + n - 1
        ),
    };
    list(&places(given).iter().map(one).collect::<Vec<_>>())
}
