//! The files that are no pages: calendars, tables, data with its schema, and the workbook; of
//! scenarios, and of a garden whose names are as bad as can be.

use std::collections::BTreeSet;
use std::path::Path;
use std::sync::LazyLock;
use std::time::{Duration, SystemTime};

use serde_json::Value;
use tureen::checker::{CheckedPlan, check};
use tureen::explain;
use tureen::facts::Facts;
use tureen::facts::entries::Span;
use tureen::facts::tasks::Doer;
use tureen::garden::{Garden, HandOver};
use tureen::handouts::calendar::Stamp;
use tureen::handouts::folder::File;
use tureen::handouts::{class_files, files};
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::report::entries::{Entry, entries};
use tureen::words::view::View;

use crate::scenarios;
use crate::support::day;

/// A garden with its plan.
type Planned = (Garden, CheckedPlan);

fn planned(name: &str) -> Planned {
    let garden = scenarios::load(name, "garden.toml");
    let checked = plan(&garden, &Options::default()).unwrap();
    (garden, checked)
}

fn soup() -> &'static Planned {
    static SOUP: LazyLock<Planned> = LazyLock::new(|| planned("soup-day"));
    &SOUP
}

fn saved(seconds: u64) -> Stamp {
    Stamp::from(SystemTime::UNIX_EPOCH + Duration::from_secs(seconds))
}

fn written((garden, checked): &Planned) -> Vec<File> {
    files(
        &View::of(&Facts::new(garden, checked)),
        saved(1_800_000_000),
        &[],
    )
    .unwrap()
}

fn text(files: &[File], path: &str) -> String {
    let file = files.iter().find(|file| file.path == path).unwrap();
    String::from_utf8(file.bytes.clone()).unwrap()
}

/// The lines of a calendar file, put together again.
fn unfolded(calendar: &str) -> Vec<String> {
    let lines = calendar.replace("\r\n ", "");
    lines.split_terminator("\r\n").map(str::to_owned).collect()
}

fn values<'a>(lines: &'a [String], name: &str) -> Vec<&'a str> {
    lines
        .iter()
        .filter_map(|line| line.strip_prefix(name))
        .collect()
}

/// The same plan with bad names everywhere; `n` names the n-th class.
fn renamed((garden, checked): &Planned, class: impl Fn(usize) -> String) -> Planned {
    let mut garden = garden.clone();
    let mut new_names = Vec::new();
    for (n, class_of) in garden
        .grades
        .iter_mut()
        .flat_map(|g| &mut g.classes)
        .enumerate()
    {
        new_names.push((class_of.name.clone(), class(n)));
        class_of.name = class(n);
    }
    let bad = |name: &str| format!("=<b>{name}</b>\r\n\t\u{202e}, \"x\"; \\n/../");
    garden.name = bad(&garden.name);
    garden.school = Some(bad("school"));
    garden.grades.iter_mut().for_each(|g| g.name = bad(&g.name));
    garden
        .ingredients
        .iter_mut()
        .for_each(|i| i.name = bad(&i.name));
    garden
        .school_year
        .breaks
        .iter_mut()
        .for_each(|b| b.name = bad(&b.name));
    let mut plan = checked.plan().clone();
    for planting in &mut plan.plantings {
        planting.ingredient = bad(&planting.ingredient);
        for step in &mut planting.steps {
            if let tureen::plan::When::Sessions(visits) = &mut step.when {
                for visit in visits {
                    let new = new_names.iter().find(|(old, _)| *old == visit.class);
                    visit.class = new.unwrap().1.clone();
                }
            }
        }
    }
    for promise in &mut plan.promise.ingredients {
        promise.ingredient = bad(&promise.ingredient);
    }
    let checked = check(&garden, plan).unwrap();
    (garden, checked)
}

#[test]
fn the_folder_holds_what_it_should() {
    let paths: Vec<String> = written(soup()).into_iter().map(|file| file.path).collect();
    let mut expected = vec!["calendars/all.ics".to_owned()];
    for grade in 1..=6 {
        expected.extend(["a", "b"].map(|c| format!("calendars/class-{grade}{c}.ics")));
    }
    expected.extend(["steps", "plantings", "weeks"].map(|t| format!("tables/{t}.csv")));
    expected.extend(["plan-data.json", "plan-data.schema.json"].map(str::to_owned));
    if cfg!(feature = "spreadsheet") {
        expected.push("plan.xlsx".to_owned());
    }
    assert_eq!(paths, expected);
}

#[test]
fn the_same_plan_and_moment_give_the_same_bytes() {
    assert_eq!(written(soup()), written(soup()));
}

#[test]
fn the_schema_in_the_repository_is_the_one_that_is_derived() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/handouts/plan-data.schema.json");
    let derived = text(&written(soup()), "plan-data.schema.json");
    if std::env::var_os("INSTA_UPDATE").is_some_and(|how| how == "always") {
        std::fs::write(&path, &derived).unwrap();
    }
    let committed = std::fs::read_to_string(&path).unwrap();
    assert!(committed == derived, "INSTA_UPDATE=always writes it anew");
}

#[test]
fn every_session_of_the_plan_is_one_task_with_its_time() {
    let (garden, checked) = soup();
    let tasks = Facts::new(garden, checked).tasks;
    let steps = checked.plan().plantings.iter().flat_map(|p| &p.steps);
    let people = |when: &tureen::plan::When| match when {
        tureen::plan::When::Sessions(visits) => visits.len(),
        _ => 1,
    };
    assert_eq!(tasks.len(), steps.map(|s| people(&s.when)).sum::<usize>());
    for task in &tasks {
        let Doer::Class(class) = task.who else {
            assert_eq!((task.begins, task.takes), (None, None));
            continue;
        };
        let slot = garden.class(class).slot_on(&garden.school_year, task.from);
        assert_eq!(task.begins, slot.at, "{task:?}");
        assert!(task.takes.unwrap().0 <= slot.minutes.0);
        assert!(garden.school_year.term_on(task.from).is_some());
    }
    assert!(tasks.iter().any(|t| t.begins.is_some()) && tasks.iter().any(|t| t.begins.is_none()));
}

#[test]
fn calendars_are_folded_by_octets_and_tell_events_apart() {
    let bad = renamed(soup(), |n| format!("{}\u{1f33b}{n}", "ä".repeat(n * 20)));
    for planned in [soup(), &bad] {
        for file in written(planned).iter().filter(|f| f.path.ends_with(".ics")) {
            let calendar = std::str::from_utf8(&file.bytes).unwrap();
            for line in calendar.split("\r\n") {
                assert!(line.len() <= 75, "{line}");
                assert!(!line.contains(['\r', '\n', '\t', '\u{202e}']), "{line:?}");
            }
            let lines = unfolded(calendar);
            let uids = values(&lines, "UID:");
            assert_eq!(uids.len(), values(&lines, "BEGIN:VEVENT").len());
            assert_eq!(uids.iter().collect::<BTreeSet<_>>().len(), uids.len());
            assert_eq!(values(&lines, "DTSTAMP:").len(), uids.len());
        }
    }
}

#[test]
fn a_plan_on_other_days_keeps_its_uids_and_counts_as_newer() {
    let (garden, checked) = soup();
    let mut moved = garden.clone();
    for break_of in &mut moved.school_year.breaks {
        break_of.to = break_of.to.succ_opt().unwrap();
    }
    let uids = |garden: &Garden, stamp| {
        let files = files(&View::of(&Facts::new(garden, checked)), stamp, &[]).unwrap();
        let lines = unfolded(&text(&files, "calendars/all.ics"));
        let of = |name| {
            values(&lines, name)
                .into_iter()
                .map(str::to_owned)
                .collect::<BTreeSet<_>>()
        };
        (of("UID:"), of("DTEND;VALUE=DATE:"), of("SEQUENCE:"))
    };
    let old = uids(garden, saved(1_800_000_000));
    let new = uids(&moved, saved(1_800_000_001));
    assert_eq!(old.0, new.0);
    assert_ne!(old.1, new.1);
    assert_eq!(old.2, BTreeSet::from(["222163200".to_owned()]));
    assert_eq!(new.2, BTreeSet::from(["222163201".to_owned()]));
}

#[test]
fn another_project_has_other_uids() {
    let (garden, checked) = soup();
    let other = Garden {
        name: "Soup day 2028".to_owned(),
        ..garden.clone()
    };
    let uids = |garden: &Garden| {
        let all = text(
            &files(&View::of(&Facts::new(garden, checked)), saved(0), &[]).unwrap(),
            "calendars/all.ics",
        );
        let lines = unfolded(&all);
        values(&lines, "UID:")
            .into_iter()
            .map(str::to_owned)
            .collect::<BTreeSet<_>>()
    };
    assert!(uids(garden).is_disjoint(&uids(&other)));
}

#[test]
fn what_a_grade_takes_over_stands_in_its_classes_calendars() {
    let (garden, checked) = soup();
    let sixth = garden.grade_with_id("6").unwrap();
    assert!(matches!(garden[sixth].hand_over, HandOver::Leaves { .. }));
    let files = written(soup());
    let lines = unfolded(&text(&files, "calendars/class-5a.ics"));
    let picks = values(&lines, "SUMMARY:");
    assert!(
        picks.iter().any(|s| s.starts_with("5a: Pick: leek")),
        "{picks:?}"
    );
    assert_eq!(picks.iter().filter(|s| **s == "Soup day").count(), 1);
    assert_eq!(class_files(garden).len(), 12);
    assert!(checked.plan().plantings.iter().any(|p| p.grades == ["6"]));
}

#[test]
fn days_without_school_end_before_the_day_that_ends_them() {
    let files = written(soup());
    let all = text(&files, "calendars/all.ics");
    let summer = "DTSTART;VALUE=DATE:20270619\r\nDTEND;VALUE=DATE:20270830\r\n\
                  TRANSP:TRANSPARENT\r\nSUMMARY:Summer: families water\r\n";
    assert!(all.contains(summer));
    let feast = "DTSTART;VALUE=DATE:20271008\r\nDTEND;VALUE=DATE:20271009\r\n";
    assert!(all.contains(feast));
}

#[test]
fn with_slack_the_calendar_tells_when_to_make_up() {
    let (garden, checked) = soup();
    let slack = explain::slack(garden, checked);
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let all = entries(&view, &slack);
    let told = |words: &str| {
        let says = |e: &&Entry<'_>| e.lines.iter().any(|l| l.contains(words));
        all.iter().filter(says).count()
    };
    assert!(told("make up for it on") > 0 && told("tell the coordinator at once") > 0);
    for entry in all.iter().filter(|e| e.entry.key[0] == "step") {
        let Some(line) = entry.lines.iter().find(|l| l.contains("make up")) else {
            continue;
        };
        let Span::Lesson(on, ..) = entry.entry.span else {
            continue;
        };
        let short = on.format("%a\u{a0}%-d\u{a0}%b").to_string();
        assert!(!line.contains(&short), "{line} on {short}");
    }
    assert!(
        entries(&view, &[])
            .iter()
            .all(|e| e.lines.iter().all(|l| !l.contains("make up")))
    );
}

#[test]
fn bad_names_are_harmless_in_every_file() {
    let names = [
        "=1+1",
        "../../x",
        "a\r\nBEGIN:VEVENT",
        "\u{202e}z",
        "con.",
        "A/b",
        "a b",
        "🌻",
    ];
    let bad = renamed(soup(), |n| match names.get(n) {
        Some(name) => (*name).to_owned(),
        None => format!("{}{n}", "x".repeat(300)),
    });
    let files = written(&bad);
    assert_eq!(files.len(), written(soup()).len());
    let paths: BTreeSet<&str> = files.iter().map(|f| f.path.as_str()).collect();
    assert_eq!(paths.len(), files.len());
    for path in [
        "calendars/class-1-1.ics",
        "calendars/class-a-b.ics",
        "calendars/class-a-b-2.ics",
    ] {
        assert!(paths.contains(path), "{path} of {paths:?}");
    }
    let data: Value = serde_json::from_str(&text(&files, "plan-data.json")).unwrap();
    assert_eq!(
        data["ingredients"][1]["name"],
        "=<b>potato</b> , \"x\"; \\n/../"
    );
    let calendar = unfolded(&text(&files, "calendars/all.ics"));
    assert!(
        calendar
            .iter()
            .any(|l| l.contains("=<b>potato</b> \\, \"x\"\\; \\\\n/../"))
    );
    let steps = text(&files, "tables/steps.csv");
    assert!(steps.contains("\"'=<b>potato</b> , \"\"x\"\"; \\n/../\""));
    for file in files.iter().filter(|f| !f.path.ends_with(".xlsx")) {
        let text = std::str::from_utf8(&file.bytes).unwrap();
        let unseen = |c: char| c.is_control() && !matches!(c, '\r' | '\n');
        assert!(
            !text.contains(unseen) && !text.contains('\u{202e}'),
            "{}",
            file.path
        );
        assert!(
            file.path
                .split('/')
                .all(|p| !p.starts_with('.') && p.len() < 200)
        );
    }
}

#[test]
fn a_moment_before_1970_or_far_ahead_is_borne() {
    let (garden, checked) = soup();
    let early = Stamp::from(SystemTime::UNIX_EPOCH - Duration::from_secs(5));
    let all = text(
        &files(&View::of(&Facts::new(garden, checked)), early, &[]).unwrap(),
        "calendars/all.ics",
    );
    assert!(all.contains("DTSTAMP:19700101T000000Z\r\n") && all.contains("SEQUENCE:0\r\n"));
    let far = text(
        &files(
            &View::of(&Facts::new(garden, checked)),
            saved(9_999_999_999),
            &[],
        )
        .unwrap(),
        "calendars/all.ics",
    );
    assert!(far.contains("SEQUENCE:2147483647\r\n"));
    assert_eq!(garden.feast.day, day("2027-10-08"));
}
