//! Degree-days against published examples (in Fahrenheit, as printed) and against the area
//! under the sine itself.

use chrono::NaiveDate;
use proptest::prelude::*;
use tureen::garden::DegreeDayMethod::{self, Average, Sine};
use tureen::garden::{Germination, Ripening};
use tureen::growth::CropSeason;
use tureen::growth::degree_days::degree_days;
use tureen::units::{Celsius, DegreeDays, Latitude};
use tureen::weather::WeatherYear;

use super::crops;

/// A day in Fahrenheit, (tmax, tmin) as the sources print it, in Fahrenheit degree-days.
fn fahrenheit(method: DegreeDayMethod, base: f64, upper: Option<f64>, day: (f64, f64)) -> f64 {
    let celsius = |f: f64| Celsius((f - 32.0) / 1.8);
    let sum = degree_days(
        method,
        celsius(base),
        upper.map(celsius),
        celsius(day.1),
        celsius(day.0),
    );
    sum.0 * 1.8
}

fn celsius(method: DegreeDayMethod, base: f64, upper: Option<f64>, tmin: f64, tmax: f64) -> f64 {
    degree_days(
        method,
        Celsius(base),
        upper.map(Celsius),
        Celsius(tmin),
        Celsius(tmax),
    )
    .0
}

#[track_caller]
fn near(found: f64, expected: f64, tolerance: f64) {
    assert!(
        (found - expected).abs() <= tolerance,
        "found {found}, expected {expected}"
    );
}

#[test]
fn simple_average() {
    // Iowa State University, Agronomy 541, lesson 2b (ISU-AGRON541); Detroit Lakes crop
    // column (MN-GDD); University of California IPM, citrus table 1 (UCIPM-DD).
    near(fahrenheit(Average, 50.0, None, (70.0, 50.0)), 10.0, 1e-9);
    near(fahrenheit(Average, 50.0, None, (82.0, 56.0)), 19.0, 1e-9);
    near(fahrenheit(Average, 53.0, None, (74.0, 54.0)), 11.0, 1e-9);
    // The same Iowa page: 36 F-days is the most that one day can give under 86/50.
    let hottest = fahrenheit(Average, 50.0, Some(86.0), (110.0, 90.0));
    near(hottest, 36.0, 1e-9);
}

#[test]
fn average_substitutes_before_it_averages() {
    let rule = |day| fahrenheit(Average, 50.0, Some(86.0), day);
    // Waushara Argus, 25 April 2018, Calculating growing degree days (UWEX-GDD).
    near(rule((90.0, 65.0)), 25.5, 1e-9);
    near(rule((72.0, 46.0)), 11.0, 1e-9);
    near(rule((63.0, 42.0)), 6.5, 1e-9);
    // Karhoff, S. 2023, Ohio State University Extension (OHIO-GDD).
    near(rule((87.0, 63.0)), 24.5, 1e-9);
    // The rule and inputs of a seed house's definition page; 18 follows from them.
    near(rule((90.0, 48.0)), 18.0, 1e-9);
}

#[test]
fn single_sine() {
    // Formula of Baskerville and Emin 1969 (BE1969), from memory; the figures were computed
    // apart from this program.
    near(celsius(Sine, 10.0, None, 5.0, 20.0), 3.7712, 5e-5);
    // The substituted average counts the cold night as the base itself: (10 + 20)/2 - 10.
    near(celsius(Average, 10.0, None, 5.0, 20.0), 5.0, 1e-9);
    near(celsius(Sine, 4.4, None, -3.0, 11.0), 2.0318, 5e-5);
    near(celsius(Sine, 10.0, Some(30.0), 15.0, 35.0), 13.9100, 5e-5);
    near(celsius(Sine, 10.0, Some(30.0), 8.0, 34.0), 10.5606, 5e-5);
    near(
        fahrenheit(Sine, 50.0, Some(88.0), (72.0, 44.0)),
        9.206,
        5e-4,
    );
    near(
        fahrenheit(Sine, 50.0, Some(88.0), (60.0, 40.0)),
        3.183,
        5e-4,
    );
    near(
        fahrenheit(Sine, 50.0, Some(88.0), (95.0, 55.0)),
        23.734,
        5e-4,
    );
}

#[test]
fn single_sine_at_its_limits() {
    // Wholly between the thresholds it is the average; below, nothing; above, the most.
    near(celsius(Sine, 10.0, None, 12.0, 24.0), 8.0, 1e-9);
    near(celsius(Sine, 10.0, None, 0.0, 9.0), 0.0, 1e-9);
    near(celsius(Sine, 10.0, Some(30.0), 31.0, 38.0), 20.0, 1e-9);
    near(celsius(Sine, 10.0, None, 10.0, 10.0), 0.0, 1e-9);
}

#[test]
fn a_warmth_total_is_reached_on_the_published_day() {
    // Lyndon State College, meteorology notes, chapter 3: 1,200 F-days at 15 a day from
    // 1 May take 80 days, to 20 July.
    let to_celsius = |f: f64| (f - 32.0) / 1.8;
    let days = vec![crops::day(to_celsius(60.0), to_celsius(80.0)); 140];
    let horizon = crops::from(NaiveDate::from_ymd_opt(2027, 4, 26).unwrap(), &days);
    let mut crop = crops::plain();
    crop.germination = Germination::Table([Some(1.0); 9]);
    crop.ripening = Ripening {
        thermal_from_sowing: Some(DegreeDays(1200.0 / 1.8)),
        base: Celsius(to_celsius(55.0)),
        ..crop.ripening
    };
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let season = CropSeason::new(&crop, crops::open_ground(), &year, Latitude(45.0), horizon);
    let may = NaiveDate::from_ymd_opt(2027, 5, 1).unwrap();
    let fate = season.sown(horizon.day_number(may).unwrap());
    assert_eq!(
        fate.ripe.map(|d| horizon.date(d)),
        NaiveDate::from_ymd_opt(2027, 7, 20)
    );
}

proptest! {
    /// The closed form is the area under the sine, summed in many thin slices.
    #[test]
    fn single_sine_is_an_area(
        tmin in -10.0..30.0f64,
        range in 0.5..20.0f64,
        base in -2.0..15.0f64,
        above in 5.0..25.0f64,
    ) {
        let slices = 20_000;
        let upper = base + above;
        let area: f64 = (0..slices)
            .map(|k| {
                let angle = std::f64::consts::TAU * (f64::from(k) + 0.5) / f64::from(slices);
                let t = tmin + range / 2.0 * (1.0 + angle.sin());
                (t.min(upper) - base).max(0.0)
            })
            .sum::<f64>() / f64::from(slices);
        near(celsius(Sine, base, Some(upper), tmin, tmin + range), area, 1e-4);
    }
}
