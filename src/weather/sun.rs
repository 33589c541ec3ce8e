//! The sun: day length and radiation above the atmosphere.
//! Source: Allen, R.G., Pereira, L.S., Raes, D. and Smith, M. 1998. Crop evapotranspiration.
//! FAO Irrigation and Drainage Paper 56 (FAO56), chapter 3.

use std::f64::consts::{PI, TAU};

use crate::units::{Hours, Latitude, Radiation};

/// The solar constant in MJ/m2 per minute (FAO56, under equation 21).
const SOLAR_CONSTANT: f64 = 0.0820;

/// The sun's declination in radians on day `day_of_year` (1 to 366): FAO56 equation 24.
#[must_use]
pub fn declination(day_of_year: u32) -> f64 {
    0.409 * (year_angle(day_of_year) - 1.39).sin()
}

/// How much nearer than on average the sun is, squared (about 0.967 to 1.033), on day
/// `day_of_year`: FAO56 equation 23.
#[must_use]
pub fn inverse_relative_distance(day_of_year: u32) -> f64 {
    1.0 + 0.033 * year_angle(day_of_year).cos()
}

/// The angle through which the sun turns from noon to sunset, in radians: FAO56 equation 25.
/// 0 where the sun does not rise, pi where it does not set.
#[must_use]
pub fn sunset_hour_angle(latitude: Latitude, day_of_year: u32) -> f64 {
    let cosine = -latitude.0.to_radians().tan() * declination(day_of_year).tan();
    cosine.clamp(-1.0, 1.0).acos()
}

/// Hours of daylight on day `day_of_year` (1 to 366): FAO56 equation 34. It takes the sun as
/// a point without refraction, so almanacs print 6 to 11 minutes more up to 45 degrees from the
/// equator, and up to 22 at 60; and its plain sine is off by up to 9 and 17 minutes more there,
/// most of all in October.
#[must_use]
pub fn day_length(latitude: Latitude, day_of_year: u32) -> Hours {
    Hours(24.0 / PI * sunset_hour_angle(latitude, day_of_year))
}

/// Radiation of one day on level ground if there were no air: FAO56 equation 21.
#[must_use]
pub fn extraterrestrial_radiation(latitude: Latitude, day_of_year: u32) -> Radiation {
    let north = latitude.0.to_radians();
    let sun = declination(day_of_year);
    let sunset = sunset_hour_angle(latitude, day_of_year);
    let minutes_overhead = 24.0 * 60.0 / PI
        * (sunset * north.sin() * sun.sin() + north.cos() * sun.cos() * sunset.sin());
    Radiation(SOLAR_CONSTANT * inverse_relative_distance(day_of_year) * minutes_overhead)
}

/// The part of the year that is over, as an angle. FAO56 divides by 365 in leap years too.
fn year_angle(day_of_year: u32) -> f64 {
    TAU / 365.0 * f64::from(day_of_year)
}
