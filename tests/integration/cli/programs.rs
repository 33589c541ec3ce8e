//! `plan --write-program`: a file for each aim, also where no plan is possible.

use std::collections::BTreeMap;

use super::{Folder, GARDEN, text};

/// The files of a folder by name.
fn files(folder: &Folder, name: &str) -> BTreeMap<String, String> {
    let entries = std::fs::read_dir(folder.path(name)).unwrap();
    entries
        .map(|entry| entry.unwrap())
        .map(|entry| {
            let text = std::fs::read_to_string(entry.path()).unwrap();
            (entry.file_name().into_string().unwrap(), text)
        })
        .collect()
}

/// The figure after some words at the head of a file.
fn figure(file: &str, words: &str) -> f64 {
    let start = format!("* {words}: ");
    let line = file.lines().find_map(|l| l.strip_prefix(&start));
    line.unwrap().parse().unwrap()
}

#[test]
fn the_program_of_each_aim_is_written_with_the_value_that_the_plan_has() {
    let folder = Folder::new("programs");
    let answer = folder.answer(&[
        "plan",
        "garden.toml",
        "--out",
        ".",
        "--write-program",
        "mps",
    ]);
    assert!(answer.contains("11 files in mps"), "{answer}");
    let files = files(&folder, "mps");
    let plan: serde_json::Value = serde_json::from_str(&folder.read("plan.json")).unwrap();
    let aims = plan["plan"]["aims"].as_array().unwrap();
    assert_eq!((files.len(), aims.len()), (11, 11));
    for ((name, file), aim) in files.iter().zip(aims) {
        let expected = format!("-{}.mps", aim["aim"].as_str().unwrap());
        assert!(name.ends_with(&expected), "{name}, {aim}");
        assert_eq!(figure(file, "Value found"), aim["value"].as_f64().unwrap());
        let better = if file.contains("OBJSENSE\n    MAX\n") {
            "most"
        } else {
            "least"
        };
        let bound = figure(file, &format!("Possible, at {better}"));
        assert_eq!(bound, aim["bound"].as_f64().unwrap());
    }
    assert!(files.keys().next().unwrap() == "01-in-the-pot.mps");
}

#[test]
fn without_the_option_the_plan_is_the_same() {
    let folder = Folder::new("programs-or-not");
    folder.answer(&["plan", "garden.toml", "--out", "a"]);
    folder.answer(&["plan", "garden.toml", "--out", "b", "--write-program", "b"]);
    assert_eq!(folder.read("a/plan.json"), folder.read("b/plan.json"));
}

#[test]
fn of_an_impossible_dish_only_the_first_program_stays() {
    let folder = Folder::new("programs-impossible");
    folder.answer(&["plan", "garden.toml", "--write-program", "mps"]);
    assert_eq!(files(&folder, "mps").len(), 11);
    let impossible = GARDEN.replace("grams_per_portion = 12", "grams_per_portion = 900");
    std::fs::write(folder.path("garden.toml"), impossible).unwrap();
    std::fs::write(folder.path("mps/notes.txt"), "a teacher's own").unwrap();
    let output = folder.run(&["plan", "garden.toml", "--write-program", "mps"]);
    assert_eq!(output.status.code(), Some(4));
    let answer = text(&output.stdout);
    assert!(answer.starts_with("No plan."), "{answer}");
    assert!(answer.contains("1 file in mps"), "{answer}");
    let files = files(&folder, "mps");
    let names: Vec<&String> = files.keys().collect();
    assert_eq!(names, ["01-in-the-pot.mps", "notes.txt"]);
    assert_eq!(figure(&files["01-in-the-pot.mps"], "Value found"), 1.0);
}

#[test]
fn a_place_where_no_program_can_be_written_is_told() {
    let folder = Folder::new("programs-no-place");
    std::fs::write(folder.path("mps"), "a file, not a folder").unwrap();
    let output = folder.run(&["plan", "garden.toml", "--write-program", "mps"]);
    assert_eq!(output.status.code(), Some(2));
    let error = text(&output.stderr);
    assert!(error.contains("Cannot write mps"), "{error}");
}
