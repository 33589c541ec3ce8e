//! Degree-days of a day by both methods, in Fahrenheit as the sources print them, and days
//! to a published sum.

use tureen::garden::DegreeDayMethod::{self, Average, Sine};
use tureen::garden::{Germination, Ripening};
use tureen::growth::degree_days::degree_days;
use tureen::growth::{CropSeason, Light};
use tureen::units::{Celsius, DegreeDays, Latitude};
use tureen::weather::WeatherYear;

use super::check::{Check, EXACT};
use super::ours::{day, fahrenheit};
use crate::growth_reference::crops;

/// (tmax, tmin), base, upper limit and degree-days, all in Fahrenheit degrees.
type Fahrenheit = ((f64, f64), f64, Option<f64>, f64, f64, &'static str);

const AVERAGE: [Fahrenheit; 9] = [
    ((70.0, 50.0), 50.0, None, 10.0, EXACT, "ISU-AGRON541"),
    // The most that one day can give under 86/50.
    ((110.0, 90.0), 50.0, Some(86.0), 36.0, EXACT, "ISU-AGRON541"),
    ((82.0, 56.0), 50.0, None, 19.0, EXACT, "MN-GDD"),
    ((74.0, 54.0), 53.0, None, 11.0, EXACT, "UCIPM-DD"), // a mean of 64 F
    ((90.0, 65.0), 50.0, Some(86.0), 25.5, EXACT, "UWEX-GDD"),
    ((72.0, 46.0), 50.0, Some(86.0), 11.0, EXACT, "UWEX-GDD"),
    ((63.0, 42.0), 50.0, Some(86.0), 6.5, EXACT, "UWEX-GDD"),
    ((87.0, 63.0), 50.0, Some(86.0), 24.5, EXACT, "OHIO-GDD"),
    ((90.0, 48.0), 50.0, Some(86.0), 18.0, EXACT, "SEED-86-50"),
];

const SINE: [Fahrenheit; 3] = [
    ((72.0, 44.0), 50.0, Some(88.0), 9.206, 5e-4, "BE1969"),
    ((60.0, 40.0), 50.0, Some(88.0), 3.183, 5e-4, "BE1969"),
    ((95.0, 55.0), 50.0, Some(88.0), 23.734, 5e-4, "BE1969"),
];

/// (tmin, tmax), base, upper limit and degree-days in Celsius, and the tolerance.
type InCelsius = ((f64, f64), f64, Option<f64>, f64, f64);

const SINE_CELSIUS: [InCelsius; 7] = [
    ((5.0, 20.0), 10.0, None, 3.7712, 5e-5),
    ((-3.0, 11.0), 4.4, None, 2.0318, 5e-5),
    ((15.0, 35.0), 10.0, Some(30.0), 13.9100, 5e-5),
    ((8.0, 34.0), 10.0, Some(30.0), 10.5606, 5e-5),
    // Wholly between the limits, wholly below, wholly above.
    ((12.0, 24.0), 10.0, None, 8.0, EXACT),
    ((0.0, 9.0), 10.0, None, 0.0, EXACT),
    ((31.0, 38.0), 10.0, Some(30.0), 20.0, EXACT),
];

fn of_fahrenheit(method: DegreeDayMethod, figure: &Fahrenheit) -> Check {
    let ((tmax, tmin), base, upper, expected, tolerance, source) = *figure;
    let found = degree_days(
        method,
        fahrenheit(base),
        upper.map(fahrenheit),
        fahrenheit(tmin),
        fahrenheit(tmax),
    );
    let what = format!("{method:?} of {tmax} and {tmin} F");
    Check::number(&what, found.0 * 1.8, expected, tolerance, source)
}

/// The days after 1 May until a sum in F-days is reached at a steady day.
fn days_to(sum: f64, base: f64, tmin: f64, tmax: f64) -> Option<f64> {
    let steady = crops::day(fahrenheit(tmin).0, fahrenheit(tmax).0);
    let days = vec![steady; 140];
    let horizon = crops::from(day(4, 27), &days);
    let mut crop = crops::plain();
    crop.germination = Germination::Table([Some(1.0); 9]);
    crop.ripening = Ripening {
        thermal_from_sowing: Some(DegreeDays(sum / 1.8)),
        base: fahrenheit(base),
        ..crop.ripening
    };
    let year = WeatherYear {
        label: 2026,
        lead: &[],
        days: &days,
    };
    let season = CropSeason::new(
        &crop,
        crops::open_ground(),
        &year,
        &Light::of(Latitude(45.0), horizon),
    );
    let sown = horizon.day_number(day(5, 1))?;
    Some((season.sown(sown).ripe? - sown) as f64)
}

pub fn checks() -> Vec<Check> {
    let average = AVERAGE.iter().map(|f| of_fahrenheit(Average, f));
    let sine = SINE.iter().map(|f| of_fahrenheit(Sine, f));
    let celsius = SINE_CELSIUS.map(|((tmin, tmax), base, upper, expected, tolerance)| {
        let found = degree_days(
            Sine,
            Celsius(base),
            upper.map(Celsius),
            Celsius(tmin),
            Celsius(tmax),
        );
        let what = format!("Sine of {tmin} and {tmax} C");
        Check::number(&what, found.0, expected, tolerance, "BE1969")
    });
    let mut checks: Vec<Check> = average.chain(sine).chain(celsius).collect();
    // 1,200 F-days at 15 a day are full on 20 July; 1,000 at 18 a day take 55.6 days.
    checks.push(Check::maybe(
        "days from 1 May to 1,200 F-days at 60 to 80 F above 55 F",
        days_to(1200.0, 55.0, 60.0, 80.0),
        Some(80.0),
        EXACT,
        "LYNDON-MET",
    ));
    checks.push(Check::maybe(
        "whole days to the 1,000 F-days that are left at 18 a day",
        days_to(1000.0, 50.0, 60.0, 76.0),
        Some(56.0),
        EXACT,
        "MN-GDD",
    ));
    checks
}
