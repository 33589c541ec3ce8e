//! Runs of a plan's span through a record: leap days, New Year, what the record lacks.

use chrono::{Datelike, NaiveDate};
use tureen::calendar::{Date, Horizon, days_between};
use tureen::units::{Celsius, Millimetres};
use tureen::weather::{Daily, Record, WeatherYear};

fn date(year: i32, month: u32, day: u32) -> Date {
    NaiveDate::from_ymd_opt(year, month, day).unwrap()
}

/// A record in which every day tells its date: year in `tmin`, day of the year in `tmax`.
fn dated(from: Date, to: Date) -> Record {
    let days = days_between(from, to)
        .map(|day| Daily {
            tmin: Celsius(f64::from(day.year())),
            tmax: Celsius(f64::from(day.ordinal())),
            rain: Millimetres(0.0),
        })
        .collect();
    Record::new(from, days, false)
}

fn told(day: &Daily) -> Date {
    NaiveDate::from_yo_opt(day.tmin.0 as i32, day.tmax.0 as u32).unwrap()
}

fn labels(years: &[WeatherYear<'_>]) -> Vec<i32> {
    years.iter().map(|y| y.label).collect()
}

#[test]
fn each_year_starts_on_the_same_day_and_runs_on() {
    let record = dated(date(2010, 1, 1), date(2020, 12, 31));
    let horizon = Horizon::spanning(date(2027, 1, 11), date(2027, 10, 8));
    let years = record.years(horizon);
    assert_eq!(labels(&years), (2010..=2020).collect::<Vec<_>>());
    for year in &years {
        assert_eq!(year.days.len(), horizon.days());
        assert_eq!(told(&year.days[0]), date(year.label, 1, 11));
        for pair in year.days.windows(2) {
            assert_eq!(told(&pair[0]).succ_opt(), Some(told(&pair[1])));
        }
    }
    // 50 days after 11 January: 2 March, and 1 March in a leap year.
    assert_eq!(told(&years[1].days[50]), date(2011, 3, 2));
    assert_eq!(told(&years[2].days[50]), date(2012, 3, 1));
}

#[test]
fn a_span_across_new_year_belongs_to_the_year_it_begins_in() {
    let record = dated(date(2010, 1, 1), date(2014, 12, 31));
    let horizon = Horizon::spanning(date(2026, 9, 7), date(2027, 6, 11));
    let years = record.years(horizon);
    assert_eq!(labels(&years), [2010, 2011, 2012, 2013]); // 2014 runs out of record
    assert_eq!(told(&years[0].days[0]), date(2010, 9, 7));
    assert_eq!(told(&years[0].days[115]), date(2010, 12, 31));
    assert_eq!(told(&years[0].days[116]), date(2011, 1, 1));
}

#[test]
fn a_span_that_begins_on_a_leap_day() {
    let record = dated(date(2011, 1, 1), date(2012, 12, 31));
    let horizon = Horizon::spanning(date(2016, 2, 29), date(2016, 6, 1));
    let years = record.years(horizon);
    assert_eq!(labels(&years), [2011, 2012]);
    assert_eq!(told(&years[0].days[0]), date(2011, 2, 28));
    assert_eq!(told(&years[1].days[0]), date(2012, 2, 29));
}

#[test]
fn the_fortnight_before_comes_along_where_the_record_has_it() {
    let record = dated(date(2010, 1, 9), date(2011, 12, 31));
    let horizon = Horizon::spanning(date(2027, 1, 11), date(2027, 6, 11));
    let years = record.years(horizon);
    assert_eq!(years[0].lead.len(), 2);
    assert_eq!(told(&years[0].lead[0]), date(2010, 1, 9));
    assert_eq!(years[1].lead.len(), 14);
    assert_eq!(told(&years[1].lead[0]), date(2010, 12, 28));
    assert_eq!(told(&years[1].lead[13]), date(2011, 1, 10));
}

#[test]
fn a_record_shorter_than_the_span_has_no_years() {
    let horizon = Horizon::spanning(date(2027, 1, 11), date(2027, 10, 8));
    let short = dated(date(2010, 1, 12), date(2010, 12, 31));
    assert!(short.years(horizon).is_empty());
    assert!(
        Record::new(date(2010, 1, 1), Vec::new(), false)
            .years(horizon)
            .is_empty()
    );
}
