//! Amounts: plants in a block of strips, seeds that make them sure, flats, kilograms.

use crate::garden::{Crop, Ingredient, Method};
use crate::units::{Kilograms, Metres};

/// Share of what comes up that children lose: trodden on, pulled, drowned (common practice:
/// 10 to 25 in 100).
pub const CHILD_LOSS: f64 = 0.15;

/// The smallest piece of bed in which a crop's rows come out whole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Block {
    /// Strips of bed length.
    pub strips: u32,
    /// Whole plants in it.
    pub plants: u32,
}

impl Block {
    /// The block of a crop in a bed of a given width: rows run across the bed at the crop's
    /// spacing. `None` if the bed is too narrow for one plant.
    #[must_use]
    pub fn of(crop: &Crop, width: Metres) -> Option<Self> {
        todo!("{crop:?} {width}")
    }
}

/// What a number of kept plants takes and gives.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Need {
    /// Plants that stand in the bed.
    pub plants: u32,
    /// Seeds (pieces, bought plants) to have.
    pub seeds: u32,
    /// Flats on the shelf from sowing until potting up (or planting out); 0 if not indoor.
    pub flats_sown: u32,
    /// Flats on the shelf after potting up; equal to `flats_sown` where nothing is potted up.
    pub flats_kept: u32,
    /// Usable harvest in a poor year, of one pick.
    pub low: Kilograms,
    /// Usable harvest in an ordinary year, of one pick.
    pub expected: Kilograms,
}

/// What `plants` plants of an ingredient take and give when grown by `method` by `children`.
#[must_use]
pub fn need(ingredient: &Ingredient, method: Method, children: u32, plants: u32) -> Need {
    todo!("{ingredient:?} {method:?} {children} {plants}")
}
