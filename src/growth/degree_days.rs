//! Degree-days of one day, by the average of the extremes or by a single sine.

use crate::garden::DegreeDayMethod;
use crate::units::{Celsius, DegreeDays};

/// Degree-days of a day with the extremes `tmin` and `tmax`, above `base` and up to `upper`.
#[must_use]
pub fn degree_days(
    method: DegreeDayMethod,
    base: Celsius,
    upper: Option<Celsius>,
    tmin: Celsius,
    tmax: Celsius,
) -> DegreeDays {
    todo!("{method:?} {base} {upper:?} {tmin} {tmax}")
}
