//! Files that never end, or are far too large: each is refused with what it is, and at once.

use std::fs::File;
use std::process::Command;

use super::GENEROUS;
use crate::cli::{Folder, text};

/// A garden with a saved plan and handouts, and one file of it put aside for what is tried.
fn without(name: &str, file: &str) -> Folder {
    let folder = Folder::new(name);
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "pages"]);
    std::fs::remove_file(folder.path(file)).unwrap();
    folder
}

/// Exit code and errors of a run that must end.
fn ends(folder: &Folder, arguments: &[&str]) -> (i32, String) {
    let output = folder.tureen(arguments).timeout(GENEROUS).output().unwrap();
    assert_eq!(text(&output.stdout), "", "{arguments:?}");
    let code = output.status.code();
    (code.expect("ended by itself"), text(&output.stderr))
}

/// Every file that a command reads, and the command.
const READ: [(&str, &[&str]); 6] = [
    ("garden.toml", &["check", "garden.toml"]),
    (
        "garden.toml",
        &["try", "garden.toml", "--set", "shelf.flats=2"],
    ),
    ("plan.json", &["show", "garden.toml"]),
    ("plan.json", &["verify", "garden.toml", "plan.json"]),
    ("plan.json", &["handouts", "garden.toml", "--out", "new"]),
    (
        "pages/.handouts.json",
        &["handouts", "garden.toml", "--out", "pages"],
    ),
];

/// A pipe to which nobody writes, in place of each file; for the handouts' own list it is enough
/// that it is not waited for.
#[cfg(unix)]
#[test]
fn a_pipe_is_refused_and_not_waited_for() {
    for (n, (file, arguments)) in READ.into_iter().enumerate() {
        let folder = without(&format!("limits-pipe-{n}"), file);
        let made = Command::new("mkfifo").arg(folder.path(file)).status();
        assert!(made.unwrap().success());
        // The saved plan was put aside only where it is what is tried.
        let (code, error) = ends(&folder, arguments);
        match file {
            "pages/.handouts.json" => assert_eq!(code, 2, "{error}"),
            _ => {
                assert_eq!(code, 3, "{arguments:?}: {error}");
                assert!(
                    error.contains("a pipe or a device"),
                    "{arguments:?}: {error}"
                );
            }
        }
    }
}

#[cfg(unix)]
#[test]
fn a_device_that_never_ends_is_refused() {
    let folder = Folder::new("limits-device");
    for arguments in [
        &["check", "/dev/zero"][..],
        &["verify", "garden.toml", "/dev/zero"],
        &["show", "garden.toml", "--plan", "/dev/zero"],
    ] {
        let (code, error) = ends(&folder, arguments);
        assert_eq!(code, 3, "{arguments:?}: {error}");
        assert!(
            error.contains("a pipe or a device"),
            "{arguments:?}: {error}"
        );
    }
}

/// Weather that is named by the project is read with the same care.
#[cfg(unix)]
#[test]
fn weather_from_a_device_is_refused() {
    let folder = super::scenario("limits-weather", "soup-day", |text| {
        let changed = text.replace("weather = \"weather.csv\"", "weather = \"/dev/zero\"");
        assert_ne!(changed, text);
        changed
    });
    let (code, error) = ends(&folder, &["check", "garden.toml"]);
    assert_eq!(code, 3, "{error}");
    assert!(error.contains("a pipe or a device"), "{error}");
}

/// A gigabyte that takes no room on the disk, in place of each file.
#[test]
fn a_file_that_is_far_too_large_is_refused() {
    for (n, (file, arguments)) in READ.into_iter().enumerate() {
        let folder = without(&format!("limits-large-{n}"), file);
        let large = File::create(folder.path(file)).unwrap();
        large.set_len(1 << 30).unwrap();
        let (code, error) = ends(&folder, arguments);
        match file {
            "pages/.handouts.json" => assert_eq!(code, 2, "{error}"),
            _ => {
                assert_eq!(code, 3, "{arguments:?}: {error}");
                assert!(error.contains("larger than"), "{arguments:?}: {error}");
            }
        }
    }
}
