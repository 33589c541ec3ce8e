//! `plan` with a diary: the rest of the season, what changes, and all that reads the plan so saved.

use std::collections::BTreeMap;

use super::{Folder, text};

const LOST: &str =
    "[[entry]]\non = 2027-04-27\nlost = 1.0\ningredient = \"spinach\"\ncause = \"snails\"\n";

/// The small school with its plan saved and an entry in its diary.
fn with_diary(name: &str, diary: &str) -> (Folder, String) {
    let folder = Folder::new(name);
    let first = folder.answer(&["plan", "garden.toml", "--out", "."]);
    std::fs::write(folder.path("diary.toml"), diary).unwrap();
    (folder, first)
}

/// Title and first day of each event of a calendar, by its id.
fn events(calendar: &str) -> BTreeMap<String, String> {
    let mut all = BTreeMap::new();
    for event in calendar.split("BEGIN:VEVENT").skip(1) {
        let field = |name: &str| {
            let mut lines = event.lines();
            lines
                .find(|line| line.starts_with(name))
                .unwrap_or_default()
                .to_owned()
        };
        let before = all.insert(field("UID"), field("DTSTART"));
        assert_eq!(before, None, "an event stands twice: {event}");
    }
    all
}

#[test]
fn a_lost_crop_is_sown_again_and_told_in_the_first_lines() {
    let (folder, _) = with_diary("unfold-lost", LOST);
    let before = folder.answer(&["today", "garden.toml", "--on", "2027-04-28"]);
    assert!(
        before.contains("100 % of spinach is lost. Plan the rest again"),
        "{before}"
    );
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    let first: String = told.lines().take(12).collect::<Vec<_>>().join("\n");
    assert!(
        first.starts_with("Planned as of Wed 28 Apr 2027"),
        "{first}"
    );
    assert!(first.contains("one entry of the diary"), "{first}");
    assert!(
        first.contains("sow spinach") && first.contains("snails"),
        "{first}"
    );
    assert!(first.contains("Ready in the 20 weather years"), "{first}");
    // All that reads a saved plan reads this one without being told more.
    let sound = folder.answer(&["verify", "garden.toml", "plan.json"]);
    assert!(sound.contains("every rule"), "{sound}");
    folder.answer(&["show", "garden.toml", "--all"]);
    folder.answer(&["show", "garden.toml", "--slack"]);
    let today = folder.answer(&["today", "garden.toml", "--on", "2027-04-28"]);
    assert!(!today.contains("Not written down as done"), "{today}");
    // What the plan has taken up already is nothing to decide any more.
    assert!(!today.contains("is lost"), "{today}");
    // A day before the first step plans all afresh.
    let afresh = folder.run(&["plan", "garden.toml", "--on", "2027-03-02"]);
    let afresh = text(&afresh.stdout);
    assert!(!afresh.contains("Planned as of"), "{afresh}");
    // Planned again on the same day nothing moves any more.
    let again = folder.answer(&["plan", "garden.toml", "--on", "2027-04-28"]);
    assert!(again.contains("No date moves."), "{again}");
}

#[test]
fn events_that_stay_keep_their_ids_and_days_and_none_is_doubled() {
    let (folder, _) = with_diary("unfold-events", LOST);
    let calendar = |folder: &Folder| {
        folder.answer(&["handouts", "garden.toml", "--out", "out"]);
        events(&folder.read("out/calendars/all.ics"))
    };
    let before = calendar(&folder);
    folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    let after = calendar(&folder);
    let moved: Vec<_> = before
        .iter()
        .filter(|(id, day)| after.get(*id).is_some_and(|now| now != *day))
        .collect();
    let same = before
        .iter()
        .filter(|(id, day)| after.get(*id) == Some(day))
        .count();
    assert!(!moved.is_empty() && same > before.len() / 2, "{moved:?}");
}

#[test]
fn before_the_first_step_and_without_a_diary_all_is_as_it_was() {
    let (folder, first) = with_diary("unfold-none", LOST);
    let first: Vec<&str> = first
        .lines()
        .filter(|line| !line.starts_with("Saved"))
        .collect();
    let early = folder.run(&["plan", "garden.toml", "--on", "2027-03-02"]);
    let early = text(&early.stdout);
    assert_eq!(early.trim_end(), first.join("\n").trim_end());
    std::fs::remove_file(folder.path("diary.toml")).unwrap();
    let without = folder.answer(&["plan", "garden.toml", "--on", "2027-05-20"]);
    assert_eq!(without.trim_end(), first.join("\n").trim_end());
}

#[test]
fn one_child_more_does_not_make_the_season_begin_anew() {
    let (folder, _) = with_diary(
        "unfold-child",
        "[[entry]]\non = 2027-04-21\nwords = \"A new child in 2a\"\n",
    );
    let file = folder
        .read("garden.toml")
        .replace("\"2a\", children = 15", "\"2a\", children = 16");
    std::fs::write(folder.path("garden.toml"), file).unwrap();
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    assert!(told.contains("No date moves."), "{told}");
    folder.answer(&["verify", "garden.toml", "plan.json"]);
}

#[test]
fn a_class_that_missed_its_lesson_makes_up_for_it_in_its_next() {
    let missed =
        "[[entry]]\non = 2027-05-12\nmissed = \"sow\"\ningredient = \"radish\"\nclass = \"1b\"\n";
    let (folder, _) = with_diary("unfold-missed", missed);
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-05-14", "--out", "."]);
    let row = told
        .lines()
        .find(|line| line.contains("sow radish"))
        .unwrap();
    assert!(
        row.contains("11-12 May") && row.contains("11-19 May"),
        "{told}"
    );
    assert!(told.contains("1b missed its lesson"), "{told}");
    let page = folder.answer(&["show", "garden.toml", "--grade", "1"]);
    assert!(page.contains("19 May"), "{page}");
}

/// 12 of 44 are up, of some two seeds a plant: what is left is told on the screen, and the garden brings less.
#[test]
fn few_that_are_up_bring_less() {
    let up = "[[entry]]\non = 2027-05-05\nup = 12\nof = 44\ningredient = \"spinach\"\n";
    let (folder, first) = with_diary("unfold-up", up);
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-05-06"]);
    let brings = |text: &str| {
        let row = text
            .lines()
            .find(|line| line.contains("Grade 2  spinach"))
            .unwrap();
        let last = row.split_whitespace().last().unwrap().to_owned();
        last.split('-').next().unwrap().parse::<f64>().unwrap()
    };
    let (before, now) = (brings(&first), brings(&told));
    assert!(now < before, "{before} {now}: {told}");
}

#[test]
fn a_loss_that_is_taken_back_is_none() {
    let (folder, _) = with_diary("unfold-back", LOST);
    folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    let back = format!("{LOST}\n[[entry]]\non = 2027-04-28\ntakes_back = 1\n");
    std::fs::write(folder.path("diary.toml"), back).unwrap();
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-04-29"]);
    let row = told
        .lines()
        .find(|line| line.contains("Grade 2  spinach"))
        .unwrap();
    assert!(row.contains("20 Apr"), "{told}");
}

#[test]
fn where_nothing_can_be_grown_again_the_ways_out_are_told() {
    let diary = LOST.replace("2027-04-27", "2027-06-10");
    let (folder, _) = with_diary("unfold-late", &diary);
    let told = folder.run(&["plan", "garden.toml", "--on", "2027-06-11"]);
    assert_eq!(told.status.code(), Some(4));
    let told = text(&told.stdout);
    assert!(told.starts_with("Planned as of Fri 11 Jun 2027"), "{told}");
    assert!(
        told.contains("No plan.") && told.contains("spinach"),
        "{told}"
    );
    // What would help is planned in the same season.
    let why = folder.run(&["why", "garden.toml", "--on", "2027-06-11"]);
    assert_eq!(why.status.code(), Some(4));
    let why = text(&why.stdout);
    assert!(why.starts_with("Planned as of Fri 11 Jun 2027"), "{why}");
    assert!(why.contains("No plan."), "{why}");
}

#[test]
fn a_name_that_is_gone_is_told() {
    let (folder, _) = with_diary("unfold-name", LOST);
    let file = folder.read("garden.toml").replace("\"2a\"", "\"2x\"");
    std::fs::write(folder.path("garden.toml"), file).unwrap();
    let told = folder.run(&["plan", "garden.toml", "--on", "2027-04-28"]);
    assert_eq!(told.status.code(), Some(3));
    let told = text(&told.stderr);
    assert!(
        told.contains("no class \"2a\"") && told.contains("move the saved"),
        "{told}"
    );
}

/// Too late to sow again, tomato is bought as plants: said before its days, with the name of the grade.
#[test]
fn another_way_of_growing_is_told_with_the_days_that_fall_away() {
    let scenario = include_str!("../../../scenarios/soup-day/garden.toml");
    let weather = include_str!("../../../scenarios/soup-day/weather.csv");
    let folder = Folder::with("unfold-bought", |_| scenario.to_owned());
    std::fs::write(folder.path("weather.csv"), weather).unwrap();
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let lost =
        "[[entry]]\non = 2027-05-28\nlost = 1.0\ningredient = \"tomato\"\ncause = \"slugs\"\n";
    std::fs::write(folder.path("diary.toml"), lost).unwrap();
    let told = folder.answer(&["plan", "garden.toml", "--on", "2027-06-01"]);
    let (_, changes) = told.split_once("WHAT CHANGES").unwrap();
    let (changes, _) = changes.split_once("Ready in the").unwrap();
    let changes = changes.split_whitespace().collect::<Vec<_>>().join(" ");
    for part in [
        "Grade 5 tomato",
        "bought as",
        "sow tomato 30 Apr - 7 May -",
        "lost: slugs",
    ] {
        assert!(changes.contains(part), "{part}: {changes}");
    }
    assert!(
        !changes.contains("potato") && !changes.contains("leek"),
        "{changes}"
    );
}
