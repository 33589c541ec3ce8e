//! Bounds on what the program takes: time, memory, files that never end.

mod files;
mod memory;
mod time;

use std::time::Duration;

use crate::cli::Folder;
use crate::scenarios;

/// However busy the machine, a run that keeps to its limits ends in this time.
const GENEROUS: Duration = Duration::from_secs(120);

/// A scenario in a folder of its own, its project file changed.
fn scenario(folder: &str, name: &str, change: impl Fn(&str) -> String) -> Folder {
    let folder = Folder::with(folder, |_| change(&scenarios::text(name, "garden.toml")));
    let weather = scenarios::text(name, "weather.csv");
    std::fs::write(folder.path("weather.csv"), weather).unwrap();
    folder
}

/// Soup day with a pumpkin for its kale: the search of it stays open for hundreds of thousands of
/// points of choice.
fn pumpkin_soup(folder: &str) -> Folder {
    scenario(folder, "soup-day", |text| {
        let changed = text.replace("crop = \"kale\"\ngrade", "crop = \"pumpkin\"\ngrade");
        assert_ne!(changed, text);
        changed
    })
}
