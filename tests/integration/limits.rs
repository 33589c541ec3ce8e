//! Bounds on what the program takes: time, memory, files that never end.

mod files;
mod memory;
mod station;
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

/// Nine grades with four sowings of everything: the search of it stays open for long.
fn sown_often(folder: &str) -> Folder {
    scenario(folder, "nine-grades", |text| {
        let once: Vec<&str> = text
            .lines()
            .filter(|line| !line.starts_with("max_sowings"))
            .collect();
        let often = "[[dish.ingredient]]\nmax_sowings = 4";
        once.join("\n").replace("[[dish.ingredient]]", often)
    })
}
