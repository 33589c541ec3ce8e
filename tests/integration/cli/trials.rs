//! Changes on trial, other days, and why there is no plan, on the smallest scenario.

use super::{Folder, text};

/// A folder with the smallest scenario, its project file changed.
pub fn two_beds(name: &str, change: impl Fn(&str) -> String) -> Folder {
    let scenario = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/two-beds/");
    let read = |file: &str| std::fs::read_to_string(format!("{scenario}{file}")).unwrap();
    let folder = Folder::with(name, |_| change(&read("garden.toml")));
    std::fs::write(folder.path("weather.csv"), read("weather.csv")).unwrap();
    folder
}

pub fn as_it_is(name: &str) -> Folder {
    two_beds(name, str::to_owned)
}

#[test]
fn changes_are_tried_alone_and_together_and_the_file_stays() {
    let folder = as_it_is("try");
    let before = folder.read("garden.toml");
    let bed = "bed.C={ id = \"C\", length_m = 2.4, width_m = 1.2 }";
    let answer = folder.answer(&["try", "garden.toml", "--set", "shelf.flats=2", "--set", bed]);
    for part in [
        "As it is  no change",
        "Change 1  shelf.flats=2",
        "Together  all of these: shelf.flats=2, bed.C={ id",
        "1 of 1 flats   1 of 2 flats   1 of 1 flats    2 of 2 flats",
        "6 of 8 strips  6 of 8 strips  6 of 16 strips  10 of 16 strips",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
    assert_eq!(folder.read("garden.toml"), before);
}

/// A change on trial is the change that a person would make by hand.
#[test]
fn a_change_on_trial_gives_what_the_changed_file_gives() {
    let by_hand = two_beds("try-by-hand", |text| {
        text.replace("grams_per_portion = 60", "grams_per_portion = 45")
            .replace("flats = 1", "flats = 2")
    });
    // The row of lettuce, at its end the part of the target that is grown.
    let planned = by_hand.answer(&["plan", "garden.toml", "--all"]);
    let row = planned.lines().find(|l| l.contains("Grade 1  lettuce"));
    let grown = row.unwrap().split("  ").last().unwrap().trim();
    let changes = [
        "shelf.flats=2",
        "dish.ingredient.lettuce.grams_per_portion=45",
    ];
    let mut arguments = vec!["try", "garden.toml"];
    for change in changes {
        arguments.extend(["--set", change]);
    }
    let answer = as_it_is("try-the-same").answer(&arguments);
    let row = answer.lines().find(|l| l.contains("lettuce, part grown"));
    let cells: Vec<&str> = row.unwrap().split("  ").filter(|c| !c.is_empty()).collect();
    assert_eq!(cells.last().map(|c| c.trim()), Some(grown), "{answer}");
    assert_ne!(cells[1].trim(), grown, "{answer}");
}

#[test]
fn a_change_that_cannot_be_made_is_shown_with_its_place() {
    let folder = as_it_is("try-wrong");
    for (change, wanted) in [
        (
            "bed.9.length_m=3",
            "`bed` holds nothing with the name \"9\"",
        ),
        ("bed.AA.length_m=3", "did you mean \"A\"?"),
        ("shelf.flats", "a change needs a `=`"),
        ("=3", "there is no key before the `=`"),
        (
            "project.feast.day=3",
            "`feast` is one value, and holds no keys",
        ),
        ("shelf.flat=2", "did you mean `flats`?"),
        ("shelf.flats=-1", "`flats` should be 0 to 500"),
        ("project.feast=soon", "`feast` should be a date"),
    ] {
        let output = folder.run(&["try", "garden.toml", "--set", change]);
        assert_eq!(output.status.code(), Some(3), "{change}");
        let told = text(&output.stderr);
        assert!(told.contains(wanted), "{change}: {told}");
    }
}

/// Just the part of the key that leads nowhere is pointed at.
#[test]
fn the_part_of_a_change_that_is_wrong_is_pointed_at() {
    let folder = as_it_is("try-pointed-at");
    for (change, length) in [
        ("bed.9.length_m=3", 1),
        ("bed.AAA.length_m=3", 3),
        ("bed.AAAA=3", 4),
        ("project.feast.day=3", 5),
        ("shelf.flats", 11),
    ] {
        let output = folder.run(&["try", "garden.toml", "--set", change]);
        let told = text(&output.stderr);
        assert_eq!(told.matches('^').count(), length, "{change}: {told}");
    }
}

#[test]
fn other_days_are_told_week_by_week() {
    let folder = as_it_is("days");
    let span = ["--from", "2027-06-01", "--to", "2027-07-05"];
    let answer = folder.answer(&[&["days", "garden.toml"], &span[..]].concat());
    for part in [
        "Fri 25 Jun*  4 of 5  ################....  lettuce and radish (4)",
        "Fri 2 Jul: no school on that day.",
        "Best on Fri 25 Jun 2027, the day in the file: the whole dish is ready in 4 of 5 past years.",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
    let none = folder.run(&[
        "days",
        "garden.toml",
        "--from",
        "2027-06-26",
        "--to",
        "2027-06-29",
    ]);
    assert_eq!(none.status.code(), Some(2));
    assert!(text(&none.stderr).contains("There is no Friday"));
}

/// Every repair of one change that is printed makes the project possible when it is made.
#[test]
fn what_would_be_enough_is_enough() {
    let no_flat = |text: &str| text.replace("flats = 1", "flats = 0");
    let folder = two_beds("why", no_flat);
    let output = folder.run(&["why", "garden.toml"]);
    assert_eq!(output.status.code(), Some(4));
    let answer = text(&output.stdout);
    let (_, listed) = answer.split_once("WHAT WOULD BE ENOUGH").unwrap();
    let repairs: Vec<Vec<String>> = listed.split("\n\n").filter_map(changes_of).collect();
    assert!(
        repairs.contains(&vec!["shelf.flats=1".to_owned()]),
        "{answer}"
    );
    assert!(repairs.len() > 3, "{answer}");
    for repair in repairs {
        let sets = repair.iter().flat_map(|change| ["--set", change]);
        let arguments: Vec<&str> = ["try", "garden.toml"].into_iter().chain(sets).collect();
        let tried = folder.answer(&arguments);
        let row = tried.lines().find(|l| l.contains("Whole dish ready"));
        assert!(
            row.is_some_and(|row| row.ends_with("of 5")),
            "{repair:?}: {tried}"
        );
    }
}

/// The changes of one repair, as `try` takes them.
fn changes_of(repair: &str) -> Option<Vec<String>> {
    let lines = repair.lines();
    let quoted = |line: &str| {
        let change = line.trim().strip_prefix("To try it: --set '")?;
        Some(change.strip_suffix('\'')?.to_owned())
    };
    let changes: Vec<String> = lines.filter_map(quoted).collect();
    (!changes.is_empty()).then_some(changes)
}

#[test]
fn a_project_with_a_plan_is_told_so() {
    let answer = as_it_is("why-not").answer(&["why", "garden.toml"]);
    assert!(
        answer.contains("There is a plan. The whole dish is ready in 4 of 5 past years"),
        "{answer}"
    );
}

/// In place of an ingredient only what the cook named is offered, in that order; chard is not ripe in time.
#[test]
fn only_what_the_cook_takes_is_offered_in_its_place() {
    let instead = |text: &str| {
        let named = "name = \"lettuce\"\ninstead = [\"turnip\", \"chard\", \"spinach\"]";
        text.replacen("name = \"lettuce\"", named, 1)
    };
    let folder = two_beds("why-instead", |text| {
        instead(text).replace("flats = 1", "flats = 0")
    });
    let output = folder.run(&["why", "garden.toml"]);
    let answer = text(&output.stdout);
    let offered = answer.lines().filter_map(|line| {
        let crop = line.trim().strip_prefix("- ")?;
        crop.strip_suffix(" in place of lettuce.")
    });
    assert_eq!(
        offered.collect::<Vec<_>>(),
        ["turnip", "spinach"],
        "{answer}"
    );
    // What is bought in its place is told with it.
    let folder = two_beds("slack-instead", instead);
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let told = folder.answer(&["show", "garden.toml", "--slack"]);
    let told = told.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        told.contains("then buy it, or turnip, or chard, or spinach."),
        "{told}"
    );
}
