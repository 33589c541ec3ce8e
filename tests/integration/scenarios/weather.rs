//! The weather files: each is what its climate and seed give, by the command that the README
//! names; those of two-beds and turned-over follow a rule in words.

use std::fmt::Write;
use std::path::Path;

use assert_cmd::Command;
use chrono::Datelike;
use tureen::calendar::{Date, days_between};

use super::text;

/// The first line in which two texts differ.
fn first_difference<'t>(a: &'t str, b: &'t str) -> Option<(&'t str, &'t str)> {
    let mut pairs = a.lines().zip(b.lines());
    pairs.find(|(a, b)| a != b).or_else(|| {
        let longer = a.len() != b.len();
        longer.then_some(("one is longer", "than the other"))
    })
}

/// The command of the README, with another file to write, gives the weather of the scenario.
fn is_made_again(name: &str) {
    let climate = format!("scenarios/{name}/climate.toml");
    let command = format!("tureen weather {climate} --out scenarios/{name}/weather.csv");
    for file in ["README.md", "climate.toml"] {
        assert!(text(name, file).contains(&command), "{file}: {command}");
    }
    let out = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("weather of {name}.csv"));
    Command::cargo_bin("tureen")
        .unwrap()
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .args(["weather", &climate, "--out"])
        .arg(&out)
        .assert()
        .success();
    let made = std::fs::read_to_string(out).unwrap();
    assert_eq!(first_difference(&made, &text(name, "weather.csv")), None);
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

/// The rule of the README of turned-over.
#[test]
fn of_turned_over_follows_its_rule() {
    let day = |year, month, day| Date::from_ymd_opt(year, month, day).unwrap();
    let mut table = String::from("date,tmin_c,tmax_c,rain_mm\n");
    for date in days_between(day(2021, 1, 1), day(2026, 12, 31)) {
        let (tmin, tmax) = match (date.month(), date.year()) {
            (1..=3 | 11..=12, _) => (2, 12),
            (4..=5, 2025) => (3, 13),
            (4..=5, _) => (5, 15),
            _ => (12, 22),
        };
        writeln!(table, "{date},{tmin}.0,{tmax}.0,0.0").unwrap();
    }
    assert_eq!(
        first_difference(&table, &text("turned-over", "weather.csv")),
        None
    );
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
