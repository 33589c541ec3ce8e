//! The weather table: the same weather as the file's monthly means, and readable as a file.

use super::{Folder, GARDEN, text};

/// The project file with its weather from `weather.csv`.
fn from_file(garden: &str) -> String {
    let (before, rest) = garden.split_once("[place.monthly]").unwrap();
    let (_, after) = rest.split_once("[calendar]").unwrap();
    format!("{before}weather = \"weather.csv\"\n[calendar]{after}")
}

#[test]
fn the_table_gives_the_same_plan_as_the_means_it_came_from() {
    let folder = Folder::new("weather");
    folder.answer(&["weather", "garden.toml", "--out", "weather.csv"]);
    folder.answer(&["plan", "garden.toml", "--out", "means"]);
    std::fs::write(folder.path("garden.toml"), from_file(GARDEN)).unwrap();
    folder.answer(&["plan", "garden.toml", "--out", "table"]);
    assert_eq!(
        folder.read("means/plan.json"),
        folder.read("table/plan.json")
    );
}

#[test]
fn the_seed_and_the_years_are_followed() {
    let folder = Folder::new("seeds");
    let table = |arguments: &[&str]| {
        let command = ["weather", "garden.toml", "--out", "w.csv"];
        folder.answer(&[&command, arguments].concat());
        folder.read("w.csv")
    };
    let usual = table(&[]);
    assert_eq!(table(&["--seed", "7"]), usual, "the file's own seed");
    assert_ne!(table(&["--seed", "8"]), usual);
    // Ten years have two or three leap days, and there is one line of names.
    let lines = table(&["--years", "10"]).lines().count();
    assert!((3653..=3654).contains(&lines), "{lines}");
    assert!(usual.starts_with("date,tmin_c,tmax_c,rain_mm\n"));
}

#[test]
fn weather_from_a_file_is_not_generated_again() {
    let folder = Folder::new("weather-from-file");
    folder.answer(&["weather", "garden.toml", "--out", "weather.csv"]);
    std::fs::write(folder.path("garden.toml"), from_file(GARDEN)).unwrap();
    let output = folder.run(&["weather", "garden.toml", "--out", "again.csv"]);
    assert_eq!(output.status.code(), Some(3));
    assert!(text(&output.stderr).contains("nothing to generate"));
    assert!(!folder.path("again.csv").exists());
}
