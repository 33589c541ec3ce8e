//! `plan` with a diary: the rest of the season, what changes, and all that reads the plan so saved.

use std::collections::BTreeMap;

use super::{Folder, text};

const LOST: &str =
    "[[entry]]\non = 2027-04-27\nlost = 1.0\ningredient = \"spinach\"\ncause = \"snails\"\n";

/// The small school with its plan saved and an entry in its diary.
pub fn with_diary(name: &str, diary: &str) -> (Folder, String) {
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
        before.contains("100 % of spinach is lost. To plan the rest again"),
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
        first.contains("Sow in bed: spinach  20 Apr  4 May") && first.contains("snails"),
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
fn before_the_first_step_all_is_as_it_was_and_without_a_diary_a_day_is_asked_for() {
    let (folder, first) = with_diary("unfold-none", LOST);
    let first: Vec<&str> = first
        .lines()
        .filter(|line| !line.starts_with("Saved"))
        .collect();
    let early = folder.run(&["plan", "garden.toml", "--on", "2027-03-02"]);
    let early = text(&early.stdout);
    assert_eq!(early.trim_end(), first.join("\n").trim_end());
    std::fs::remove_file(folder.path("diary.toml")).unwrap();
    let without = folder.answer(&["plan", "garden.toml"]);
    assert_eq!(without.trim_end(), first.join("\n").trim_end());
    // The saved plan alone tells what was due by a day.
    let by_the_plan = folder.answer(&["plan", "garden.toml", "--on", "2027-05-20"]);
    let words: Vec<&str> = by_the_plan.split_whitespace().collect();
    let told = words.join(" ");
    assert!(
        told.starts_with(
            "Planned as of Thu 20 May 2027, by the saved plan; nothing else is written down."
        ),
        "{by_the_plan}"
    );
    assert!(told.contains("No date moves."), "{by_the_plan}");
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
        .find(|line| line.contains("Sow in bed: radish"))
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
        "Sow indoors: tomato 30 Apr - 7 May -",
        "lost: slugs",
    ] {
        assert!(changes.contains(part), "{part}: {changes}");
    }
    assert!(
        !changes.contains("potato") && !changes.contains("leek"),
        "{changes}"
    );
}

#[test]
fn after_the_dish_nothing_is_left_to_plan() {
    let (folder, _) = with_diary("unfold-over", LOST);
    let over = folder.run(&["plan", "garden.toml", "--on", "2028-01-10"]);
    assert_eq!(over.status.code(), Some(2));
    let told = text(&over.stderr);
    assert!(
        told.contains("nothing of its season is left to plan"),
        "{told}"
    );
    assert!(told.contains("--on DATE"), "{told}");
}

/// The saved plan knows of one loss; another that is written down later, for a day before, is still to be decided.
#[test]
fn a_loss_that_is_written_down_late_is_told_until_it_is_planned_for() {
    let (folder, _) = with_diary("unfold-late-entry", LOST);
    folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    let late = "\n[[entry]]\non = 2027-04-26\nlost = 1.0\ningredient = \"radish\"\n";
    std::fs::write(folder.path("diary.toml"), LOST.to_owned() + late).unwrap();
    let today = folder.answer(&["today", "garden.toml", "--on", "2027-04-28"]);
    assert!(today.contains("100 % of radish is lost"), "{today}");
    assert!(!today.contains("of spinach is lost"), "{today}");
}

/// A broken section is told also where nothing has begun yet.
#[test]
fn what_is_wrong_in_the_diary_is_told_before_the_first_step() {
    let (folder, _) = with_diary("unfold-broken", "[[entry]]\non = 2027-03-01\nlost = 2.0\n");
    let output = folder.run(&["plan", "garden.toml", "--on", "2027-03-01"]);
    assert!(
        text(&output.stderr).contains("diary.toml"),
        "{}",
        text(&output.stderr)
    );
}

/// What has begun was ordered before; what is sown again is ordered at once, on the screen and on the shopping list.
#[test]
fn only_what_is_still_to_come_is_ordered() {
    let lost = LOST
        .replace("2027-04-27", "2027-05-13")
        .replace("spinach", "radish");
    let (folder, first) = with_diary("unfold-orders", &lost);
    let ordered = |plan: &str| {
        let (_, orders) = plan.split_once("DECIDE NEXT").unwrap();
        let order = orders.lines().find(|line| line.contains("Order seed"));
        order.unwrap().to_owned()
    };
    assert!(ordered(&first).contains("spinach"), "{first}");
    let plan = folder.answer(&["plan", "garden.toml", "--on", "2027-05-14", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let shopping = folder.read("out/shopping.html");
    let orders = ordered(&plan);
    assert!(
        orders.contains("by Fri 14 May") && orders.contains("radish"),
        "{plan}"
    );
    assert!(!orders.contains("spinach"), "{plan}");
    let (_, table) = shopping.split_once("Seed, pieces and plants").unwrap();
    let (table, _) = table.split_once("</table>").unwrap();
    assert!(
        table.contains("radish") && table.contains("14\u{a0}May"),
        "{table}"
    );
    assert!(!table.contains("spinach"), "{table}");
}

/// A step before the start of the project is told with its line; the plan, the week and the pages are made all the same.
#[test]
fn an_entry_of_a_day_before_the_start_stops_nothing() {
    let early =
        "[[entry]]\non = 2027-02-23\ndone = \"sow\"\ningredient = \"spinach\"\nclass = \"2a\"\n";
    let (folder, _) = with_diary("unfold-early", early);
    for command in [&["plan", "--out", "."][..], &["today"], &["days"]] {
        let all = [
            &[command[0], "garden.toml", "--on", "2027-04-28"],
            &command[1..],
        ]
        .concat();
        let told = folder.run(&all);
        assert_eq!(told.status.code(), Some(0), "{command:?}");
        let wrong = text(&told.stderr);
        for part in [
            "diary.toml:1",
            "2027-02-23 lies before 2027-03-01",
            "`start`",
        ] {
            assert!(wrong.contains(part), "{command:?}: {wrong}");
        }
    }
    folder.answer(&["show", "garden.toml", "--all"]);
}

/// What is tried goes on with the season: what leaves out what has begun is refused, and `days` shows no day gone by.
#[test]
fn what_is_tried_goes_on_with_the_season() {
    let (folder, _) = with_diary("unfold-tried", LOST);
    let on = ["--on", "2027-05-20"];
    let later = "calendar.start=2027-05-15";
    let told = folder.run(&[&["try", "garden.toml", "--set", later], &on[..]].concat());
    assert_eq!(told.status.code(), Some(3));
    let told = text(&told.stderr);
    for part in ["the season cannot go on", "before the start of the project"] {
        assert!(told.contains(part), "{part}: {told}");
    }
    let days = [&["days", "garden.toml", "--from", "2027-04-30"], &on[..]].concat();
    let told = folder.answer(&[&days, &["--to", "2027-06-25"][..]].concat());
    assert!(!told.contains("14 May"), "{told}");
    assert!(told.contains("21 May") && told.contains("18 Jun"), "{told}");
}
