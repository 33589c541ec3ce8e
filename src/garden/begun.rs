//! What has begun before the plan does: where it is, how far it has come, and since when. It is given: the
//! plan takes it up where it is, and the checker asks nothing about the days before `Garden::as_of`.

use crate::calendar::Date;

use super::at::BedAt;
use super::crop::IndoorStart;
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
    /// On the seedling shelf, until it is planted out.
    Shelf {
        /// How many seedlings there are.
        seedlings: u32,
    },
}

/// The last step that was done to it. What is on the shelf was sown or potted up, what is in a bed was sown
/// or planted out there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reached {
    /// Seed went into flats, or seed, pieces, sets or cloves into the bed.
    Sown,
    /// Seedlings went into pots.
    PottedUp {
        /// The day on which they had been sown.
        sown: Date,
    },
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

/// Seedlings that stand on the shelf when the plan begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Seedlings {
    /// How many there are.
    pub count: u32,
    /// The day on which they were sown.
    pub sown: Date,
    /// The day on which they were potted up, if they were.
    pub potted_up: Option<Date>,
}

impl Seedlings {
    /// The day since which they have stood as they stand.
    #[must_use]
    pub fn since(&self) -> Date {
        self.potted_up.unwrap_or(self.sown)
    }

    /// The flats that they take: a cell each, or a pot each once they are potted up.
    #[must_use]
    pub fn flats(&self, indoor: &IndoorStart) -> u32 {
        let in_pots = self.potted_up.and(indoor.pots_per_flat);
        let each = in_pots.unwrap_or(indoor.cells_per_flat);
        self.count.div_ceil(each.max(1))
    }
}

impl Begun {
    /// True if it grows from plants, not from seed in its place.
    #[must_use]
    pub fn as_plants(&self) -> bool {
        match self.reached {
            Reached::Sown => false,
            Reached::PottedUp { .. } | Reached::PlantedOut => true,
        }
    }

    /// The bed in which it stands, and its strips; `None` if it is on the shelf.
    #[must_use]
    pub fn in_bed(&self) -> Option<(BedAt, Strips)> {
        match self.spot {
            Spot::Bed { bed, strips } => Some((bed, strips)),
            Spot::Shelf { .. } => None,
        }
    }

    /// The seedlings, if it is on the shelf.
    #[must_use]
    pub fn on_shelf(&self) -> Option<Seedlings> {
        let Spot::Shelf { seedlings: count } = self.spot else {
            return None;
        };
        let (sown, potted_up) = match self.reached {
            Reached::PottedUp { sown } => (sown, Some(self.since)),
            Reached::Sown | Reached::PlantedOut => (self.since, None),
        };
        Some(Seedlings {
            count,
            sown,
            potted_up,
        })
    }
}
