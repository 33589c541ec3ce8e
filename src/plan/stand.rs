//! Strips of a bed over days with what stands on them: all that rules, pictures and ways out know of a
//! place. Whether one planting stands there or several that share the strips is decided where stands are made.

use crate::garden::{BedAt, Strips};

use super::at::PlantingAt;

/// Neighbouring strips of a bed, taken together by plantings for some days.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stand {
    /// The bed.
    pub bed: BedAt,
    /// The strips.
    pub strips: Strips,
    /// First and last day number on which they are taken, a week to clear them included; the last may lie
    /// beyond the plan's span.
    pub days: (usize, usize),
    /// What stands there, at least one.
    pub plantings: Vec<PlantingAt>,
}

impl Stand {
    /// True if it is taken on a day.
    #[must_use]
    pub fn is_on(&self, day: usize) -> bool {
        self.days.0 <= day && day <= self.days.1
    }

    /// True if a planting is among those that stand there.
    #[must_use]
    pub fn holds(&self, planting: PlantingAt) -> bool {
        self.plantings.contains(&planting)
    }

    /// True if both take a strip of the same bed, at whatever time.
    #[must_use]
    pub fn shares_strips(&self, other: &Self) -> bool {
        self.bed == other.bed && self.strips.meets(other.strips)
    }
}
