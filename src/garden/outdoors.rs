//! What becomes of a crop under the open sky: the ground in which it is started, the thinning of its rows,
//! frost, long days, heat, and the cold that bulbs wait for.

use serde::Deserialize;

use crate::units::{Celsius, Hours};

/// What the ground must be for a start outdoors. No crop of the catalogue asks for more than 18 C,
/// since soil is not measured here but made of the air's mean (`growth::soil`).
#[derive(Debug, Clone, Copy, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ground {
    /// Nothing is sown in colder soil, and no piece, set or clove planted: the least that growers
    /// wait for.
    pub sow: Option<Celsius>,
    /// No plant is set out in colder soil.
    pub set_out: Option<Celsius>,
    /// Seed, or pieces, that are not up so many days after they went into the ground have rotted.
    /// `None` for sets and cloves, which wait for warmth, and for what is only planted.
    pub rots_after: Option<u32>,
}

/// When a row that was sown too close is thinned, in days after it has come up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thinning {
    /// The first day: before it, seedlings cannot be told apart or held.
    pub after: u32,
    /// The last day: after it, they have crowded each other.
    pub before: u32,
}

/// What frost does to standing leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FrostResponse {
    /// The planting is lost.
    Killed,
    /// The planting loses this many packet days and grows again.
    SetBack {
        /// Packet days lost, at the reference temperature.
        days: f64,
    },
}

/// When long days end a crop.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bolting {
    /// Day length that counts as long.
    pub day_length: Hours,
    /// Long days after emergence (or planting out) until it bolts.
    pub after_days: u32,
}

/// Heat that ends a crop of the cool season: it bolts, turns bitter, or makes no tubers.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spoils {
    /// The mean of a spell that is over this ends it.
    pub above: Celsius,
    /// How long a spell is, in days.
    pub days: u32,
}

/// Heat in which a crop sets no fruit.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NoFruit {
    /// A day whose lowest temperature is over this is too hot.
    pub nights: Celsius,
    /// So is one whose highest is over this.
    pub noons: Celsius,
    /// After so many of them in a row nothing sets.
    pub days: u32,
}

/// What a crop waits for until it makes bulbs.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bulbs {
    /// So many cold nights since it was planted, in a row or not.
    pub cold_nights: u32,
    /// A night is cold if its lowest temperature is below this.
    pub below: Celsius,
    /// After them, the length of a day that counts as long.
    pub day_length: Hours,
    /// Bulbs are ripe after so many long days, and not before.
    pub days: u32,
}
