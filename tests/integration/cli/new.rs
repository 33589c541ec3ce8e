//! A project that is begun: on a terminal by answers, elsewhere as a file to fill in.

use std::fs::File;
use std::io::{Read, Write};
use std::process::{Command, Stdio};

use super::Folder;
use super::terminal::pseudo_terminal;

/// A talk at a pseudo-terminal: all that was seen, and the exit code.
fn talk(folder: &Folder, answers: &str) -> (String, Option<i32>) {
    let (ours, its) = pseudo_terminal();
    let mut child = Command::new(assert_cmd::cargo::cargo_bin("tureen"))
        .args(["new", "begun", "--from", "2026-11-29"])
        .current_dir(folder.path(""))
        .env("TERM", "dumb")
        .env("COLUMNS", "100")
        .env("PAGER", "")
        .stdin(its.try_clone().unwrap())
        .stdout(its.try_clone().unwrap())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    drop(its);
    let mut ours = File::from(ours);
    ours.write_all(answers.as_bytes()).unwrap();
    let mut bytes = Vec::new();
    // When the last writer has gone, Linux says so by an error.
    let _ = ours.read_to_end(&mut bytes);
    let code = child.wait().unwrap().code();
    let text = String::from_utf8(bytes).unwrap();
    (text.replace('\r', ""), code)
}

/// The end of the input, as a person types it.
const END: &str = "\u{4}";

const ANSWERS: [&str; 25] = [
    "metres",
    "44.3 N",
    "Larch Hill School",
    "12",
    "<",
    "potato and leek soup",
    "potato 100, leek 40, carrot 20",
    "8 Oct 2027",
    "Spring: 1 Mar - 18 Jun 2027",
    "Autumn: 30 Aug - 17 Dec 2027",
    "",
    "Summer: 19 Jun - 29 Aug 2027, families",
    "",
    "3a 22 Tue 10:15",
    "3a 21 Thu 10:50",
    "4a 24 Wed 9am",
    "5a 20 Fri",
    "",
    "90",
    "6 beds 3.6 x 1.2",
    "",
    "0",
    "8",
    "",
    "-9 -8 -4 1 7 12 15 14 9 4 -1 -6",
];

#[test]
fn answers_end_in_a_plan() {
    let folder = Folder::new("new-answers");
    let rest = "0 2 7 14 20 25 28 26 22 15 8 2\n60 55 65 75 80 90 90 90 80 75 75 65\nyes\n";
    let (seen, code) = talk(&folder, &format!("{}\n{rest}", ANSWERS.join("\n")));
    assert_eq!(code, Some(0), "{seen}");
    for part in [
        "1 of 17. ",
        "-> Larch Hill School",
        "there is a class 3a already",
        "-> from -9 degrees C in January to 15 degrees C in July",
        "Wrote begun/garden.toml.",
        "The whole dish is ready in ",
        "WHO GROWS WHAT",
    ] {
        assert!(seen.contains(part), "{part}\n{seen}");
    }
    let longest = seen
        .lines()
        .take_while(|line| !line.starts_with("Wrote"))
        .filter(|line| !line.contains(['[', '>']));
    let longest = longest.map(|line| line.chars().count()).max();
    assert!(longest <= Some(90), "{longest:?}\n{seen}");
    let file = folder.read("begun/garden.toml");
    for line in [
        "school = \"Larch Hill School\"",
        "feast = 2027-10-08",
        "crop = \"leek\"",
        "width_m = 1.2",
    ] {
        assert!(file.contains(line), "{line}\n{file}");
    }
    assert!(!file.contains("no real place"), "{file}");
}

#[test]
fn an_end_before_the_last_question_loses_nothing() {
    let folder = Folder::new("new-end");
    let (seen, code) = talk(
        &folder,
        &format!("feet\n33.9 S 18.4 E\nThe \u{9b}31m School\nslaw\n{END}"),
    );
    assert_eq!(code, Some(0), "{seen}");
    assert!(
        seen.contains("for the rest, what stands in brackets holds"),
        "{seen}"
    );
    let file = folder.read("begun/garden.toml");
    for line in [
        "locale = \"en-US\"",
        "latitude = -33.9",
        "name = \"Slaw\"",
        "length_ft = 12",
        "tmin_f = ",
    ] {
        assert!(file.contains(line), "{line}\n{file}");
    }
    let check = folder
        .tureen(&["check", "begun/garden.toml"])
        .output()
        .unwrap();
    assert!(
        check.status.success(),
        "{}",
        String::from_utf8_lossy(&check.stderr)
    );
}

#[test]
fn without_a_terminal_a_file_to_fill_in_is_written_and_nothing_is_replaced() {
    let folder = Folder::new("new-file");
    let new = |name: &str| {
        folder
            .tureen(&["new", name, "--from", "2026-11-29"])
            .output()
            .unwrap()
    };
    let made = new("my/garden");
    assert!(made.status.success(), "{made:?}");
    let told = String::from_utf8(made.stdout).unwrap();
    assert!(
        told.contains("Wrote my/garden/garden.toml.") && told.contains("of no real place"),
        "{told}"
    );
    let first = folder.read("my/garden/garden.toml");
    assert!(
        first.contains("# These are the means of no real place."),
        "{first}"
    );
    let again = new("my/garden");
    assert_eq!(again.status.code(), Some(2), "{again:?}");
    assert_eq!(folder.read("my/garden/garden.toml"), first);
    // The same day gives the same file.
    assert!(new("other").status.success());
    assert_eq!(folder.read("other/garden.toml"), first);
    for command in ["check", "plan"] {
        let done = folder
            .tureen(&[command, "other/garden.toml"])
            .output()
            .unwrap();
        assert!(done.status.success(), "{command}: {done:?}");
    }
}

#[test]
fn the_nearest_stations_are_told_and_one_is_written_as_it_stands_in_a_file() {
    let folder = Folder::new("new-stations");
    let run = |arguments: &[&str]| folder.tureen(arguments).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    for place in [
        &["33.9", "S", "18.4", "E"][..],
        &["-33.9", "18.4"],
        &["33.9S 18.4E"],
    ] {
        let told = run(&[&["stations"], place].concat());
        assert!(told.status.success(), "{told:?}");
        let told = text(&told.stdout);
        assert!(
            told.contains("Cape Town, South Africa") && told.contains(" km"),
            "{told}"
        );
        assert!(
            told.lines().count() < 20 && told.contains("Deutscher Wetterdienst"),
            "{told}"
        );
    }
    let told = text(&run(&["stations", "44.3", "-93.2"]).stdout);
    assert!(told.contains(" to 0 C") && !told.contains("-0 C"), "{told}");
    let out = [
        "stations",
        "-33.9",
        "18.4",
        "--take",
        "2",
        "--out",
        "place.toml",
    ];
    let told = run(&out);
    assert!(told.status.success(), "{told:?}");
    let lines = folder.read("place.toml");
    assert!(lines.starts_with("[place]\nlatitude = -33.9"), "{lines}");
    let project = folder.read("garden.toml");
    let (before, rest) = project.split_once("[place]").unwrap();
    let after = &rest[rest.find("\n[calendar]").unwrap()..];
    std::fs::write(
        folder.path("garden.toml"),
        format!("{before}{lines}{after}"),
    )
    .unwrap();
    let check = run(&["check", "garden.toml"]);
    assert!(check.status.success(), "{}", text(&check.stderr));
    // What is there stays.
    assert_eq!(run(&out).status.code(), Some(2));
    for wrong in [
        &["44.3 N"][..],
        &["x"],
        &["99", "10"],
        &["44", "10", "--take", "4", "--out", "x.toml"],
    ] {
        let told = run(&[&["stations"], wrong].concat());
        assert_eq!(told.status.code(), Some(2), "{wrong:?} {told:?}");
    }
}
