//! Colour, width and closed pipes.

use std::process::Stdio;

use super::{Folder, text};

#[test]
fn a_pipe_gets_no_escape_codes_unless_they_are_asked_for() {
    let folder = Folder::new("colour");
    let plain = folder.answer(&["check", "garden.toml"]);
    assert!(!plain.contains('\u{1b}'));
    let forced = folder
        .tureen(&["check", "garden.toml"])
        .env("CLICOLOR_FORCE", "1")
        .output()
        .unwrap();
    assert!(
        text(&forced.stdout).contains('\u{1b}'),
        "else this test shows nothing"
    );
    let refused = folder
        .tureen(&["check", "garden.toml"])
        .env("CLICOLOR_FORCE", "0")
        .env("NO_COLOR", "1")
        .output()
        .unwrap();
    assert_eq!(text(&refused.stdout), plain);
}

#[test]
fn errors_have_no_escape_codes_in_a_pipe() {
    let folder = Folder::with("colour-of-errors", |g| g.replace("radish", "radich"));
    let output = folder.run(&["check", "garden.toml"]);
    assert!(!output.stderr.is_empty());
    assert!(!text(&output.stderr).contains('\u{1b}'));
}

#[test]
fn columns_set_the_width() {
    let folder = Folder::new("width");
    let longest = |command: &str, columns: usize| {
        let output = folder
            .tureen(&[command, "garden.toml"])
            .env("COLUMNS", columns.to_string())
            .output()
            .unwrap();
        let lines = text(&output.stdout);
        lines.lines().map(|l| l.chars().count()).max().unwrap()
    };
    for command in ["check", "plan"] {
        let (narrow, wide) = (longest(command, 80), longest(command, 120));
        assert!(narrow <= 80, "{command}: {narrow}");
        assert!(80 < wide && wide <= 120, "{command}: {wide}");
    }
}

#[test]
fn a_reader_who_leaves_early_is_no_error() {
    let folder = Folder::new("pipe");
    let mut child = std::process::Command::new(assert_cmd::cargo::cargo_bin("tureen"))
        .args(["check", "garden.toml"])
        .current_dir(folder.path(""))
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert_eq!(output.status.code(), Some(0));
    assert_eq!(text(&output.stderr), "");
}
