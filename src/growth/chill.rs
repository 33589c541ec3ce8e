//! Cold that makes young plants flower too soon: the day on which a spell of it is full.

use crate::garden::{Chill, Crop};
use crate::weather::Daily;

use super::spells::Spells;

/// Sums of many days are compared with this much forgiveness, so that a spell of the limit's own warmth is not
/// under it.
const ROUNDING: f64 = 1e-7;

/// The cold spells of a crop in a weather year.
#[derive(Debug, Clone)]
pub struct Chilling {
    spells: Spells,
    within: usize,
}

impl Chilling {
    /// Of a crop in a weather year; `None` if cold does not make it flower.
    #[must_use]
    pub fn of(crop: &Crop, days: &[Daily]) -> Option<Self> {
        let Chill {
            below,
            days: length,
            within,
        } = crop.chill?;
        let least = below.0 - ROUNDING;
        Some(Self {
            spells: Spells::of_mean(days, length, |sum, length| sum < least * length),
            within: within as usize,
        })
    }

    /// The day on which cold has made what is up, or planted, since a day flower.
    #[must_use]
    pub fn ends(&self, up: usize) -> Option<usize> {
        self.spells
            .first(up, 0)
            .filter(|day| *day <= up + self.within)
    }
}
