//! What has begun before the plan does: where it is, how far it has come, and since when. It is given: the
//! plan takes it up where it is, and the checker asks nothing about the days before `Garden::as_of`.

use crate::calendar::Date;

use super::at::BedAt;
use super::strips::Strips;

/// Where something that has begun is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// On strips of a bed, where it stays.
    Bed {
        /// The bed.
        bed: BedAt,
        /// Its strips.
        strips: Strips,
    },
}

/// The last step that was done to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reached {
    /// Seed, pieces, sets or cloves went into the bed.
    Sown,
    /// Plants went into the bed.
    PlantedOut,
}

/// Something that has begun and serves an ingredient.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Begun {
    /// Where it is.
    pub spot: Spot,
    /// How far it has come.
    pub reached: Reached,
    /// The day on which that step was done.
    pub since: Date,
}

impl Begun {
    /// True if it grows from plants, not from seed in its place.
    #[must_use]
    pub fn as_plants(&self) -> bool {
        match self.reached {
            Reached::Sown => false,
            Reached::PlantedOut => true,
        }
    }

    /// The bed in which it stands, and its strips.
    #[must_use]
    pub fn in_bed(&self) -> (BedAt, Strips) {
        match self.spot {
            Spot::Bed { bed, strips } => (bed, strips),
        }
    }
}
