//! Memory: a search has a ceiling, and so has the choice that is made.

#[cfg(target_os = "linux")]
use std::process::{Child, Stdio};
#[cfg(target_os = "linux")]
use std::time::Duration;

use super::scenario;
#[cfg(target_os = "linux")]
use super::sown_often;
use crate::cli::text;

/// No run takes more, in bytes.
const MOST: u64 = 200_000_000;

/// Without a ceiling this search takes hundreds of megabytes in some seconds. Two limits: what
/// is kept open must not grow with the time.
#[cfg(target_os = "linux")]
#[test]
fn a_search_that_stays_open_keeps_its_memory_and_gives_its_best_plan() {
    let folder = sown_often("limits-memory");
    let program = assert_cmd::cargo::cargo_bin("tureen");
    for seconds in ["15", "30"] {
        let mut child = std::process::Command::new(&program);
        child
            .current_dir(folder.path(""))
            .args([
                "plan",
                "garden.toml",
                "--out",
                seconds,
                "--time-limit",
                seconds,
            ])
            .stdout(Stdio::null());
        let mut child = child.spawn().unwrap();
        let most = most_memory(&mut child);
        let status = child.wait().unwrap();
        assert!(status.success(), "{seconds} s: {status}");
        assert!((1..MOST).contains(&most), "{seconds} s: {most} bytes");
        folder.answer(&["verify", "garden.toml", seconds]);
    }
}

/// The most memory of a process until it ends, in bytes, as the system counts it for the program alone:
/// what is told at its end counts the tests that began it, too.
#[cfg(target_os = "linux")]
pub fn most_memory(child: &mut Child) -> u64 {
    let mut most = 0;
    while child.try_wait().unwrap().is_none() {
        let status = std::fs::read_to_string(format!("/proc/{}/status", child.id()));
        let peak = status.ok().and_then(|status| {
            let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:"))?;
            line.trim().strip_suffix(" kB")?.parse::<u64>().ok()
        });
        most = most.max(peak.unwrap_or(0) * 1024);
        std::thread::sleep(Duration::from_millis(20));
    }
    most
}

/// Nine grades that may all grow everything, on fifty beds that are nearly all different: hundreds
/// of thousands of plantings to choose from.
#[test]
fn too_many_ways_to_plant_are_told_with_what_makes_them_many() {
    let folder = scenario("limits-many", "nine-grades", |text| {
        let (before, dish) = text.split_once("[[dish.ingredient]]").unwrap();
        let (dish, beds) = dish.split_once("[[bed]]").unwrap();
        let open: Vec<&str> = dish
            .lines()
            .filter(|l| !l.starts_with("grade = "))
            .collect();
        let more: String = (0..36)
            .map(|n| {
                let width = 0.6 + 0.02 * f64::from(n);
                format!("[[bed]]\nid = \"more {n}\"\nlength_m = 6.0\nwidth_m = {width:.2}\n\n")
            })
            .collect();
        format!(
            "{before}[[dish.ingredient]]{}\n\n{more}[[bed]]{beds}",
            open.join("\n")
        )
    });
    let output = folder.run(&["plan", "garden.toml", "--time-limit", "300"]);
    let error = text(&output.stderr);
    assert_eq!(output.status.code(), Some(5), "{error}");
    for part in [
        "more than 80000 ways",
        "9 grades",
        "kinds of bed",
        "Name the grade",
    ] {
        assert!(error.contains(part), "\"{part}\" is missing in\n{error}");
    }
}
