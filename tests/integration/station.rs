//! Station files as published become the project's weather table: every kind of file, real and damaged ones, and
//! the whole way to a plan.

mod asked;
mod damaged;
mod formats;
mod real;
mod whole_way;
mod years;

use std::path::{Path, PathBuf};

use tureen::calendar::Date;
use tureen::project::station::{Asked, Station, read};
use tureen::weather::Daily;

/// Files in a folder of a test's own.
fn files(test: &str, files: &[(&str, &str)]) -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("station")
        .join(test);
    std::fs::create_dir_all(&folder).unwrap();
    let write = |(name, text): &(&str, &str)| {
        let path = folder.join(name);
        std::fs::write(&path, text).unwrap();
        path
    };
    files.iter().map(write).collect()
}

/// What one text gives.
fn of_text(test: &str, text: &str, asked: &Asked) -> Result<Station, String> {
    let path = files(test, &[("station.txt", text)]);
    read(&path, asked).map_err(|problems| {
        let shown = problems.render(false, 100);
        shown.replace(&*path[0].to_string_lossy(), "station.txt")
    })
}

/// What one text gives, which must be sound.
#[track_caller]
fn sound(test: &str, text: &str, asked: &Asked) -> Station {
    of_text(test, text, asked).unwrap_or_else(|told| panic!("{told}"))
}

/// A date of a test.
fn day(text: &str) -> Date {
    Date::parse_from_str(text, "%Y-%m-%d").unwrap()
}

/// Lowest, highest and rain of a day.
fn three(day: &Daily) -> (f64, f64, f64) {
    (day.tmin.0, day.tmax.0, day.rain.0)
}

/// What the table says of a day.
#[track_caller]
fn on(station: &Station, date: &str) -> (f64, f64, f64) {
    let date = day(date);
    let found = station.days.iter().find(|(day, _)| *day == date);
    three(&found.unwrap_or_else(|| panic!("no {date}")).1)
}
