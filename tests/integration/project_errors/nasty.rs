//! Inputs that no school would write: whatever they hold, loading returns, and what it says
//! can be shown.

use std::fmt::Write as _;

use proptest::prelude::*;
use tureen::diagnostic::{Code, Problems};
use tureen::project;

use super::{AUTUMN, FULL, MINIMAL, catalogue, load, steady_weather};

/// Shows the problems in every way, and gives them back.
fn shown(problems: Problems) -> Problems {
    for width in [0, 100] {
        for color in [false, true] {
            assert!(!problems.render(color, width).is_empty());
        }
    }
    problems
}

/// The problems of a text that must not load.
fn refused(text: &str) -> Problems {
    match load(text) {
        Ok(_) => panic!("loads: {}", text.get(..200).unwrap_or(text)),
        Err(problems) => shown(problems),
    }
}

/// The minimal file with one value in place of another.
fn with(right: &str, wrong: &str) -> String {
    assert!(MINIMAL.contains(right), "{right}");
    MINIMAL.replacen(right, wrong, 1)
}

#[test]
fn nasty_texts_are_refused() {
    let texts = [
        String::new(),
        " \r\n\t\r\n".to_owned(),
        "\0".to_owned(),
        "\u{feff}".to_owned(),
        "[".to_owned(),
        "]]]]".to_owned(),
        "=".to_owned(),
        "\"".to_owned(),
        "'''".to_owned(),
        "project = 1\nplace = []\ncalendar = 'x'\ngrade = {}\ndish = 2027-01-01\nbed = true".into(),
        "dish.ingredient = 3\ncrop = 4\nshelf = []\narea = [1, {}, 2]".to_owned(),
        "[[dish]]\n[[dish.ingredient]]\n[[project]]\n[[crop]]".to_owned(),
        "[crop.carrot]\n[crop.\"\"]\n[crop.\"\\n\\u0007\"]\nx = 1".to_owned(),
        "\u{202e}\u{200b} = \"\u{1f955}\"".to_owned(),
        format!("a = {}", "[".repeat(100_000)),
        format!("a = {}", "{ a = ".repeat(50_000)),
        format!("{}a = 1", "a.".repeat(100_000)),
        format!("[{}a]", "a.".repeat(100_000)),
        format!("{} = 1", "long".repeat(100_000)),
        format!("name = \"{}\"", "\u{1f955}".repeat(50_000)),
        "x = 1\n".repeat(20_000),
        (0..20_000).fold(String::new(), |mut text, n| {
            let _ = writeln!(text, "key{n} = {n}");
            text
        }),
    ];
    for text in texts {
        refused(&text);
    }
}

#[test]
fn nasty_values_are_refused_where_they_stand() {
    let cases = [
        ("44.3", "nan", Code::OutOfRange),
        ("44.3", "-inf", Code::OutOfRange),
        ("44.3", "1e999", Code::OutOfRange),
        ("44.3", "9223372036854775808", Code::OutOfRange),
        ("44.3", "-9223372036854775808", Code::OutOfRange),
        ("44.3", "0x7fffffffffffffffffff", Code::OutOfRange),
        ("children = 20", "children = -1", Code::OutOfRange),
        ("children = 20", "children = 4294967297", Code::OutOfRange),
        ("children = 20", "children = 20.0", Code::WrongType),
        ("length_m = 3.6", "length_m = 1e-300", Code::OutOfRange),
        ("feast = 2027-10-08", "feast = 0000-01-01", Code::OutOfRange),
        ("feast = 2027-10-08", "feast = 9999-12-31", Code::OutOfRange),
        (
            "feast = 2027-10-08",
            "feast = 2027-02-29",
            Code::ImpossibleDate,
        ),
        (
            "feast = 2027-10-08",
            "feast = 2027-10-08 09:00:00",
            Code::WrongType,
        ),
        (
            "feast = 2027-10-08",
            "feast = 2027-10-08T09:00:00+02:00",
            Code::WrongType,
        ),
        ("feast = 2027-10-08", "feast = 09:00:00", Code::WrongType),
        ("feast = 2027-10-08", "feast = 20271008", Code::WrongType),
        (
            "start = 2027-08-30",
            "start = 1900-01-01",
            Code::PlanTooLong,
        ),
        ("\"2a\"", "\"\"", Code::EmptyText),
        ("\"2a\"", "\"\\u0000\"", Code::BadText),
        ("\"2a\"", "\"\\u001b[31mred\"", Code::BadText),
        ("classes = [{", "classes = [] #", Code::EmptyList),
        ("classes = [{", "classes = [[]] #", Code::WrongType),
    ];
    for (right, wrong, code) in cases {
        let found: Vec<Code> = refused(&with(right, wrong)).codes().collect();
        assert!(found.contains(&code), "{wrong}: {found:?}");
    }
}

#[test]
fn nasty_weather_is_refused() {
    let header = "date,tmin_c,tmax_c,rain_mm\n";
    let texts = [
        String::new(),
        "\n\n\n".to_owned(),
        "\u{feff}".to_owned(),
        "date".to_owned(),
        AUTUMN.replace('\n', "\r"),
        AUTUMN.replace(',', ";"),
        AUTUMN.replace(',', "\t"),
        header.to_owned(),
        format!("{header}2026-09-01,nan,inf,-inf"),
        format!("{header}2026-09-01,1e999,-1e999,1e400"),
        format!("{header}-262143-01-01,1,2,3\n+262142-12-31,1,2,3"),
        format!("{header}0001-01-01,1,2,3\n9999-12-31,1,2,3"),
        format!("{header}{}", ",".repeat(100_000)),
        format!("{header}{}", "x\n".repeat(100_000)),
        format!("{header}{}", "2026-09-01,1,2,3\n".repeat(20_000)),
        "\u{1f955}".repeat(100_000),
    ];
    for weather in texts {
        let loaded = project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue());
        shown(loaded.expect_err(weather.get(..60).unwrap_or(&weather)));
    }
    let missing = project::load_text("garden.toml", MINIMAL, None, catalogue());
    let found: Vec<Code> = shown(missing.expect_err("no weather")).codes().collect();
    assert_eq!(found, [Code::NoSuchFile]);
}

#[test]
fn thousands_of_classes_load() {
    let mut text = MINIMAL.to_owned();
    for n in 0..3000 {
        let _ = write!(
            text,
            "\n[[grade]]\nid = \"g{n}\"\nclasses = [{{ name = \"c{n}\", children = 60, day = \"Fri\" }}]\n"
        );
    }
    let garden = load(&text).expect("it is only large");
    assert_eq!(garden.grades.len(), 3001);
    assert_eq!(garden.feast.portions, 20 + 3000 * 60);
    // What is assumed of thousands is told in a bearable line.
    assert!(garden.assumed.iter().all(|a| a.why.len() < 200));
}

/// A team is a small set: its grades stand near each other in the file, and who takes over from them as well.
#[test]
fn grades_that_share_a_crop_stand_near_each_other() {
    let of = |grades: &str, adopter: &str| {
        let mut text = with(
            "grams_per_portion",
            &format!("grade = {grades}\ntogether = true\ngrams_per_portion"),
        );
        for n in 0..200 {
            let leaves = match n {
                0 => format!("hand_over = \"leaves\"\nadopted_by = \"{adopter}\"\n"),
                _ => String::new(),
            };
            let class = format!("{{ name = \"c{n}\", children = 9, day = \"Fri\" }}");
            let _ = write!(
                text,
                "\n[[grade]]\nid = \"g{n}\"\n{leaves}classes = [{class}]\n"
            );
        }
        let loaded = load(&text).map(|garden| garden.ingredients[0].teams[0].size());
        loaded.map_err(|problems| problems.codes().collect::<Vec<_>>())
    };
    assert_eq!(of("[\"g0\", \"g3\", \"g127\"]", "g1"), Ok(3));
    assert_eq!(of("[\"g72\", \"g199\"]", "g1"), Ok(2));
    assert_eq!(of("[\"g0\", \"g128\"]", "g1"), Err(vec![Code::OutOfRange]));
    assert_eq!(of("[\"g0\", \"g1\"]", "g129"), Err(vec![Code::OutOfRange]));
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_change_nothing() {
    let plain = load(MINIMAL).expect("it loads");
    let windows = |text: &str| format!("\u{feff}{}", text.replace('\n', "\r\n"));
    let text = windows(MINIMAL);
    let weather = windows(AUTUMN);
    let loaded = project::load_text("garden.toml", &text, Some(&weather), catalogue());
    assert_eq!(loaded.expect("it loads"), plain);
    let broken = with("44.3", "443").replace('\n', "\r\n");
    let told = refused(&broken).render(false, 100);
    let as_unix = refused(&with("44.3", "443")).render(false, 100);
    assert_eq!(told, as_unix);
}

#[test]
fn a_term_of_centuries_and_a_day_off_long_ago_are_only_odd() {
    let text =
        with("2027-12-17", "2200-12-31").replace("start =", "days_off = [1900-01-01]\nstart =");
    let garden = load(&text).unwrap_or_else(|problems| panic!("{problems}"));
    assert_eq!(garden.horizon().weeks(), 6);
}

/// A change of some bytes of a text.
#[derive(Debug, Clone)]
enum Damage {
    Delete,
    Double,
    Replace(String),
}

fn damage() -> impl Strategy<Value = Damage> {
    let pieces = prop::sample::select(vec![
        "\"",
        "'",
        "[",
        "]",
        "{",
        "}",
        "=",
        ",",
        "\n",
        "#",
        "-",
        ".",
        "0",
        "9999",
        "nan",
        "true",
        "2027-02-30",
        "[[",
        "]]",
        "\u{1f955}",
        "\u{0}",
        "\"\"\"",
        "e9",
        "_",
    ]);
    prop_oneof![
        Just(Damage::Delete),
        Just(Damage::Double),
        pieces.prop_map(|piece| Damage::Replace(piece.to_owned())),
        any::<String>().prop_map(Damage::Replace),
    ]
}

/// The text after damage at `at`, `length` bytes long.
fn damaged(text: &str, at: usize, length: usize, damage: &Damage) -> String {
    let at = at % text.len().max(1);
    let end = (at + length).min(text.len());
    let bytes = text.as_bytes();
    let (before, inner, after) = (&bytes[..at], &bytes[at..end], &bytes[end..]);
    let middle = match damage {
        Damage::Delete => Vec::new(),
        Damage::Double => [inner, inner].concat(),
        Damage::Replace(piece) => piece.as_bytes().to_vec(),
    };
    String::from_utf8_lossy(&[before, &middle, after].concat()).into_owned()
}

proptest! {
    #[test]
    fn a_damaged_project_returns(
        hits in prop::collection::vec((any::<usize>(), 0_usize..60, damage()), 1..4),
    ) {
        let mut text = FULL.to_owned();
        for (at, length, kind) in &hits {
            text = damaged(&text, *at, *length, kind);
        }
        match project::load_text("garden.toml", &text, Some(AUTUMN), catalogue()) {
            Ok(garden) => prop_assert!(!garden.grades.is_empty()),
            Err(problems) => prop_assert!(!shown(problems).is_empty()),
        }
    }

    #[test]
    fn a_damaged_weather_file_returns(
        hits in prop::collection::vec((any::<usize>(), 0_usize..60, damage()), 1..4),
    ) {
        let mut weather = steady_weather(60).replace("2014-01", "2026-09");
        for (at, length, kind) in &hits {
            weather = damaged(&weather, *at, *length, kind);
        }
        match project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue()) {
            Ok(garden) => prop_assert!(!garden.weather.days().is_empty()),
            Err(problems) => prop_assert!(!shown(problems).is_empty()),
        }
    }
}
