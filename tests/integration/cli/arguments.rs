//! Wrong arguments and wrong files: exit codes 2 and 3, on the error output only.

use super::{Folder, text};

/// The error output of a run that must end with `code` and print nothing else.
#[track_caller]
fn trouble(folder: &Folder, code: i32, arguments: &[&str]) -> String {
    let output = folder.run(arguments);
    assert_eq!(output.status.code(), Some(code), "{arguments:?}");
    assert_eq!(text(&output.stdout), "", "{arguments:?}");
    text(&output.stderr)
}

#[test]
fn help_names_every_command_and_exit_code() {
    let help = Folder::new("help").answer(&["--help"]);
    for command in [
        "check", "plan", "show", "verify", "weather", "crops", "keys", "climate",
    ] {
        assert!(help.contains(&format!("\n  {command} ")), "{help}");
    }
    for code in 0..=6 {
        assert!(help.contains(&format!("\n  {code}  ")), "{help}");
    }
}

#[test]
fn wrong_arguments_end_with_2() {
    let folder = Folder::new("wrong-arguments");
    let unknown = trouble(&folder, 2, &["plant", "garden.toml"]);
    assert!(unknown.contains("plan"), "{unknown}");
    trouble(&folder, 2, &[]);
    trouble(&folder, 2, &["plan"]);
    trouble(&folder, 2, &["plan", "garden.toml", "--time-limit", "soon"]);
    trouble(
        &folder,
        2,
        &["show", "garden.toml", "--space", "--grade", "1"],
    );
    trouble(&folder, 2, &["show", "garden.toml", "--space", "--water"]);
}

/// Every argument that is a day says how a day is written.
#[test]
fn a_day_that_is_none_ends_with_2_and_says_how_days_are_written() {
    let folder = Folder::new("no-day");
    for (command, argument) in [
        ("plan", "--on"),
        ("why", "--on"),
        ("days", "--on"),
        ("days", "--from"),
        ("days", "--to"),
        ("ideas", "--day"),
        ("today", "--on"),
        ("note", "--on"),
        ("new", "--from"),
        ("carry-over", "--on"),
    ] {
        for day in ["2027-99-01", "28.4.2027", ""] {
            let error = trouble(&folder, 2, &[command, "garden.toml", argument, day]);
            assert!(
                error.contains("write year, month and day, such as 2027-04-28"),
                "{error}"
            );
        }
    }
}

#[test]
fn an_unknown_grade_ends_with_2_and_names_the_grades() {
    let folder = Folder::new("unknown-grade");
    let error = trouble(&folder, 2, &["show", "garden.toml", "--grade", "9"]);
    assert!(error.contains("no grade \"9\""), "{error}");
    assert!(error.contains("1 and 2"), "{error}");
}

#[test]
fn an_unknown_crop_ends_with_2_and_names_the_nearest() {
    let folder = Folder::new("unknown-crop");
    let error = trouble(&folder, 2, &["crops", "carot"]);
    assert!(error.contains("no crop \"carot\""), "{error}");
    assert!(error.contains("Did you mean \"carrot\"?"), "{error}");
    // Other names are near too; where nothing is near, the way to the list is told.
    let error = trouble(&folder, 2, &["crops", "aubergin"]);
    assert!(error.contains("\"aubergine\""), "{error}");
    let error = trouble(&folder, 2, &["crops", "xylophone"]);
    assert!(error.contains("`tureen crops` lists all"), "{error}");
    trouble(&folder, 2, &["crops", "--for", "garden.toml"]);
}

#[test]
fn a_missing_file_ends_with_3_and_is_named() {
    let folder = Folder::new("missing-file");
    for command in ["check", "plan", "climate", "crops radish --for"] {
        let mut arguments: Vec<&str> = command.split(' ').collect();
        arguments.push("orchard.toml");
        let error = trouble(&folder, 3, &arguments);
        assert!(error.contains("orchard.toml"), "{error}");
    }
}

#[test]
fn all_errors_of_a_file_are_told_at_once_with_their_lines() {
    let folder = Folder::with("broken-file", |garden| {
        garden
            .replace("feast = 2027-06-18", "feest = 2027-06-18")
            .replace("crop = \"radish\"", "crop = \"radich\"")
    });
    let error = trouble(&folder, 3, &["check", "garden.toml"]);
    assert!(
        error.contains("feest") && error.contains("radich"),
        "{error}"
    );
    assert!(error.contains("garden.toml:"), "{error}");
}

#[test]
fn a_saved_plan_that_cannot_be_read_ends_with_3() {
    let folder = Folder::new("unreadable-plan");
    let missing = trouble(&folder, 3, &["show", "garden.toml"]);
    assert!(missing.contains("plan.json"), "{missing}");
    std::fs::write(folder.path("plan.json"), "{ \"tureen_plan\": 3, ").unwrap();
    let broken = trouble(&folder, 3, &["show", "garden.toml"]);
    assert!(broken.contains("line 1"), "{broken}");
    trouble(&folder, 3, &["verify", "garden.toml", "plan.json"]);
}

#[test]
fn a_plan_of_another_project_is_not_taken() {
    let folder = Folder::new("other-project");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let other = super::GARDEN.replace("Salad day", "Soup day");
    std::fs::write(folder.path("other.toml"), other).unwrap();
    let error = trouble(&folder, 3, &["show", "other.toml"]);
    assert!(
        error.contains("Salad day") && error.contains("Soup day"),
        "{error}"
    );
}
