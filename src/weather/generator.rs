//! Weather years from monthly means: seeded, the same on every run.

use crate::units::{Celsius, Millimetres};

use super::Record;

/// Monthly means of a place, January first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Monthly {
    /// Mean of daily lowest temperatures.
    pub tmin: [Celsius; 12],
    /// Mean of daily highest temperatures.
    pub tmax: [Celsius; 12],
    /// Rain in the month.
    pub rain: [Millimetres; 12],
    /// Days with rain in the month.
    pub rain_days: [f64; 12],
}

/// Generates `years` whole calendar years, the first labelled `first_year`.
#[must_use]
pub fn generate(monthly: &Monthly, first_year: i32, years: u32, seed: u64) -> Record {
    todo!("{monthly:?} {first_year} {years} {seed}")
}
