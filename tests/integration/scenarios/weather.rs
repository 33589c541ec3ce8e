//! The weather files: each is what its climate and seed give, by the command that the README
//! names; that of two-beds follows a rule in words.

use std::fmt::Write;

use tureen::calendar::{Date, days_between, plus_days};
use tureen::weather::{Daily, Record};

use super::{load, text};

/// A record as the program writes it.
fn table(record: &Record) -> String {
    let mut table = String::from("date,tmin_c,tmax_c,rain_mm\n");
    for (n, day) in record.days().iter().enumerate() {
        let date = plus_days(record.first(), n as i64);
        let Daily { tmin, tmax, rain } = day;
        writeln!(table, "{date},{:.1},{:.1},{:.1}", tmin.0, tmax.0, rain.0).unwrap();
    }
    table
}

/// The first line in which two texts differ.
fn first_difference<'t>(a: &'t str, b: &'t str) -> Option<(&'t str, &'t str)> {
    let mut pairs = a.lines().zip(b.lines());
    pairs.find(|(a, b)| a != b).or_else(|| {
        let longer = a.len() != b.len();
        longer.then_some(("one is longer", "than the other"))
    })
}

fn is_made_again(name: &str) {
    let command =
        format!("tureen weather scenarios/{name}/climate.toml --out scenarios/{name}/weather.csv");
    let made = table(&load(name, "climate.toml").weather);
    assert_eq!(first_difference(&made, &text(name, "weather.csv")), None);
    for file in ["README.md", "climate.toml"] {
        assert!(text(name, file).contains(&command), "{file}: {command}");
    }
}

#[test]
fn of_autumn_down_under_is_made_again() {
    is_made_again("autumn-down-under");
}

#[test]
fn of_nine_grades_is_made_again() {
    is_made_again("nine-grades");
}

#[test]
fn of_soup_day_is_made_again() {
    is_made_again("soup-day");
}

#[test]
fn of_wrap_day_is_made_again() {
    is_made_again("wrap-day");
}

/// "Every day has 10 to 20 C and no rain; in 2025 it has 7 to 17 C; and on 28 May 2024 it has
/// -5 to 35 C", as the README says.
#[test]
fn of_two_beds_follows_its_rule() {
    let day = |year, month, day| Date::from_ymd_opt(year, month, day).unwrap();
    let mut table = String::from("date,tmin_c,tmax_c,rain_mm\n");
    for date in days_between(day(2021, 1, 1), day(2025, 12, 31)) {
        let (tmin, tmax) = match date {
            d if d == day(2024, 5, 28) => (-5, 35),
            d if d >= day(2025, 1, 1) => (7, 17),
            _ => (10, 20),
        };
        writeln!(table, "{date},{tmin}.0,{tmax}.0,0.0").unwrap();
    }
    assert_eq!(
        first_difference(&table, &text("two-beds", "weather.csv")),
        None
    );
}
