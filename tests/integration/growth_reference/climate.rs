//! What a place offers by weeks: means, counted years, the weeks for warm and cool crops, the
//! degree-days of the season.

use chrono::Datelike;
use tureen::calendar::days_between;
use tureen::growth::climate::{
    Spell, season_months, season_warmth, stretches, year_by_months, year_by_weeks,
};
use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::{Daily, Record};

use crate::support::day;
use crate::support::weather::{daily, steady_years};

const NORTH: Latitude = Latitude(44.0);
const SOUTH: Latitude = Latitude(-44.0);

#[test]
fn means_and_sums_are_those_of_the_days() {
    let days = days_between(day("2001-01-01"), day("2002-12-31")).map(|d| Daily {
        tmin: Celsius(f64::from(d.month())),
        tmax: Celsius(f64::from(d.month()) + 10.0),
        // 3 mm on every tenth of the month, half a millimetre on every eleventh, and on every twelfth the
        // whole millimetre that makes a wet day.
        rain: Millimetres(match d.day() {
            10 => 3.0,
            11 => 0.5,
            12 => 1.0,
            _ => 0.0,
        }),
    });
    let record = Record::new(day("2001-01-01"), days.collect(), false);
    let months = year_by_months(&record, NORTH);
    for (month, number) in months.iter().zip(1..) {
        assert_eq!(month.years, 2);
        assert!((month.low.0 - f64::from(number)).abs() < 1e-9);
        assert!((month.high.0 - f64::from(number) - 10.0).abs() < 1e-9);
        assert!((month.rain.0 - 4.5).abs() < 1e-9);
        assert!((month.wet_days - 2.0).abs() < 1e-9);
    }
    // Soil looks back six days: in June it is the mean of the air but for the first days.
    assert!((months[5].soil.0 - (6.0 + 5.0 + 2.0)).abs() < 0.2);
}

#[test]
fn frosts_are_counted_by_years_not_days() {
    // Light frost on two nights of the first week in one year, hard frost on one in another.
    let lowest = |d: tureen::calendar::Date| match (d.year(), d.ordinal()) {
        (2001, 2 | 3) => 0.0,
        (2002, 5) => -2.2,
        _ => 5.0,
    };
    let days = days_between(day("2001-01-01"), day("2004-12-31"));
    let days = days.map(|d| daily(lowest(d), 15.0)).collect();
    let record = Record::new(day("2001-01-01"), days, false);
    let weeks = year_by_weeks(&record, NORTH);
    let first = &weeks[0];
    assert_eq!(
        (first.frost_years, first.hard_frost_years, first.years),
        (2, 1, 4)
    );
    assert!(weeks[1..].iter().all(|w| w.frost_years == 0));
}

/// A week of the years of a place, with the figures that decide.
fn week(years: usize, frost: usize, cold: usize, warm_soil: usize, high: f64) -> Spell {
    let mild = steady_years(&[daily(8.0, 20.0)]);
    let spell = year_by_weeks(&mild, NORTH).remove(0);
    Spell {
        years,
        frost_years: frost,
        too_cold_years: cold,
        warm_soil_years: warm_soil,
        workable_years: years,
        high: Celsius(high),
        ..spell
    }
}

#[test]
fn warm_crops_want_rare_frost_and_warm_soil() {
    assert!(week(20, 2, 0, 11, 25.0).suits_warm_crops());
    assert!(
        !week(20, 3, 0, 11, 25.0).suits_warm_crops(),
        "frost in 3 of 20"
    );
    assert!(!week(20, 0, 0, 10, 25.0).suits_warm_crops(), "soil in half");
}

#[test]
fn cool_crops_want_soil_that_can_be_worked_and_mild_days() {
    assert!(week(20, 20, 10, 0, 24.0).suits_cool_crops());
    assert!(!week(20, 20, 11, 0, 20.0).suits_cool_crops(), "too cold");
    assert!(!week(20, 0, 0, 20, 24.1).suits_cool_crops(), "too warm");
    let frozen = Spell {
        workable_years: 10,
        ..week(20, 20, 0, 0, 10.0)
    };
    assert!(!frozen.suits_cool_crops());
}

#[test]
fn stretches_go_over_the_end_of_the_year() {
    let flags = |text: &str| text.chars().map(|c| c == 'x').collect::<Vec<bool>>();
    assert_eq!(stretches(&flags("..xx.x")), [(2, 3), (5, 5)]);
    assert_eq!(stretches(&flags("x...xx")), [(4, 0)]);
    assert_eq!(stretches(&flags("xxx")), [(0, 2)]);
    assert_eq!(stretches(&flags("...")), []);
    assert_eq!(stretches(&[]), []);
}

#[test]
fn the_season_has_seven_months_on_either_side_of_the_equator() {
    assert_eq!(season_months(NORTH), [4, 5, 6, 7, 8, 9, 10]);
    assert_eq!(season_months(SOUTH), [10, 11, 12, 1, 2, 3, 4]);
    // 15 C every day: 5 above 10 C. April to October has 214 days; October to April 212, and
    // 213 with a leap day.
    let record = steady_years(&[daily(10.0, 20.0); 4]);
    let sums = |latitude, base| -> Vec<f64> {
        let sums = season_warmth(&record, latitude, Celsius(base));
        sums.iter().map(|s| s.0).collect()
    };
    assert_eq!(sums(NORTH, 10.0), [1070.0; 4]);
    assert_eq!(sums(SOUTH, 10.0), [1060.0, 1060.0, 1065.0]);
    // Each extreme is held at the base: (15 + 20) / 2 - 15 = 2.5 a day.
    assert_eq!(sums(NORTH, 15.0), [535.0; 4]);
}
