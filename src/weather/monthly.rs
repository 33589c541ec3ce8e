//! Monthly means of a place, from which weather years are generated, and the dates of its frosts.

use crate::calendar::Date;
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
    /// When it freezes there, as far as that is known.
    pub frosts: FrostDates,
}

/// When it freezes at a place, as tables of freeze dates tell it. Frost is air of 0 C or less. Days are
/// dates of 2001, which has no leap day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct FrostDates {
    /// In half of the years it freezes once more after this day of spring.
    pub last: Option<Date>,
    /// In one year of ten it freezes once more after this one.
    pub late: Option<Date>,
    /// In half of the years it has frozen before this day of autumn.
    pub first: Option<Date>,
    /// In one year of ten it has frozen before this one.
    pub early: Option<Date>,
}
