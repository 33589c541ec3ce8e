//! A station's file may be larger than the memory: it is read line by line, and only days are kept.

#[cfg(target_os = "linux")]
use std::io::{BufWriter, Write};
#[cfg(target_os = "linux")]
use std::process::Stdio;

use crate::cli::{Folder, text};
#[cfg(target_os = "linux")]
use tureen::calendar::plus_days;

#[cfg(target_os = "linux")]
use super::memory::most_memory;

/// A table of the archive with so many stations of a hundred years each, and how large it is.
#[cfg(target_os = "linux")]
fn table(folder: &Folder, name: &str, stations: usize) -> u64 {
    use chrono::Datelike;
    let file = std::fs::File::create(folder.path(name)).unwrap();
    let mut file = BufWriter::new(file);
    writeln!(file, "STATION,NAME,LATITUDE,LONGITUDE,DATE,PRCP,TMAX,TMIN").unwrap();
    let first = crate::support::day("1901-01-01");
    for station in 0..stations {
        for n in 0..36_524 {
            let date = plus_days(first, n);
            let low = 5.0 - 10.0 * (f64::from(date.ordinal0()) / 58.1).cos();
            writeln!(
                file,
                "XX{station:09},\"PLACE, XX\",50.00,10.00,{date},1.2,{:.1},{low:.1}",
                low + 9.0
            )
            .unwrap();
        }
    }
    file.into_inner().unwrap().metadata().unwrap().len()
}

/// The most memory that reading one station of a file takes, in bytes.
#[cfg(target_os = "linux")]
fn most(folder: &Folder, file: &str) -> u64 {
    let program = assert_cmd::cargo::cargo_bin("tureen");
    let mut child = std::process::Command::new(program)
        .current_dir(folder.path(""))
        .args([
            "record",
            file,
            "--station",
            "XX000000001",
            "--out",
            "weather.csv",
        ])
        .stdout(Stdio::null())
        .spawn()
        .unwrap();
    let most = most_memory(&mut child);
    assert!(child.wait().unwrap().success(), "{file}");
    assert_eq!(folder.read("weather.csv").lines().count(), 36_524 + 2);
    most
}

/// A hundred megabytes take no more than five, and little at all.
#[cfg(target_os = "linux")]
#[test]
fn a_hundred_megabytes_take_no_more_memory_than_five() {
    let folder = Folder::new("limits-station");
    assert!(table(&folder, "small.csv", 2) < 6_000_000);
    assert!(table(&folder, "large.csv", 46) > 100_000_000);
    let (small, large) = (most(&folder, "small.csv"), most(&folder, "large.csv"));
    std::fs::remove_file(folder.path("large.csv")).unwrap();
    println!("most memory: {small} bytes for 5 MB, {large} for 100 MB");
    assert!((1..60_000_000).contains(&large), "{large}");
    assert!(
        large < small + 5_000_000,
        "{small} for 5 MB, {large} for 100 MB"
    );
}

/// What never ends is refused at once.
#[cfg(unix)]
#[test]
fn a_device_or_a_pipe_is_no_station_file() {
    let folder = Folder::new("limits-station-device");
    let made = std::process::Command::new("mkfifo")
        .arg(folder.path("pipe"))
        .status();
    assert!(made.unwrap().success());
    for file in ["/dev/zero", "pipe"] {
        let command = ["record", file, "--out", "weather.csv"];
        let output = folder
            .tureen(&command)
            .timeout(super::GENEROUS)
            .output()
            .unwrap();
        let error = text(&output.stderr);
        assert_eq!(output.status.code(), Some(3), "{error}");
        assert!(error.contains("a pipe or a device"), "{error}");
    }
}
