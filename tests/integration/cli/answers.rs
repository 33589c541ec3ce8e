//! The commands from a project file to a plan, its pages, and its check.

use super::{Folder, text};

#[test]
fn check_says_what_was_understood() {
    let answer = Folder::new("check").answer(&["check", "garden.toml"]);
    for part in [
        "The file is valid.",
        "Reed Lane School: Fri 18 Jun 2027, 40 portions",
        "1a           10  Tue, weekly, 40 min",
        "16 strips of bed in all",
        "20 generated weather years",
        "Last frost: after",
        "least_share = 0.3",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
}

#[test]
fn a_plan_is_printed_saved_shown_again_and_found_sound() {
    let folder = Folder::new("plan");
    let printed = folder.answer(&["plan", "garden.toml", "--out", "plans/first"]);
    assert!(printed.contains("The whole dish is ready in "), "{printed}");
    let (page, note) = printed.split_once("\nSaved: ").unwrap();
    assert!(note.contains("plan.json"), "{note}");
    // The folder was made, and nothing unfinished is left in it.
    let files = std::fs::read_dir(folder.path("plans/first")).unwrap();
    assert_eq!(files.count(), 1);
    // The folder and the file name the same plan.
    // What was proved was proved when it was planned; all else is the same.
    let words = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let expected = words(page)
        .replace("; proved best.", "; proved best when it was planned.")
        .replace(
            "Each aim comes before",
            "What is best was proved when the plan was made. Each aim comes before",
        );
    assert_ne!(expected, words(page));
    for plan in ["plans/first", "plans/first/plan.json"] {
        let shown = folder.answer(&["show", "garden.toml", "--plan", plan]);
        assert_eq!(words(&shown), expected);
    }
    let sound = folder.answer(&["verify", "garden.toml", "plans/first/plan.json"]);
    assert!(sound.starts_with("The plan keeps every rule."), "{sound}");
}

#[test]
fn the_plan_is_the_same_on_every_run() {
    let folder = Folder::new("same");
    folder.answer(&["plan", "garden.toml", "--out", "a"]);
    folder.answer(&["plan", "garden.toml", "--out", "b"]);
    assert_eq!(folder.read("a/plan.json"), folder.read("b/plan.json"));
}

#[test]
fn a_plan_beside_the_project_file_is_found_and_one_grade_sees_only_its_own() {
    let folder = Folder::new("beside");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let page = folder.answer(&["show", "garden.toml", "--grade", "grade 2"]);
    assert!(page.starts_with("Grade 2: we grow spinach\n"), "{page}");
    assert!(page.contains("oxalate"), "its caution: {page}");
    assert!(!page.contains("radish") && !page.contains("1a"), "{page}");
    let space = folder.answer(&["show", "garden.toml", "--space"]);
    assert!(
        space.contains("LESSON TIME") && space.contains("Bed A"),
        "{space}"
    );
    assert!(!space.contains("DECIDE NEXT"), "{space}");
    let water = folder.answer(&["show", "garden.toml", "--water"]);
    assert!(water.starts_with("Watering list\n"), "{water}");
    assert!(
        water.contains("Week of  All beds") && water.contains("rain gauge"),
        "{water}"
    );
}

#[test]
fn a_plan_edited_by_hand_is_found_broken_with_6() {
    let folder = Folder::new("edited");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let saved = folder.read("plan.json");
    let edited = saved.replacen("\"bed\": \"A\"", "\"bed\": \"Z\"", 1);
    assert_ne!(saved, edited);
    std::fs::write(folder.path("plan.json"), edited).unwrap();

    let verify = folder.run(&["verify", "garden.toml", "plan.json"]);
    assert_eq!(verify.status.code(), Some(6));
    let answer = text(&verify.stdout);
    assert!(
        answer.starts_with("The plan breaks the rules in"),
        "{answer}"
    );
    assert!(answer.contains("knows no bed \"Z\""), "{answer}");

    let show = folder.run(&["show", "garden.toml"]);
    assert_eq!(show.status.code(), Some(6));
    assert_eq!(text(&show.stdout), "");
    assert_eq!(text(&show.stderr), answer);
}

#[test]
fn a_dish_that_is_not_possible_ends_with_4_and_says_what_runs_out() {
    let folder = Folder::with("impossible", |garden| {
        garden.replace("grams_per_portion = 12", "grams_per_portion = 900")
    });
    let output = folder.run(&["plan", "garden.toml", "--out", "."]);
    assert_eq!(output.status.code(), Some(4));
    let answer = text(&output.stdout);
    assert!(
        answer.starts_with("No plan. Spinach cannot be in the pot"),
        "{answer}"
    );
    assert!(answer.contains("WHAT TO TRY"), "{answer}");
    assert!(!folder.path("plan.json").exists());
}

#[test]
fn no_time_at_all_ends_with_5() {
    let folder = Folder::new("no-time");
    let output = folder.run(&["plan", "garden.toml", "--time-limit", "0"]);
    assert_eq!(output.status.code(), Some(5));
    assert_eq!(text(&output.stdout), "");
    let error = text(&output.stderr);
    assert!(error.contains("No plan found in 0 seconds"), "{error}");
    assert!(error.contains("--time-limit"), "{error}");
}

#[test]
fn a_place_where_nothing_can_be_written_is_told() {
    let folder = Folder::new("no-place");
    std::fs::write(folder.path("plans"), "a file, not a folder").unwrap();
    let output = folder.run(&["plan", "garden.toml", "--out", "plans"]);
    assert_eq!(output.status.code(), Some(2));
    assert!(
        text(&output.stderr).contains("Cannot write plans"),
        "{output:?}"
    );
}
