//! Days to come up, read from the published table, and soil temperature.

use tureen::garden::Germination;
use tureen::growth::germination::{days_to_emerge, least_days, rate};
use tureen::growth::soil::soil_temperatures;
use tureen::units::Celsius;
use tureen::weather::WeatherYear;

use super::crops;

/// Columns of the table by temperature.
fn table(columns: &[(usize, f64)]) -> Germination {
    let mut days = [None; 9];
    for (temperature, d) in columns {
        days[temperature / 5] = Some(*d);
    }
    Germination::Table(days)
}

#[track_caller]
fn reads(germination: &Germination, at: f64, days: Option<f64>) {
    let found = days_to_emerge(germination, Celsius(at));
    match (found, days) {
        (Some(found), Some(days)) => assert!((found - days).abs() < 1e-9, "{at} C: {found}"),
        _ => assert_eq!(found, days, "{at} C"),
    }
}

// The figures of the next four tests: Harrington, J.F. and Minges, P.A. 1954, Vegetable seed
// germination, University of California (HM1954), as reprinted.

#[test]
fn tomato_at_the_columns_of_the_table() {
    let days = [
        (10, 43.0),
        (15, 14.0),
        (20, 8.0),
        (25, 6.0),
        (30, 6.0),
        (35, 9.0),
    ];
    let tomato = table(&days);
    for (temperature, d) in days {
        reads(&tomato, temperature as f64, Some(d));
    }
    for outside in [-3.0, 0.0, 5.0, 9.9, 35.1, 40.0, 44.0, 60.0] {
        reads(&tomato, outside, None);
    }
    assert_eq!(least_days(&tomato), Some(6.0));
}

#[test]
fn lettuce_fails_in_heat() {
    let lettuce = table(&[
        (0, 49.0),
        (5, 15.0),
        (10, 7.0),
        (15, 4.0),
        (20, 3.0),
        (25, 2.0),
        (30, 3.0),
    ]);
    reads(&lettuce, 25.0, Some(2.0));
    reads(&lettuce, 30.0, Some(3.0));
    reads(&lettuce, 35.0, None);
    reads(&lettuce, 31.0, None);
    reads(&lettuce, 0.0, Some(49.0));
}

#[test]
fn spinach_between_columns() {
    let spinach = table(&[(10, 12.0), (15, 7.0), (20, 6.0), (25, 5.0), (30, 6.0)]);
    reads(&spinach, 10.0, Some(12.0));
    reads(&spinach, 11.0, Some(11.0));
    reads(&spinach, 29.0, Some(5.8));
}

#[test]
fn pepper_on_a_straight_line() {
    // Half way between 13 days at 20 C and 8 at 25 C.
    let pepper = table(&[(15, 25.0), (20, 13.0), (25, 8.0), (30, 8.0), (35, 9.0)]);
    reads(&pepper, 22.5, Some(10.5));
    assert!((rate(&pepper, Celsius(22.5)) - 1.0 / 10.5).abs() < 1e-12);
    assert_eq!(rate(&pepper, Celsius(12.0)), 0.0);
}

#[test]
fn a_range_is_proportional_to_warmth() {
    let range = Germination::Range {
        min: Celsius(5.0),
        optimum: Celsius(20.0),
        max: Celsius(30.0),
        days: 6.0,
    };
    reads(&range, 5.0, None);
    reads(&range, 10.0, Some(18.0)); // a third of the warmth, three times the days
    reads(&range, 20.0, Some(6.0));
    reads(&range, 30.0, Some(6.0));
    reads(&range, 30.1, None);
}

#[test]
fn soil_follows_a_week_of_air() {
    let lead = [crops::day(0.0, 4.0); 14];
    let days = [crops::day(7.0, 11.0); 10];
    let with = WeatherYear {
        label: 2027,
        lead: &lead,
        days: &days,
    };
    let soil = soil_temperatures(&with, Celsius(0.0));
    assert_eq!(soil.len(), 10);
    assert!((soil[0].0 - 3.0).abs() < 1e-9); // six days of 2 C and one of 9 C
    assert!((soil[5].0 - 8.0).abs() < 1e-9); // one of 2 C and six of 9 C
    assert!((soil[6].0 - 9.0).abs() < 1e-9);
    let without = WeatherYear { lead: &[], ..with };
    let warmer = soil_temperatures(&without, Celsius(1.5));
    assert!(warmer.iter().all(|t| (t.0 - 10.5).abs() < 1e-9));
}
