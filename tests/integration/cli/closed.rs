//! School that falls out, from the entry in the diary to the plan and the pages.

use super::unfolded::with_diary;
use super::{Folder, text};

/// A closure of two weeks is one entry: what was due makes up after it, families are asked, all that reads the plan knows.
#[test]
fn a_school_that_is_closed_plans_around_it() {
    let folder = Folder::new("unfold-closed");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let closed = "[[entry]]\non = 2027-05-11\nclosed_from = 2027-05-10\nclosed_to = 2027-05-14\n\
                  care = \"families\"\n";
    std::fs::write(folder.path("diary.toml"), closed).unwrap();
    let before = folder.answer(&["today", "garden.toml", "--on", "2027-05-12"]);
    let before = before.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        before.contains(
            "School closed 10-14 May, families care for the plants. To plan the rest again"
        ),
        "{before}"
    );
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-05-12", "--out", "."]);
    let flat = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        flat.contains("Sow in bed: radish 11-12 May 18-19 May"),
        "{told}"
    );
    assert!(
        flat.contains("school closed 10-14 May, families care for the plants"),
        "{told}"
    );
    folder.answer(&["verify", "garden.toml", "plan.json"]);
    let today = folder.answer(&["today", "garden.toml", "--on", "2027-05-12"]);
    assert!(!today.contains("To plan the rest again"), "{today}");
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let space = folder.read("out/principal.html").replace('\u{a0}', " ");
    assert!(space.contains("Closure"), "{space}");
    // Taken back, it is none.
    let back = format!("{closed}\n[[entry]]\non = 2027-05-12\ntakes_back = 1\n");
    std::fs::write(folder.path("diary.toml"), back).unwrap();
    let open = folder.answer(&["plan", "garden.toml", "--on", "2027-05-12"]);
    assert!(!open.contains("school closed"), "{open}");
}

/// A single lesson that is known to fall out is planned around before it does.
#[test]
fn a_lesson_to_come_that_falls_out_moves_what_is_due_in_it() {
    let entry = "[[entry]]\non = 2027-05-03\nno_lesson = \"1b\"\nday = 2027-05-12\n";
    let (folder, _) = with_diary("unfold-no-lesson", entry);
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-05-04", "--out", "."]);
    let flat = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(flat.contains("no lesson of 1b on 12 May"), "{told}");
    let page = folder.answer(&["show", "garden.toml", "--grade", "1"]);
    assert!(!page.contains("12 May"), "{page}");
    folder.answer(&["verify", "garden.toml", "plan.json"]);
}

/// A closure in which potting up falls out leaves the tomatoes no way; only they are named, and lessons that are enough.
#[test]
fn a_closure_that_leaves_no_way_says_for_what_and_what_would_be_enough() {
    let scenario = include_str!("../../../scenarios/soup-day/garden.toml");
    let weather = include_str!("../../../scenarios/soup-day/weather.csv");
    let folder = Folder::with("unfold-closed-long", |_| scenario.to_owned());
    std::fs::write(folder.path("weather.csv"), weather).unwrap();
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let closed = "[[entry]]\non = 2027-05-14\nclosed_from = 2027-05-17\nclosed_to = 2027-05-28\ncare = \"staff\"\n";
    std::fs::write(folder.path("diary.toml"), closed).unwrap();
    let why = folder.run(&["why", "garden.toml", "--on", "2027-05-14"]);
    assert_eq!(why.status.code(), Some(4));
    let why = text(&why.stdout)
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    assert!(
        why.contains("the classes' sessions do not allow all its steps in order"),
        "{why}"
    );
    assert!(
        why.contains("Tomato cannot be in the pot, even if it were the only ingredient."),
        "{why}"
    );
    assert!(
        why.contains("Classes of grade 5 that meet every week"),
        "{why}"
    );
}
