//! The whole way of a user: station file, table, project, plan; what is replaced, and what is said.

use tureen::calendar::Date;

use super::formats::fixed;
use crate::cli::{Folder, text};
use crate::scenarios;

/// The smallest scenario in a folder, with its weather as a station's months of fixed width.
fn with_station(name: &str, change: impl Fn(&mut Vec<(Date, (i32, i32, i32))>)) -> Folder {
    let folder = Folder::with(name, |_| scenarios::text("two-beds", "garden.toml"));
    let weather = scenarios::text("two-beds", "weather.csv");
    let row = |line: &str| {
        let mut parts = line.split(',');
        let date = Date::parse_from_str(parts.next()?, "%Y-%m-%d").ok()?;
        let mut tenths = || Some((parts.next()?.parse::<f64>().ok()? * 10.0).round() as i32);
        Some((date, (tenths()?, tenths()?, tenths()?)))
    };
    let mut days: Vec<_> = weather.lines().filter_map(row).collect();
    change(&mut days);
    let runs: String = days
        .chunk_by(|a, b| a.0.succ_opt() == Some(b.0))
        .map(|run| fixed(run[0].0, &run.iter().map(|(_, day)| *day).collect()))
        .collect();
    std::fs::write(folder.path("station.dly"), runs).unwrap();
    folder
}

/// The plan in a saved file.
fn plan(folder: &Folder, file: &str) -> serde_json::Value {
    let saved: serde_json::Value = serde_json::from_str(&folder.read(file)).unwrap();
    assert!(saved["plan"].is_object());
    saved["plan"].clone()
}

#[test]
fn a_station_file_gives_the_plan_of_its_days() {
    let folder = with_station("station-plan", |_| {});
    std::fs::write(
        folder.path("weather.csv"),
        scenarios::text("two-beds", "weather.csv"),
    )
    .unwrap();
    folder.answer(&["plan", "garden.toml", "--out", "before"]);
    let out = ["record", "station.dly", "--out", "weather.csv"];
    let refused = folder.run(&out);
    assert_eq!(refused.status.code(), Some(2));
    assert!(text(&refused.stderr).contains("this program did not write it"));
    let page = folder.answer(&[&out[..], &["--replace"]].concat());
    assert!(page.contains("weather.csv is written"), "{page}");
    assert!(
        page.contains("Last frost: ") && page.contains("No frost in any autumn"),
        "{page}"
    );
    let table = folder.read("weather.csv");
    let first = table.lines().next().unwrap();
    assert!(
        first.starts_with("# made by `tureen record` from station.dly, checksum "),
        "{first}"
    );
    folder.answer(&["check", "garden.toml"]);
    folder.answer(&["plan", "garden.toml", "--out", "after"]);
    assert_eq!(
        plan(&folder, "before/plan.json"),
        plan(&folder, "after/plan.json")
    );
    // What the program wrote it replaces without a word, and what a person changed it keeps.
    folder.answer(&out);
    let edited = table.replacen(",0.0\n", ",0.1\n", 1);
    assert_ne!(edited, table);
    std::fs::write(folder.path("weather.csv"), &edited).unwrap();
    let page = folder.answer(&out);
    assert!(page.contains("weather.edited.csv"), "{page}");
    assert_eq!(folder.read("weather.csv"), table);
    assert_eq!(folder.read("weather.edited.csv"), edited);
}

/// A year that is left out is no year of the plan, and `check` says so.
#[test]
fn a_year_left_out_is_told_and_no_plan_is_grown_through_it() {
    use chrono::Datelike;
    let gone = |date: &Date| date.year() == 2023 && date.month() == 6;
    let folder = with_station("station-left-out", |days| {
        assert!(days.iter().any(|(date, _)| gone(date)));
        days.retain(|(date, _)| !gone(date));
        // A single day too, which is filled.
        let before = days.len();
        days.retain(|(date, _)| date.to_string() != "2024-05-05");
        assert_eq!(days.len() + 1, before);
    });
    let page = folder.answer(&["record", "station.dly", "--out", "weather.csv"]);
    assert!(
        page.contains("1 year is left out") && page.contains("2023"),
        "{page}"
    );
    assert!(page.contains("1 gap of up to five days"), "{page}");
    assert!(!folder.read("weather.csv").contains("2023-"));
    let told = folder.answer(&["check", "garden.toml"]);
    assert!(
        told.contains("years left out of weather.csv") && told.contains("(2023)"),
        "{told}"
    );
    assert!(
        told.contains("days filled in weather.csv") && told.contains("2024-05-05"),
        "{told}"
    );
    let page = folder.answer(&["plan", "garden.toml", "--out", "."]);
    let years = |page: &str| -> usize {
        let (_, rest) = page.split_once("ready in ").unwrap();
        rest.split(' ').nth(2).unwrap().parse().unwrap()
    };
    std::fs::write(
        folder.path("weather.csv"),
        scenarios::text("two-beds", "weather.csv"),
    )
    .unwrap();
    let whole = folder.answer(&["plan", "garden.toml"]);
    assert_eq!(years(&page) + 1, years(&whole), "{page}\n{whole}");
}

#[test]
fn what_is_wrong_is_told_and_nothing_is_written() {
    let folder = Folder::new("station-wrong");
    std::fs::write(
        folder.path("a.csv"),
        "date,low,high,rain\n1998-04-01,x,9,0\n",
    )
    .unwrap();
    let output = folder.run(&["record", "a.csv", "--out", "weather.csv"]);
    assert_eq!(output.status.code(), Some(3));
    assert_eq!(text(&output.stdout), "");
    assert!(text(&output.stderr).contains("a.csv:2:12"));
    assert!(!folder.path("weather.csv").exists());
    for wrong in ["low", "low=", "cold=TN"] {
        let output = folder.run(&["record", "a.csv", "--out", "weather.csv", "--column", wrong]);
        assert_eq!(output.status.code(), Some(2), "{wrong}");
    }
}

/// What is printed, word for word, of a real file (see `real`).
#[test]
fn the_page_of_a_real_file() {
    let folder = Folder::new("station-page");
    std::fs::write(
        folder.path("sharjah.dly"),
        include_str!("files/sharjah.dly"),
    )
    .unwrap();
    let page = folder.answer(&["record", "sharjah.dly", "--out", "weather.csv"]);
    insta::assert_snapshot!(page);
}

/// A table of the program is read again as it is, but what no thermometer saw does not become a record.
#[test]
fn generated_weather_does_not_become_a_record() {
    let folder = with_station("station-own", |_| {});
    folder.answer(&["record", "station.dly", "--out", "first.csv"]);
    folder.answer(&["record", "first.csv", "--out", "second.csv"]);
    let days = |file: &str| folder.read(file).split_once('\n').unwrap().1.to_owned();
    assert_eq!(days("first.csv"), days("second.csv"));
    let made = Folder::new("station-made");
    made.answer(&["weather", "garden.toml", "--out", "made.csv"]);
    let output = made.run(&["record", "made.csv", "--out", "weather.csv"]);
    assert_eq!(output.status.code(), Some(3));
    assert!(text(&output.stderr).contains("no station saw them"));
}

#[test]
fn a_day_of_the_table_is_that_of_the_station() {
    let folder = with_station("station-days", |_| {});
    folder.answer(&["record", "station.dly", "--out", "out.csv"]);
    let rows = |text: &str| -> Vec<String> {
        text.lines()
            .filter(|line| line.starts_with(|c: char| c.is_ascii_digit()))
            .map(str::to_owned)
            .collect()
    };
    let given = rows(&scenarios::text("two-beds", "weather.csv"));
    let number =
        |row: &String| -> Vec<f64> { row.split(',').skip(1).map(|v| v.parse().unwrap()).collect() };
    let written = rows(&folder.read("out.csv"));
    assert_eq!(given.len(), written.len());
    for (a, b) in given.iter().zip(&written) {
        assert_eq!(a[..10], b[..10]);
        assert_eq!(number(a), number(b));
    }
}
