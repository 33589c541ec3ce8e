//! The scenario two-beds, solved by hand in its README: every number of that solution, from
//! the sessions and the growth to the plan and its aims. And a choice of grades, and a crop that two share, by hand.

mod amounts;
mod bearing;
mod clash;
mod dominance;
mod gaps;
mod going_on;
mod grades;
mod growth;
mod harvest_days;
mod kept_picked;
mod plan;
mod pressure;
mod sessions;
mod shelf;
mod step_kinds;
mod strips;
mod together;

use std::path::PathBuf;

use tureen::calendar::Date;
use tureen::catalogue::Catalogue;
use tureen::garden::{Garden, IngredientAt};
use tureen::project;

const LETTUCE: IngredientAt = IngredientAt(0);
const RADISH: IngredientAt = IngredientAt(1);

/// The garden of two-beds.
fn garden() -> Garden {
    let path: PathBuf = [
        env!("CARGO_MANIFEST_DIR"),
        "scenarios",
        "two-beds",
        "garden.toml",
    ]
    .iter()
    .collect();
    project::load(&path, &Catalogue::load().unwrap())
        .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)))
}

/// A day of 2027.
fn day(month: u32, day: u32) -> Date {
    Date::from_ymd_opt(2027, month, day).unwrap()
}
