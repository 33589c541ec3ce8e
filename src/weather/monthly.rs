//! Monthly means of a place, from which weather years are generated.

use crate::units::{Celsius, Millimetres};

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
