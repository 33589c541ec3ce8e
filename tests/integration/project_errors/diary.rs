//! The diary: phrases as people type them, sections as they stand in the file, and what cannot be.

use tureen::calendar::Date;
use tureen::diagnostic::Code;
use tureen::plan::StepKind;
use tureen::project::diary::{Diary, Entry, Happened, Names, OPENING, phrase, read};

use super::day;

fn names() -> Names {
    Names {
        ingredients: ["carrot", "dry bean", "onion (from seed)", "tomato"]
            .map(str::to_owned)
            .to_vec(),
        classes: ["3a", "3b", "Kestrels"].map(str::to_owned).to_vec(),
    }
}

fn today() -> Date {
    day("2027-06-01")
}

fn done(
    step: StepKind,
    ingredient: &str,
    class: Option<&str>,
    count: Option<u32>,
    kg: Option<f64>,
) -> Happened {
    let (ingredient, class) = (ingredient.to_owned(), class.map(str::to_owned));
    Happened::Done {
        step,
        ingredient,
        class,
        count,
        kg,
    }
}

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

#[test]
fn phrases_are_read_and_come_back_from_the_file() {
    let mut text = OPENING.to_owned();
    let mut written = Vec::new();
    for (typed, meant) in [deeds(), events()].concat() {
        assert_eq!(phrase(typed, &names()).as_ref(), Ok(&meant), "{typed}");
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
    let (diary, _) = read("diary.toml", &text, &names(), today());
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
        ("weather", "weather -1 to 14"),
        ("weather 14 to -1", "the lowest comes first"),
        ("weather warm", "no figure"),
        ("weather nan", "no figure"),
    ] {
        let wrong = phrase(typed, &names()).expect_err(typed);
        assert!(wrong.contains(told), "{typed}: {wrong}");
    }
}

const SOUND: &str = "\n[[entry]]\non = 2027-05-04\ndone = \"sow\"\ningredient = \"carrot\"\n";

fn told(text: &str) -> (Diary, Vec<Code>, String) {
    let (diary, problems) = read("diary.toml", text, &names(), today());
    (
        diary,
        problems.codes().collect(),
        problems.render(false, 100),
    )
}

const BROKEN: [(&str, Code); 15] = [
    ("[[entry]]\non = 2027-05-\ndone = \"sow\"\n", Code::Syntax),
    ("[[entry]]\non = 2027-05-04\ndone = \"sow\n", Code::Syntax),
    ("[[entry]\non = 2027-05-04\n", Code::Syntax),
    (
        "[[entry]]\ndone = \"sow\"\ningredient = \"carrot\"\n",
        Code::MissingKey,
    ),
    (
        "[[entry]]\non = 2027-05-04\ndone = \"sow\"\n",
        Code::MissingKey,
    ),
    (
        "[[entry]]\non = 2027-05-04\nmissed = \"sow\"\ningredient = \"carrot\"\n",
        Code::MissingKey,
    ),
    (
        "[[entry]]\non = 2027-05-04\ndone = \"sew\"\ningredient = \"carrot\"\n",
        Code::UnknownWord,
    ),
    (
        "[[entry]]\non = 2027-05-04\ndone = \"sow\"\ningredient = \"carot\"\n",
        Code::NoSuchIngredient,
    ),
    (
        "[[entry]]\non = 2027-05-04\ndone = \"sow\"\ningredient = \"carrot\"\nclass = \"9z\"\n",
        Code::NoSuchGrade,
    ),
    ("[[entry]]\non = 2027-05-04\n", Code::ConflictingKeys),
    (
        "[[entry]]\non = 2027-05-04\nup = 3\nlost = 0.5\ningredient = \"carrot\"\n",
        Code::ConflictingKeys,
    ),
    (
        "[[entry]]\non = 2027-06-02\nwords = \"tomorrow\"\n",
        Code::OutOfRange,
    ),
    (
        "[[entry]]\non = 2027-05-04\nlost = 20\ningredient = \"carrot\"\n",
        Code::OutOfRange,
    ),
    (
        "[[entry]]\non = 2027-05-04\nwords = \"x\"\ncolour = 1\n",
        Code::UnknownKey,
    ),
    (
        "[[entry]]\non = 2027-05-04\ntakes_back = 9\n",
        Code::OutOfRange,
    ),
];

#[test]
fn a_broken_entry_is_told_with_its_line_and_spoils_no_other() {
    for (broken, code) in BROKEN {
        let text = format!("{OPENING}{SOUND}\n{broken}{SOUND}");
        let (diary, codes, shown) = told(&text);
        let sound = diary
            .entries
            .iter()
            .filter(|(_, entry)| entry.what == done(StepKind::Sow, "carrot", None, None, None));
        assert_eq!(sound.count(), 2, "{broken}");
        assert_eq!(codes, [code], "{broken}\n{shown}");
        assert!(
            shown.contains("diary.toml:8:")
                || shown.contains("diary.toml:9:")
                || shown.contains("diary.toml:1"),
            "{shown}"
        );
    }
}

#[test]
fn a_file_cut_anywhere_keeps_what_was_whole() {
    let text = format!("{OPENING}{SOUND}{SOUND}{SOUND}");
    for end in 0..=text.len() {
        let cut = text.get(..end).expect("ASCII");
        let whole = cut.matches("ingredient = \"carrot\"").count();
        // What is added after it stands on a line of its own, as the program does.
        let added = format!("{cut}\n{SOUND}");
        for (text, least) in [(cut, whole), (added.as_str(), whole + 1)] {
            let (diary, ..) = told(text);
            assert_eq!(diary.entries.len(), least, "{text}");
        }
    }
}

#[test]
fn what_cannot_be_together_is_told_with_both_places() {
    let entry =
        |on: &str, what: &str| format!("[[entry]]\non = {on}\n{what}\ningredient = \"carrot\"\n\n");
    let sown = entry("2027-05-04", "done = \"sow\"\ncount = 40");
    for (second, cause, both) in [
        (
            entry("2027-05-01", "done = \"pick\""),
            "carrot was sown on 2027-05-04",
            true,
        ),
        (
            entry("2027-05-01", "up = 3"),
            "carrot was sown on 2027-05-04",
            true,
        ),
        (entry("2027-05-20", "up = 41"), "only 40 were sown", true),
        (
            entry("2027-05-20", "up = 12\nof = 11"),
            "12 are more than 11",
            false,
        ),
        (
            entry("2027-05-20", "lost = 0.6") + &entry("2027-05-21", "lost = 0.6"),
            "more than all of carrot",
            false,
        ),
    ] {
        let (diary, codes, shown) = told(&format!("{sown}{second}"));
        assert_eq!(codes, [Code::DatesOutOfOrder], "{shown}");
        assert!(shown.contains(cause), "{shown}");
        assert_eq!(shown.contains("this was written before"), both, "{shown}");
        assert!(diary.entries.len() >= 2);
    }
    let fine = entry("2027-05-20", "up = 40")
        + &entry("2027-05-30", "done = \"thin\"")
        + &entry("2027-05-30", "lost = 1");
    let (_, codes, shown) = told(&format!("{sown}{fine}"));
    assert!(codes.is_empty(), "{shown}");
}

#[test]
fn what_is_taken_back_does_not_count() {
    let back = "[[entry]]\non = 2027-05-05\ntakes_back = 1\n";
    let (diary, codes, _) = told(&format!("{SOUND}\n{back}{SOUND}"));
    assert!(codes.is_empty());
    assert_eq!(diary.sections, 3);
    let numbers: Vec<usize> = diary.entries.iter().map(|(number, _)| *number).collect();
    assert_eq!(numbers, [3]);
}
