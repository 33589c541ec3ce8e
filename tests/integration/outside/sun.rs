//! Sun and day length.

use tureen::units::Latitude;
use tureen::weather::sun::{
    day_length, declination, extraterrestrial_radiation, inverse_relative_distance,
    sunset_hour_angle,
};

use super::check::Check;

/// Example 8, page 80, and example 9, page 83: latitude 20 south, 3 September.
const SOUTH: Latitude = Latitude(-20.0);
const SEPTEMBER: u32 = 246;

/// Example 18, page 113: Uccle, 50 degrees 48 minutes north, 6 July.
const UCCLE: Latitude = Latitude(50.8);
const JULY: u32 = 187;

/// Day, hours of daylight at 40 north.
const FORTY_NORTH: [(u32, f64); 3] = [(80, 11.97), (172, 14.84), (355, 9.16)];

/// A figure of one of the work's examples.
fn example(what: &str, found: f64, printed: f64, tolerance: f64) -> Check {
    Check::number(what, found, printed, tolerance, "FAO56")
}

fn hours(latitude: Latitude, day: u32) -> f64 {
    day_length(latitude, day).0
}

fn above_the_air(latitude: Latitude, day: u32) -> f64 {
    extraterrestrial_radiation(latitude, day).0
}

/// The angles of example 8.
fn angles() -> [Check; 3] {
    let (distance, sun) = (inverse_relative_distance(SEPTEMBER), declination(SEPTEMBER));
    let sunset = sunset_hour_angle(SOUTH, SEPTEMBER);
    [
        example("example 8: distance of the sun", distance, 0.985, 5e-4),
        example("example 8: declination", sun, 0.120, 5e-4),
        example("example 8: sunset angle", sunset, 1.527, 5e-4),
    ]
}

/// Radiation above the air and hours of daylight.
fn days() -> [Check; 5] {
    let radiation = above_the_air(SOUTH, SEPTEMBER);
    // Lyon, 45 degrees 43 minutes north, in the middle of July.
    let lyon = above_the_air(Latitude(45.72), 196);
    // The longer value is that of a published implementation; the work prints 11.7.
    let daylight = hours(SOUTH, SEPTEMBER);
    [
        example("example 8: radiation", radiation, 32.2, 0.05),
        example("example 9: daylight", daylight, 11.66559, 5e-6),
        example(
            "example 18: radiation",
            above_the_air(UCCLE, JULY),
            41.09,
            0.005,
        ),
        example("example 18: daylight", hours(UCCLE, JULY), 16.1, 0.05),
        example("example 20: radiation", lyon, 40.6, 0.05),
    ]
}

pub fn checks() -> Vec<Check> {
    let forty_north = FORTY_NORTH.map(|(day, expected)| {
        let what = format!("hours of daylight at 40 N on day {day}");
        let found = hours(Latitude(40.0), day);
        Check::number(&what, found, expected, 0.005, "FAO56-EQ34")
    });
    let examples = angles().into_iter().chain(days());
    examples.chain(forty_north).collect()
}
