//! What stands in the beds when the plan begins and is for no ingredient, such as a cover crop: on its strips
//! until it is cleared.

use crate::calendar::{Date, plus_days};

use super::at::BedAt;
use super::strips::Strips;

/// Something that stands on strips of a bed for no ingredient.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Former {
    /// What the file calls it.
    pub name: String,
    /// Its family.
    pub family: String,
    /// The bed.
    pub bed: BedAt,
    /// Its strips.
    pub strips: Strips,
    /// The day on which it is cut, pulled or dug in.
    pub cleared: Date,
    /// Days from then until something new may come.
    pub rest_days: u32,
}

impl Former {
    /// The first day on which something new may come.
    #[must_use]
    pub fn free_from(&self) -> Date {
        plus_days(self.cleared, i64::from(self.rest_days))
    }
}
