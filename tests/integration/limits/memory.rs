//! Memory: a search has a ceiling, and so has the choice that is made.

use std::process::Stdio;

use wait4::Wait4 as _;

use super::{pumpkin_soup, scenario};
use crate::cli::text;

/// No run takes more, in bytes.
const MOST: u64 = 200_000_000;

/// Without a ceiling this search takes hundreds of megabytes in some seconds. Three limits: what
/// is kept open must not grow with the time.
#[test]
fn a_search_that_stays_open_keeps_its_memory_and_gives_its_best_plan() {
    let folder = pumpkin_soup("limits-memory");
    let program = assert_cmd::cargo::cargo_bin("tureen");
    for seconds in ["5", "20"] {
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
        let ended = child.spawn().unwrap().wait4().unwrap();
        assert!(ended.status.success(), "{seconds} s: {}", ended.status);
        assert!(
            ended.rusage.maxrss < MOST,
            "{seconds} s: {} bytes",
            ended.rusage.maxrss
        );
        folder.answer(&["verify", "garden.toml", seconds]);
    }
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
