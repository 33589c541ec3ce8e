//! Days to come up, read from a table, and soil temperature.

use tureen::garden::Germination;
use tureen::growth::germination::{days_to_emerge, least_days, median_up, rate};
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

#[test]
fn between_the_columns_on_a_straight_line_and_beyond_them_never() {
    let pepper = table(&[(15, 25.0), (20, 13.0), (25, 8.0), (30, 8.0), (35, 9.0)]);
    reads(&pepper, 21.0, Some(12.0));
    reads(&pepper, 34.0, Some(8.8));
    assert!((rate(&pepper, Celsius(22.5)) - 1.0 / 10.5).abs() < 1e-12);
    for outside in [-3.0, 0.0, 5.0, 14.9, 35.1, 40.0, 44.0, 60.0] {
        reads(&pepper, outside, None);
        assert_eq!(rate(&pepper, Celsius(outside)), 0.0);
    }
    assert_eq!(least_days(&pepper), Some(8.0));
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

/// Of the years in which it comes up; of two in the middle the later.
#[test]
fn the_median_day_leaves_out_years_without_any() {
    for (years, median) in [
        (&[][..], None),
        (&[None, None], None),
        (&[Some(9), None, None, None], Some(9)),
        (&[Some(30), Some(9)], Some(30)),
        (&[Some(30), None, Some(9), Some(12)], Some(12)),
        (&[Some(4), Some(2), Some(3), Some(1)], Some(3)),
    ] {
        assert_eq!(median_up(years.iter().copied()), median, "{years:?}");
    }
}

/// A row of cabbage: 15 days at 10 C, nothing printed below; published least 4.4 C.
#[test]
fn below_the_first_printed_cell_the_rate_falls_on_a_line() {
    let mut days = [None; 9];
    (days[2], days[3]) = (Some(15.0), Some(9.0));
    let least = Celsius(4.4);
    let cabbage = Germination::Extended { days, least };
    let up = |t| days_to_emerge(&cabbage, Celsius(t));
    // Half way from 4.4 to 10 C half the rate: twice the days.
    assert!((up(7.2).unwrap() - 30.0).abs() < 1e-9);
    assert!((up(5.8).unwrap() - 60.0).abs() < 1e-9);
    assert_eq!((up(10.0), up(12.5)), (Some(15.0), Some(12.0)));
    // Nothing at the least, below it, and above the last printed cell.
    for nothing in [4.4, 4.0, 0.0, -3.0, 15.1, 20.0] {
        assert_eq!(up(nothing), None, "{nothing}");
    }
    assert_eq!(least_days(&cabbage), Some(9.0));
    let none = Germination::Extended {
        days: [None; 9],
        least,
    };
    assert_eq!(days_to_emerge(&none, Celsius(7.0)), None);
    assert_eq!(least_days(&none), None);
}
