//! The diary as it is written on the command line, and the week that follows from plan and diary.

use super::Folder;

fn run(folder: &Folder, arguments: &[&str]) -> (Option<i32>, String, String) {
    let output = folder.tureen(arguments).output().unwrap();
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).unwrap();
    (
        output.status.code(),
        text(&output.stdout),
        text(&output.stderr),
    )
}

fn noted(folder: &Folder, words: &[&str]) -> String {
    let (code, told, wrong) = run(folder, &[&["note", "garden.toml"], words].concat());
    assert_eq!(code, Some(0), "{words:?} {wrong}");
    told
}

#[test]
fn entries_are_added_listed_and_taken_back() {
    let folder = Folder::new("note");
    let (_, nothing, _) = run(&folder, &["note", "garden.toml"]);
    assert!(
        nothing.contains("Nothing is written down yet."),
        "{nothing}"
    );
    let told = noted(
        &folder,
        &[
            "weather",
            "-1",
            "to",
            "14",
            "rain",
            "5",
            "--on",
            "2026-04-01",
        ],
    );
    assert!(told.contains("lowest -1 C"), "{told}");
    noted(
        &folder,
        &[
            "words",
            "The hedgehog is back",
            "--by",
            "Ms Fern",
            "--on",
            "2026-04-02",
        ],
    );
    let (_, list, _) = run(&folder, &["note", "garden.toml"]);
    assert!(
        list.contains("The hedgehog is back") && list.contains("Ms Fern"),
        "{list}"
    );
    let told = noted(&folder, &["--undo"]);
    assert!(told.contains("Entry 2 does not count any more."), "{told}");
    let told = noted(&folder, &["--undo", "1"]);
    assert!(told.contains("Entry 1"), "{told}");
    let (_, list, _) = run(&folder, &["note", "garden.toml"]);
    assert!(list.contains("Nothing is written down yet."), "{list}");
    let before = folder.read("diary.toml");
    for wrong in [
        &["--undo"][..],
        &["flew", "away"],
        &["sowed", "nothing"],
        &["frost", "--on", "2999-01-01"],
    ] {
        let (code, _, told) = run(&folder, &[&["note", "garden.toml"], wrong].concat());
        assert_eq!(code, Some(2), "{wrong:?} {told}");
    }
    assert_eq!(folder.read("diary.toml"), before);
}

#[test]
fn many_writers_at_once_and_half_a_line_lose_nothing() {
    let folder = Folder::new("note-at-once");
    std::thread::scope(|scope| {
        for writer in 0..8 {
            let folder = &folder;
            scope.spawn(move || {
                for entry in 0..5 {
                    noted(
                        folder,
                        &["words", &format!("w{writer}e{entry}"), "--on", "2026-04-02"],
                    );
                }
            });
        }
    });
    // A run that was killed amid its write.
    let mut text = folder.read("diary.toml");
    assert_eq!(
        text.matches("# The diary of the garden").count(),
        1,
        "{text}"
    );
    text += "\n[[entry]]\non = 2026-04";
    std::fs::write(folder.path("diary.toml"), text).unwrap();
    let (code, _, wrong) = run(
        &folder,
        &[
            "note",
            "garden.toml",
            "words",
            "after it",
            "--on",
            "2026-04-03",
        ],
    );
    assert_eq!(code, Some(0), "{wrong}");
    let (code, list, wrong) = run(&folder, &["note", "garden.toml"]);
    assert_eq!(code, Some(0));
    assert!(wrong.contains("this entry cannot be read"), "{wrong}");
    for writer in 0..8 {
        for entry in 0..5 {
            assert!(
                list.contains(&format!("w{writer}e{entry}")),
                "w{writer}e{entry}\n{list}"
            );
        }
    }
    assert!(list.contains("after it"), "{list}");
}

#[test]
fn a_week_tells_what_is_due_and_what_is_not_written_down_as_done() {
    let folder = Folder::new("today");
    let (code, _, wrong) = run(&folder, &["plan", "garden.toml", "--out", "."]);
    assert_eq!(code, Some(0), "{wrong}");
    let plan: serde_json::Value = serde_json::from_str(&folder.read("plan.json")).unwrap();
    let planting = &plan["plan"]["plantings"][0];
    let crop = planting["ingredient"].as_str().unwrap().to_owned();
    let visit = &planting["steps"][0]["when"]["sessions"][0];
    let (day, class) = (
        visit["date"].as_str().unwrap(),
        visit["class"].as_str().unwrap(),
    );
    let on = |day: &str| run(&folder, &["today", "garden.toml", "--on", day]);
    let (code, week, wrong) = on(day);
    assert_eq!(code, Some(0), "{wrong}");
    let row = |text: &str| {
        text.lines()
            .any(|line| line.contains(class) && line.contains(&crop))
    };
    let this_week = |text: &str| text.split("NOT WRITTEN DOWN").next().unwrap().to_owned();
    let open = |text: &str| {
        text.split("NOT WRITTEN DOWN")
            .nth(1)
            .unwrap_or_default()
            .to_owned()
    };
    assert!(
        week.contains("THIS WEEK") && row(&this_week(&week)),
        "{week}"
    );
    let later: tureen::calendar::Date = day.parse().unwrap();
    let later = tureen::calendar::plus_days(later, 7).to_string();
    let (_, week, _) = on(&later);
    assert!(row(&open(&week)), "{week}");
    // The day lies ahead of the clock's: only a diary written by hand can hold it today.
    let entry = format!(
        "[[entry]]\non = {day}\ndone = \"sow\"\ningredient = \"{crop}\"\nclass = \"{class}\"\n"
    );
    std::fs::write(folder.path("diary.toml"), entry).unwrap();
    let (_, week, wrong) = on(&later);
    let sown = |text: &str| {
        text.lines()
            .any(|line| line.contains(class) && line.contains(&crop) && line.contains("Sow"))
    };
    assert!(!sown(&week) && wrong.is_empty(), "{week}{wrong}");
    let (code, _, _) = run(&folder, &["today", "garden.toml", "--on", "x"]);
    assert_eq!(code, Some(2));
}
