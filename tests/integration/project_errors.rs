//! Broken project and weather files: every kind of problem has a folder with the files and
//! the exact message. Whole files load into the values that they give.

mod added_crops;
mod assumed;
mod diary;
mod doubts;
mod drafts;
mod edges;
mod harvest;
mod keys;
mod meant;
mod messages;
mod nasty;
mod order;
mod other_units;
mod parts;
mod phrases;
mod record;
mod slips;
mod tables;
mod whole;

use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use tureen::calendar::{Date, plus_days};
use tureen::catalogue::Catalogue;
use tureen::diagnostic::Problems;
use tureen::garden::Garden;
use tureen::project;

/// A file with as few keys as can be.
const MINIMAL: &str = include_str!("project_errors/minimal.toml");

/// A file with every key.
const FULL: &str = include_str!("project_errors/full.toml");

/// Eight weeks of weather, enough for the minimal file.
const AUTUMN: &str = include_str!("project_errors/autumn.csv");

/// The folder of the broken files.
fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/integration/project_errors")
}

/// A day of a year that has it.
fn day(text: &str) -> Date {
    text.parse().expect("a date")
}

/// Loads a text with eight weeks of weather.
fn load(text: &str) -> Result<Garden, Problems> {
    project::load_text("garden.toml", text, Some(AUTUMN), catalogue())
}

fn catalogue() -> &'static Catalogue {
    static CATALOGUE: LazyLock<Catalogue> =
        LazyLock::new(|| Catalogue::load().expect("the catalogue loads"));
    &CATALOGUE
}

/// Daily weather without news from the first day of 2014 on.
fn steady_weather(days: i64) -> String {
    let lines = (0..days).map(|n| format!("{},5,15,1\n", plus_days(day("2014-01-01"), n)));
    format!("date,tmin_c,tmax_c,rain_mm\n{}", lines.collect::<String>())
}
