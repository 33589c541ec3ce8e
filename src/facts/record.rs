//! What a garden's weather record tells before any plan is made: its years and its light frosts.

use crate::garden::Garden;
use crate::weather::cold_days::{ColdDays, FREEZING};

/// The weather years through which a garden's plans are grown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GrownThrough {
    /// How many there are.
    pub years: usize,
    /// The first and the last of them, where a thermometer saw them.
    pub measured: Option<(i32, i32)>,
}

/// The weather years of a garden.
#[must_use]
pub fn grown_through(garden: &Garden) -> GrownThrough {
    let years = garden.weather.years(garden.horizon());
    let ends = years.first().zip(years.last());
    let measured = ends.filter(|_| !garden.weather.is_generated());
    GrownThrough {
        years: years.len(),
        measured: measured.map(|(first, last)| (first.label, last.label)),
    }
}

/// The light frosts of a garden's place.
#[must_use]
pub fn light_frosts(garden: &Garden) -> ColdDays {
    ColdDays::frosts(&garden.weather, garden.latitude, FREEZING)
}
