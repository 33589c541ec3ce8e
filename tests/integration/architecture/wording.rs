//! `facts` holds what is true, without a sentence; `words` says it, `report` puts it on pages, and both work
//! nothing out. The measure: strings in `facts` are keys, or join them; of the rooms that work things out `words` and
//! `report` name only the types below, and ask a checked plan for nothing that is computed then. `words` knows no page.

use super::source::{SourceFile, crate_of, rust_files};
use super::uses::{Use, shown, uses};

/// The rooms of words.
const WORDING: [&str; 2] = ["words", "report"];

/// `report` stays shorter than this: what is no page has a room of its own.
const LONGEST_REPORT: usize = 9_000;

/// Rooms that work things out, with the types of theirs that may be named in words: reasons, and what a checked plan carries, or one that breaks rules.
const WORDED: [(&str, &[&str]); 4] = [
    ("growth", &["Unready"]),
    ("candidates", &["DropReason"]),
    ("model", &[]),
    (
        "checker",
        &[
            "AimFault",
            "Changed",
            "CheckedPlan",
            "DayLimit",
            "Difference",
            "Fault",
            "IngredientReplay",
            "Named",
            "PlaceFault",
            "PlantingRef",
            "Quantity",
            "Refused",
            "Seedbed",
            "Standing",
            "StepAt",
            "StepRef",
            "Subject",
            "Unattended",
            "Violation",
            "WaterNeed",
            "Watering",
        ],
    ),
];

/// What a checked plan works out when it is asked.
const ASKED: [&str; 5] = ["grown_in", "in_bed", "replayer", "stands", "watering"];

fn is_of(file: &SourceFile, room: &str) -> bool {
    let path = file.path.as_str();
    let inside = path.strip_prefix("src/");
    let rest = inside.and_then(|inside| inside.strip_prefix(room));
    rest.is_some_and(|rest| rest == ".rs" || rest.starts_with('/'))
}

/// Uses in words that name what is worked out elsewhere.
fn worked_out(files: &[SourceFile]) -> Vec<String> {
    let is_refused = |Use { to, item, .. }: &Use| {
        let room = WORDED.iter().find(|(room, _)| to[0] == *room);
        let named = |types: &[&str]| item.as_ref().is_some_and(|i| types.contains(&i.as_str()));
        room.is_some_and(|(_, types)| !named(types))
    };
    let of_words = uses(files).inside.into_iter();
    let of_words = of_words.filter(|u| WORDING.contains(&u.from[0].as_str()) && is_refused(u));
    let named = of_words.map(|u| {
        let item = u.item.unwrap_or_default();
        format!(
            "{} names {}::{item}, line {}",
            shown(&u.from),
            shown(&u.to),
            u.line
        )
    });
    let worded = files
        .iter()
        .filter(|file| WORDING.iter().any(|room| is_of(file, room)));
    let asked = worded.flat_map(|file| {
        let lines = ASKED.iter().flat_map(|what| {
            let lines = file.lines_with(&["checked", ".", what, "("]);
            lines.into_iter().map(move |line| (what, line))
        });
        let told = lines.map(|(what, line)| format!("{}:{line}: asks for {what}", file.path));
        told.collect::<Vec<_>>()
    });
    named.chain(asked).collect()
}

/// True for a string that a key may be, or that joins keys: `plant-out`, ` `.
fn is_key(literal: &str) -> bool {
    let inner = literal.trim_matches('"');
    let is_word = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
    inner.chars().all(is_word) || !inner.chars().any(char::is_alphanumeric)
}

/// Strings in `facts` that are no keys; those of docs left out.
fn worded(files: &[SourceFile]) -> Vec<String> {
    let facts = files.iter().filter(|file| is_of(file, "facts"));
    let strings = facts.flat_map(|file| {
        let tokens = file.tokens.iter().enumerate();
        let is_doc = |at: usize| at >= 2 && file.tokens[at - 2].text == "doc";
        let strings = tokens.filter(move |(at, t)| t.text.contains('"') && !is_doc(*at));
        strings.map(move |(_, token)| (file, token))
    });
    strings
        .filter(|(_, token)| !is_key(&token.text))
        .map(|(file, token)| format!("{}:{}: {}", file.path, token.line, token.text))
        .collect()
}

/// Holds that nothing was found.
fn none(found: &[String]) {
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

/// Uses of pages in `words`.
fn paged(files: &[SourceFile]) -> Vec<String> {
    let inside = uses(files).inside.into_iter();
    inside
        .filter(|u| u.from[0] == "words" && u.to[0] == "page")
        .map(|u| format!("{} uses {}, line {}", shown(&u.from), shown(&u.to), u.line))
        .collect()
}

#[test]
fn words_and_report_work_nothing_out() {
    none(&worked_out(rust_files("src")));
}

#[test]
fn words_know_no_page() {
    none(&paged(rust_files("src")));
    let bad = [
        ("src/words/a.rs", "use crate::page::Page;"),
        ("src/page.rs", "pub struct Page;"),
    ];
    assert_eq!(paged(&crate_of(&bad)).len(), 1);
}

#[test]
fn report_is_short() {
    let report = rust_files("src").iter().filter(|f| is_of(f, "report"));
    let lines: usize = report.map(|file| file.text.lines().count()).sum();
    assert!(lines < LONGEST_REPORT, "{lines} lines");
}

#[test]
fn facts_hold_no_word() {
    none(&worded(rust_files("src")));
}

#[test]
fn a_fact_worked_out_in_report_is_seen_however_it_is_named() {
    let rooms = |room: &str, text: &str| {
        let (file, root) = (format!("src/{room}/a.rs"), format!("src/{room}.rs"));
        crate_of(&[
            (&file, text),
            (&root, "mod a;"),
            ("src/growth.rs", "mod ready; pub use ready::Unready;"),
            (
                "src/growth/ready.rs",
                "pub enum Unready {} pub fn picked() {}",
            ),
            ("src/model.rs", ""),
            ("src/checker.rs", ""),
            ("src/facts.rs", "pub use crate::model::Pressure;"),
        ])
    };
    for bad in [
        "use crate::growth::ready::picked;",
        "use crate::growth::*;",
        "use crate::growth;",
        "fn f() { crate::model::solve() }",
        "use crate::facts::Pressure;",
        "use crate::checker::bears;",
        "fn f(x: X) { x.checked.in_bed(x.garden) }",
    ] {
        for room in WORDING {
            assert_eq!(worked_out(&rooms(room, bad)).len(), 1, "{room}: {bad}");
        }
    }
    let good = "use crate::growth::Unready; use crate::checker::{Fault, CheckedPlan}; \
                fn f(why: Unready) { match why { Unready::Frost => facts.in_bed } }";
    for room in WORDING {
        assert_eq!(worked_out(&rooms(room, good)), Vec::<String>::new());
    }
    let elsewhere = crate_of(&[
        ("src/facts.rs", "use crate::growth::Block;"),
        ("src/growth.rs", ""),
    ]);
    assert_eq!(worked_out(&elsewhere), Vec::<String>::new());
}

#[test]
fn a_word_in_facts_is_seen() {
    let bad = "fn f() { (\"not ripe\", \"Ripe\", format!(\"{n} days\"), \"days_out\") }";
    let good = "//! Some words.\n/// More words.\nfn f() { (\"plant-out\", \" \", \"\", 'a') }";
    let files = [
        ("src/facts/a.rs", bad),
        ("src/facts.rs", good),
        ("src/report.rs", bad),
    ];
    assert_eq!(worded(&crate_of(&files)).len(), 4);
}
