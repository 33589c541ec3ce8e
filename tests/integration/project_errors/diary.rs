//! The diary: sections as they stand in the file, and what cannot be.

use tureen::calendar::Date;
use tureen::diagnostic::Code;
use tureen::plan::StepKind;
use tureen::project::diary::{Diary, Happened, Names, OPENING, read};

use super::day;

pub fn names() -> Names {
    Names {
        ingredients: ["carrot", "dry bean", "onion (from seed)", "tomato"]
            .map(str::to_owned)
            .to_vec(),
        classes: ["3a", "3b", "Kestrels"].map(str::to_owned).to_vec(),
    }
}

pub fn today() -> Date {
    day("2027-06-01")
}

/// From the start of the project until today.
pub fn days() -> (Date, Date) {
    (day("2027-03-01"), today())
}

pub fn done(
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

const SOUND: &str = "\n[[entry]]\non = 2027-05-04\ndone = \"sow\"\ningredient = \"carrot\"\n";

fn told(text: &str) -> (Diary, Vec<Code>, String) {
    let (diary, problems) = read("diary.toml", text, &names(), days());
    (
        diary,
        problems.codes().collect(),
        problems.render(false, 100),
    )
}

const BROKEN: [(&str, Code); 20] = [
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
        "[[entry]]\non = 2027-02-26\ndone = \"sow\"\ningredient = \"tomato\"\n",
        Code::OutOfRange,
    ),
    (
        "[[entry]]\non = 2027-05-04\nclosed_to = 2027-05-03\n",
        Code::DatesOutOfOrder,
    ),
    (
        "[[entry]]\non = 2027-05-04\nclosed_from = 2027-05-10\n",
        Code::MissingKey,
    ),
    (
        "[[entry]]\non = 2027-05-04\nclosed_to = 2027-05-10\nno_lesson = \"3a\"\n",
        Code::ConflictingKeys,
    ),
    (
        "[[entry]]\non = 2027-05-04\nno_lesson = \"9z\"\n",
        Code::NoSuchGrade,
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

/// Each loss is a part of what stood until then, so that there may be many; a day before the start is told with a remedy,
/// unless nothing was sown then.
#[test]
fn many_losses_and_early_weather_are_sound() {
    let entry =
        |on: &str, what: &str| format!("[[entry]]\non = {on}\n{what}\ningredient = \"carrot\"\n\n");
    let twice = entry("2027-05-20", "lost = 0.6") + &entry("2027-05-21", "lost = 0.6");
    let weather = "[[entry]]\non = 2027-01-20\nlow_c = -12.0\n\n";
    let (diary, codes, shown) = told(&(twice + weather));
    assert_eq!((diary.entries.len(), codes), (3, vec![]), "{shown}");
    let (diary, codes, shown) = told(&entry("2027-02-26", "done = \"sow\""));
    assert_eq!((diary.entries.len(), codes), (0, vec![Code::OutOfRange]));
    for part in [
        "diary.toml:1:",
        "2027-02-26 lies before 2027-03-01",
        "`start`",
    ] {
        assert!(shown.contains(part), "{part}: {shown}");
    }
}
