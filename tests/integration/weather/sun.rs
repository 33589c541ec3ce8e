//! Sun and day length at their limits.

use tureen::units::Latitude;
use tureen::weather::sun::{day_length, extraterrestrial_radiation};

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "found {found}, expected {expected}"
    );
}

#[test]
fn the_south_has_what_the_north_lacks() {
    for day in 1..=366 {
        near(day_length(Latitude(0.0), day).0, 12.0, 1e-9);
        for latitude in [10.0, 35.0, 50.0, 66.0, 80.0] {
            let north = day_length(Latitude(latitude), day).0;
            let south = day_length(Latitude(-latitude), day).0;
            near(north + south, 24.0, 1e-9);
        }
    }
    assert!(day_length(Latitude(-40.0), 355).0 > 14.8);
}

#[test]
fn polar_day_and_night() {
    near(day_length(Latitude(75.0), 172).0, 24.0, 1e-9);
    near(day_length(Latitude(75.0), 355).0, 0.0, 1e-9);
    near(extraterrestrial_radiation(Latitude(75.0), 355).0, 0.0, 1e-9);
    near(day_length(Latitude(90.0), 172).0, 24.0, 1e-9);
}
