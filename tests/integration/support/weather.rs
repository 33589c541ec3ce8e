//! Weather that is the same every day, so that warmth can be counted by hand.

use tureen::calendar::{Date, days_between};
use tureen::units::{Celsius, Millimetres};
use tureen::weather::{Daily, Record};

/// A dry day with the given extremes.
pub fn daily(tmin: f64, tmax: f64) -> Daily {
    Daily {
        tmin: Celsius(tmin),
        tmax: Celsius(tmax),
        rain: Millimetres(0.0),
    }
}

/// Whole calendar years from 2001, each with the same weather on all its days.
pub fn steady_years(years: &[Daily]) -> Record {
    let days = (2001..).zip(years).flat_map(|(year, daily)| {
        let new_year = Date::from_ymd_opt(year, 1, 1).unwrap();
        let last = Date::from_ymd_opt(year, 12, 31).unwrap();
        days_between(new_year, last).map(move |_| *daily)
    });
    Record::new(
        Date::from_ymd_opt(2001, 1, 1).unwrap(),
        days.collect(),
        false,
    )
}
