//! Where a planting stands: beds in the order of their names, and neighbouring strips of a bed as
//! one place.

use crate::garden::Garden;
use crate::plan::Place;

use super::order::natural;

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

/// Names of beds, each once, in their order.
#[must_use]
pub fn in_order<'p>(ids: impl IntoIterator<Item = &'p str>) -> Vec<&'p str> {
    let mut ids: Vec<&str> = ids.into_iter().collect();
    ids.sort_by(|a, b| natural(a, b));
    ids.dedup();
    ids
}

/// The beds of some places, each once.
#[must_use]
pub fn beds<'p>(given: impl IntoIterator<Item = &'p Place>) -> Vec<&'p str> {
    in_order(given.into_iter().map(|place| place.bed.as_str()))
}

/// True if a place is all of its bed.
#[must_use]
pub fn is_whole_bed(garden: &Garden, place: &Place) -> bool {
    let mut beds = garden.beds.iter();
    beds.any(|bed| bed.id == place.bed && bed.strips() == place.strips)
}
