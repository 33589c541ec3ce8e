//! The mark of a garden, by which a saved plan knows whether it is the one for which it was made.

use crate::checksum::digits;
use crate::garden::Garden;

/// A checksum of all that a garden is, its season apart: that is in the plan. Another version of the program may name its parts
/// otherwise: then it counts as changed.
pub fn mark(garden: &Garden) -> String {
    match &garden.season {
        Some(season) => season.made_for.clone(),
        None => digits(format!("{garden:?}").as_bytes()),
    }
}
