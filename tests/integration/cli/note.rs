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

/// A folder with a plan.
fn with_plan(name: &str) -> Folder {
    let folder = Folder::new(name);
    let (code, _, wrong) = run(&folder, &["plan", "garden.toml", "--out", "."]);
    assert_eq!(code, Some(0), "{wrong}");
    folder
}

/// What `today` answers on 10 May: exit code, its text on one line, and what is wrong.
fn on_the_tenth_of_may(folder: &Folder, more: &[&str]) -> (Option<i32>, String, String) {
    let arguments = [&["today", "garden.toml", "--on", "2027-05-10"], more].concat();
    let (code, told, wrong) = run(folder, &arguments);
    (
        code,
        told.split_whitespace().collect::<Vec<_>>().join(" "),
        wrong,
    )
}

const DAYS: &str = "date,tmin_c,tmax_c,rain_mm\n2027-05-09,-9,10,0\n2027-05-10,-9,10,0\n2027-05-11,5,20,0\n\
                    2027-05-12,-1,20,0\n2027-05-13,5,20,1\n";

#[test]
fn a_forecast_is_told_first_however_it_is_given() {
    let folder = with_plan("forecast");
    let ahead = |more: &[&str]| {
        let (code, week, wrong) = on_the_tenth_of_may(&folder, more);
        assert_eq!(code, Some(0), "{more:?} {wrong}");
        let (_, rest) = week.split_once("THE WEATHER AHEAD").unwrap_or_default();
        rest.split("THIS WEEK")
            .next()
            .unwrap_or_default()
            .to_owned()
    };
    assert_eq!(ahead(&[]), "");
    for cold in [
        ["--tonight", "-2"],
        ["--tonight", "-2C"],
        ["--tonight", "28.4F"],
    ] {
        let told = ahead(&cold);
        assert!(
            told.contains("Frost: -2 C (28 F) in the night to Tue 11 May."),
            "{told}"
        );
    }
    assert!(ahead(&["--tonight", "30F"]).contains("Frost: -1.1 C (30 F) in the night"));
    let told = ahead(&["--tomorrow", "32"]);
    assert!(told.contains("Heat: 32 C (90 F) on Tue 11 May."), "{told}");
    std::fs::write(folder.path("days.csv"), DAYS).unwrap();
    let told = ahead(&["--forecast", "days.csv"]);
    assert!(told.contains("in the night to Wed 12 May."), "{told}");
    assert!(told.contains("Dry until Thu 13 May"), "{told}");
}

#[test]
fn what_is_no_forecast_is_told_as_such() {
    let folder = with_plan("no-forecast");
    std::fs::write(folder.path("days.csv"), DAYS).unwrap();
    let old = "date,tmin_c,tmax_c,rain_mm\n2027-05-10,-9,10,0\n";
    std::fs::write(folder.path("old.csv"), old).unwrap();
    let (code, _, wrong) = on_the_tenth_of_may(&folder, &["--forecast", "old.csv"]);
    assert_eq!(code, Some(2), "{wrong}");
    assert!(
        wrong.contains("none of the 14 days after 2027-05-10"),
        "{wrong}"
    );
    std::fs::write(folder.path("bad.csv"), old.replace("-9", "x")).unwrap();
    let (code, _, wrong) = on_the_tenth_of_may(&folder, &["--forecast", "bad.csv"]);
    assert!(
        code == Some(3) && wrong.contains("bad.csv:2"),
        "{code:?} {wrong}"
    );
    for wrong in [
        &["--tonight", "cold"][..],
        &["--tonight", "-300"],
        &["--tonight", "1", "--forecast", "days.csv"],
        &["--forecast", "nowhere.csv"],
    ] {
        let (code, told, said) = on_the_tenth_of_may(&folder, wrong);
        assert!(
            matches!(code, Some(2 | 3)) && told.is_empty() && !said.is_empty(),
            "{wrong:?}"
        );
    }
}

#[test]
fn a_days_weather_is_told_beside_the_climate() {
    let folder = Folder::new("climate-note");
    let noted = |words: &[&str]| self::noted(&folder, words).replace('\u{a0}', " ");
    let told = noted(&["weather", "-3", "to", "40", "--on", "2026-07-10"]);
    assert!(
        told.contains("40 C (104 F) is warmer than nearly every day about 10 July."),
        "{told}"
    );
    assert!(
        told.contains("-3 C (27 F) is colder than nearly every night about 10 July."),
        "{told}"
    );
    // Its means are 28 and 15 C then.
    let told = noted(&["weather", "15", "to", "28", "--on", "2026-07-15"]);
    assert!(
        told.contains("28 C (82 F) is an ordinary day about 15 July."),
        "{told}"
    );
    assert!(!noted(&["frost", "--on", "2026-04-01"]).contains("about"));
}
