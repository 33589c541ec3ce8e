//! One crop in one bed's microclimate through one weather year: when it comes up, ripens
//! and is gone, for any starting day.

use crate::calendar::Horizon;
use crate::garden::{Crop, Microclimate};
use crate::units::Latitude;
use crate::weather::WeatherYear;

/// Why nothing can be picked any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Loss {
    /// Killed by frost.
    Frost,
    /// Bolted in long days.
    Bolted,
    /// Past its time in the ground.
    Past,
}

/// What becomes of a planting; all days are day numbers of the plan's span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fate {
    /// The day on which it is up; the planting day itself for plants. `None`: never.
    pub up: Option<usize>,
    /// The first day on which it is ripe; `None` if not within the span or lost before.
    pub ripe: Option<usize>,
    /// The first day on which nothing can be picked any more, and why.
    pub gone: Option<(usize, Loss)>,
}

/// Sums and frosts of one crop, microclimate and weather year, from which fates are read.
#[derive(Debug, Clone)]
pub struct CropSeason {}

impl CropSeason {
    /// Prepares the sums, once per crop, microclimate and weather year.
    #[must_use]
    pub fn new(
        crop: &Crop,
        microclimate: Microclimate,
        year: &WeatherYear<'_>,
        latitude: Latitude,
        horizon: Horizon,
    ) -> Self {
        todo!("{crop:?} {microclimate:?} {year:?} {latitude} {horizon:?}")
    }

    /// The fate of seed (or pieces, sets, cloves) sown in the bed on day number `day`.
    #[must_use]
    pub fn sown(&self, day: usize) -> Fate {
        todo!("{day}")
    }

    /// The fate of plants set out in the bed on day number `day`.
    #[must_use]
    pub fn planted(&self, day: usize) -> Fate {
        todo!("{day}")
    }
}
