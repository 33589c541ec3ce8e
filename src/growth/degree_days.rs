//! Degree-days of one day, by the average of the extremes or by a single sine.

use std::f64::consts::{FRAC_PI_2, PI};

use crate::garden::DegreeDayMethod;
use crate::units::{Celsius, DegreeDays};

/// Degree-days of a day with the extremes `tmin` and `tmax`, above `base` and up to `upper`.
///
/// `Average`: both extremes are held between base and upper limit before they are averaged
/// (the 86/50 rule of maize growers; UWEX-GDD: Waushara Argus, 25 April 2018).
/// `Sine`: the area under a sine through the extremes, above the base and under a horizontal
/// cut-off (BE1969: Baskerville, G.L. and Emin, P. 1969, Ecology 50(3):514-517).
#[must_use]
pub fn degree_days(
    method: DegreeDayMethod,
    base: Celsius,
    upper: Option<Celsius>,
    tmin: Celsius,
    tmax: Celsius,
) -> DegreeDays {
    let sum = match method {
        DegreeDayMethod::Average => {
            let held = |t: Celsius| {
                let t = t.max(base);
                upper.map_or(t, |u| t.min(u))
            };
            ((held(tmin) + held(tmax)) * 0.5 - base).0.max(0.0)
        }
        DegreeDayMethod::Sine => {
            let lost = upper.map_or(0.0, |u| area_above(u, tmin, tmax));
            (area_above(base, tmin, tmax) - lost).max(0.0)
        }
    };
    DegreeDays(sum)
}

/// The area between a sine through the day's extremes and a threshold, where it is above.
fn area_above(threshold: Celsius, tmin: Celsius, tmax: Celsius) -> f64 {
    let mean = ((tmin + tmax) * 0.5 - threshold).0;
    if tmin >= threshold {
        mean
    } else if tmax <= threshold {
        0.0
    } else {
        let half_range = (tmax - tmin).0 / 2.0;
        let crossing = (-mean / half_range).asin();
        (mean * (FRAC_PI_2 - crossing) + half_range * crossing.cos()) / PI
    }
}
