//! Where a planting stands, as people read it: beds in the order of their names, and neighbouring strips
//! of a bed as one place.

use crate::garden::Garden;
use crate::plan::Place;

use super::words::{list, natural};

/// The places of a planting, none beside another.
#[must_use]
pub fn places(given: &[Place]) -> Vec<Place> {
    let mut sorted = given.to_vec();
    sorted.sort_by(|a, b| natural(&a.bed, &b.bed).then(a.first_strip.cmp(&b.first_strip)));
    let mut places: Vec<Place> = Vec::new();
    for place in sorted {
        match places.last_mut() {
            Some(last) if last.bed == place.bed && last.run().after() == place.run().first => {
                last.strips += place.strips;
            }
            _ => places.push(place),
        }
    }
    places
}

/// The beds of some places, each once.
#[must_use]
pub fn beds<'p>(given: impl IntoIterator<Item = &'p Place>) -> Vec<&'p str> {
    let mut beds: Vec<&str> = given.into_iter().map(|place| place.bed.as_str()).collect();
    beds.sort_by(|a, b| natural(a, b));
    beds.dedup();
    beds
}

/// `bed 3 (strips 1 to 6) and all of bed 4`.
#[must_use]
pub fn in_words(garden: &Garden, given: &[Place]) -> String {
    let whole = |p: &Place| {
        let mut beds = garden.beds.iter();
        beds.any(|b| b.id == p.bed && b.strips() == p.strips)
    };
    let one = |p: &Place| match p.strips {
        _ if whole(p) => format!("all of bed {}", p.bed),
        1 => format!("bed {} (strip {})", p.bed, p.first_strip),
        _ => format!(
            "bed {} (strips {} to {})",
            p.bed,
            p.first_strip,
            p.last_number()
        ),
    };
    list(&places(given).iter().map(one).collect::<Vec<_>>())
}
