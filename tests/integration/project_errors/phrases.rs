//! Phrases of the diary as people type them, and back from the file.

use tureen::garden::Care;
use tureen::plan::StepKind;
use tureen::project::diary::{Entry, Happened, OPENING, phrase, read};

use super::day;
use super::diary::{days, done, names, today};

fn weather(low: Option<f64>, high: Option<f64>, rain: Option<f64>, frost: bool) -> Happened {
    Happened::Weather {
        low,
        high,
        rain,
        frost,
    }
}

/// Phrases of what was done, and what they mean.
fn deeds() -> Vec<(&'static str, Happened)> {
    vec![
        (
            "sowed carrot",
            done(StepKind::Sow, "carrot", None, None, None),
        ),
        (
            "Sowed Carrot 3A",
            done(StepKind::Sow, "carrot", Some("3a"), None, None),
        ),
        (
            "sowed dry bean 60 3b",
            done(StepKind::Sow, "dry bean", Some("3b"), Some(60), None),
        ),
        (
            "sowed onion (from seed) kestrels",
            done(
                StepKind::Sow,
                "onion (from seed)",
                Some("Kestrels"),
                None,
                None,
            ),
        ),
        (
            "potted up tomato 24",
            done(StepKind::PotUp, "tomato", None, Some(24), None),
        ),
        (
            "planted out tomato",
            done(StepKind::PlantOut, "tomato", None, None, None),
        ),
        (
            "planted tomato",
            done(StepKind::PlantOut, "tomato", None, None, None),
        ),
        (
            "thinned carrot 3a",
            done(StepKind::Thin, "carrot", Some("3a"), None, None),
        ),
        (
            "picked carrot 3.2 kg 3a",
            done(StepKind::Pick, "carrot", Some("3a"), None, Some(3.2)),
        ),
        (
            "harvested carrot 3,2kg",
            done(StepKind::Pick, "carrot", None, None, Some(3.2)),
        ),
        (
            "picked carrot 500 g",
            done(StepKind::Pick, "carrot", None, None, Some(0.5)),
        ),
    ]
}

/// Phrases of all else.
fn events() -> Vec<(&'static str, Happened)> {
    let lost = |ingredient: &str, share, cause: &str| Happened::Lost {
        ingredient: ingredient.to_owned(),
        share,
        cause: cause.to_owned(),
    };
    let up = |count, of| Happened::Up {
        ingredient: "carrot".to_owned(),
        count,
        of,
    };
    let missed = |step| Happened::Missed {
        step,
        ingredient: "dry bean".to_owned(),
        class: "3b".to_owned(),
    };
    vec![
        ("up carrot 12 of 44", up(12, Some(44))),
        ("up carrot 12", up(12, None)),
        ("lost tomato 20 % slugs", lost("tomato", 0.2, "slugs")),
        (
            "lost tomato 20% late frost",
            lost("tomato", 0.2, "late frost"),
        ),
        ("lost tomato all", lost("tomato", 1.0, "")),
        ("missed 3b sowed dry bean", missed(StepKind::Sow)),
        ("missed 3b thinned dry bean", missed(StepKind::Thin)),
        (
            "weather -1 to 14 rain 5",
            weather(Some(-1.0), Some(14.0), Some(5.0), false),
        ),
        (
            "weather \u{2212}1 14 frost",
            weather(Some(-1.0), Some(14.0), None, true),
        ),
        ("weather rain 12.5", weather(None, None, Some(12.5), false)),
        ("frost", weather(None, None, None, true)),
        (
            "words the \"hedgehog\" is back",
            Happened::Words("the \"hedgehog\" is back".to_owned()),
        ),
    ]
}

/// School that falls out.
fn no_school() -> Vec<(&'static str, Happened)> {
    let closed = |from, care| Happened::Closed {
        from: day(from),
        to: day("2027-06-11"),
        care,
    };
    let no_lesson = |on| Happened::NoLesson {
        class: "3b".to_owned(),
        day: day(on),
    };
    vec![
        (
            "closed to 2027-06-11 families",
            closed("2027-06-01", Care::Families),
        ),
        (
            "closed 2027-05-24 to 2027-06-11",
            closed("2027-05-24", Care::Nobody),
        ),
        (
            "closed 2027-05-24 2027-06-11 staff",
            closed("2027-05-24", Care::Staff),
        ),
        ("no lesson 3b", no_lesson("2027-06-01")),
        ("no lesson 3b 2027-06-08", no_lesson("2027-06-08")),
    ]
}

#[test]
fn phrases_are_read_and_come_back_from_the_file() {
    let mut text = OPENING.to_owned();
    let mut written = Vec::new();
    for (typed, meant) in [deeds(), events(), no_school()].concat() {
        assert_eq!(
            phrase(typed, &names(), today()).as_ref(),
            Ok(&meant),
            "{typed}"
        );
        let by = (written.len() % 2 == 0).then(|| "Ms \\ \"Fern\"".to_owned());
        written.push(Entry {
            on: today(),
            by,
            what: meant,
        });
    }
    // Sown first, and few lost, so that nothing contradicts.
    for entry in &written {
        text += &entry.text();
    }
    let (diary, _) = read("diary.toml", &text, &names(), days());
    let entries: Vec<Entry> = diary.entries.into_iter().map(|(_, entry)| entry).collect();
    assert_eq!(entries, written, "{text}");
}

#[test]
fn a_phrase_that_says_nothing_is_refused_with_a_form() {
    for (typed, told) in [
        ("", "write one of: sowed carrot 3a"),
        ("flew away", "write one of"),
        ("words", "write one of"),
        ("sowed", "name an ingredient of the dish: \"carrot\""),
        ("sowed carot", "did you mean \"carrot\"?"),
        (
            "sowed carrot 4z",
            "no class and no amount; the classes are \"3a\"",
        ),
        ("sowed carrot 2.5", "no number of plants"),
        ("picked carrot 3 ft", "no weight"),
        ("up carrot", "up carrot 12 of 44"),
        ("up carrot many", "no whole number"),
        ("lost tomato", "write how much"),
        ("lost tomato 120 %", "0 to 100 %"),
        ("missed carrot", "missed 3a sowed carrot"),
        ("missed 9z sowed carrot", "no class"),
        ("closed", "write the last day"),
        ("closed to Friday", "write the last day"),
        ("closed to 2027-05-31", "write the last day"),
        ("no school", "no lesson 3a"),
        ("no lesson 9z", "no class"),
        ("no lesson 3a Friday", "no lesson 3a 2027-05-20"),
        ("weather", "weather -1 to 14"),
        ("weather 14 to -1", "the lowest comes first"),
        ("weather warm", "no figure"),
        ("weather nan", "no figure"),
    ] {
        let wrong = phrase(typed, &names(), today()).expect_err(typed);
        assert!(wrong.contains(told), "{typed}: {wrong}");
    }
}
