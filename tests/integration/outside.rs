//! Published figures against the program's, in one place: a file per subject, each figure with
//! its tolerance and its source, and all of them counted.

pub mod check;
mod counting_back;
mod crop_coefficients;
mod degree_days;
mod food_safety;
mod frost;
mod germination;
mod interval;
mod keeping;
mod kitchen;
mod libraries;
mod manure;
mod ours;
mod plants;
mod rotation;
mod seeds;
pub mod sources;
mod stations;
mod sun;
mod units;
mod warmth;
mod water;

use std::collections::BTreeSet;

use tureen::catalogue::{MEMORY, PRACTICE, source_keys};

use check::Check;
use sources::SOURCES;

/// A subject's name and its checks.
type Subject = (&'static str, fn() -> Vec<Check>);

const SUBJECTS: [Subject; 17] = [
    ("counting back", counting_back::checks),
    ("crop coefficients", crop_coefficients::checks),
    ("degree-days", degree_days::checks),
    ("food safety", food_safety::checks),
    ("frost dates", frost::checks),
    ("germination", germination::checks),
    ("interval", interval::checks),
    ("keeping and curing", keeping::checks),
    ("kitchen", kitchen::checks),
    ("manure", manure::checks),
    ("plants and yields", plants::checks),
    ("rotation", rotation::checks),
    ("seeds", seeds::checks),
    ("sun", sun::checks),
    ("units", units::checks),
    ("warmth and cold", warmth::checks),
    ("water", water::checks),
];

/// So many figures are checked at the least.
const LEAST: usize = 934;

#[test]
fn published_figures_agree() {
    println!("{:<20} {:>6}  greatest deviation", "subject", "checks");
    let mut all = Vec::new();
    for (name, checks) in SUBJECTS {
        let checks = checks();
        let greatest = checks.iter().filter_map(Check::deviation).reduce(f64::max);
        let greatest = greatest.map_or("yes or no".to_owned(), |part| {
            format!("{:.1} % of its tolerance", part * 100.0)
        });
        println!("{name:<20} {:>6}  {greatest}", checks.len());
        all.extend(checks);
    }
    println!("{:<20} {:>6}", "all", all.len());
    let wrong: Vec<String> = all.iter().filter_map(Check::wrong).collect();
    assert!(
        wrong.is_empty(),
        "{} of {} are wrong:\n{}",
        wrong.len(),
        all.len(),
        wrong.join("\n")
    );
    assert!(all.len() >= LEAST, "only {} checks", all.len());
}

#[test]
fn every_source_is_cited_and_every_citation_is_used() {
    let catalogue = ours::catalogue();
    let checks: Vec<Check> = SUBJECTS.iter().flat_map(|(_, checks)| checks()).collect();
    let used: BTreeSet<&str> = checks.iter().flat_map(|c| source_keys(c.source)).collect();
    for key in &used {
        let cited = sources::citation(&catalogue, key).is_some_and(|text| text.len() > 20);
        assert!(cited, "{key} has no citation");
    }
    for (key, ..) in SOURCES {
        assert!(used.contains(key), "{key} is cited but not used");
        assert!(catalogue.citation(key).is_none(), "{key} is cited twice");
    }
}

/// A figure that the catalogue credits to a work is checked against that work here.
#[test]
fn every_figure_that_the_catalogue_credits_is_checked() {
    let catalogue = ours::catalogue();
    let checks: Vec<Check> = SUBJECTS.iter().flat_map(|(_, checks)| checks()).collect();
    let is_checked = |name: &str, field: &str, key: &str| {
        let same = |(of, path): &(String, &str)| of == name && within(field, path);
        let of = checks.iter().filter(|c| c.catalogue.iter().any(same));
        of.into_iter()
            .any(|c| source_keys(c.source).any(|k| k == key))
    };
    let (mut seen, mut unchecked) = (0, Vec::new());
    for name in catalogue.names() {
        let entry = catalogue.entry(name).expect("a listed name is found");
        for (field, source) in entry.sources() {
            let is_group = entry
                .sources()
                .any(|(other, _)| other != field && within(other, field));
            // A row of a table serves several crops: one of them is enough.
            let alike = |other: &&str| {
                *other == name
                    || ["germination.table", "germination.extended.row"].contains(&field)
                        && catalogue.source(other, field) == Some(source)
            };
            let credited: Vec<&str> = source_keys(source)
                .filter(|key| ![MEMORY, PRACTICE].contains(key) && !is_group)
                .collect();
            seen += credited.len();
            let missing = credited.into_iter().filter(|key| {
                !catalogue
                    .names()
                    .filter(alike)
                    .any(|other| is_checked(other, field, key))
            });
            unchecked.extend(missing.map(|key| format!("{name}: {field} ({key})")));
        }
    }
    assert!(seen > 300, "only {seen} figures are credited");
    assert!(unchecked.is_empty(), "unchecked:\n{}", unchecked.join("\n"));
}

/// True if a path in the catalogue's files is a group's, or lies in it.
fn within(path: &str, group: &str) -> bool {
    let rest = path.strip_prefix(group);
    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

#[test]
fn a_wrong_value_is_seen() {
    let day = |d| ours::day(5, d);
    let wrong = [
        Check::number("a number", 10.2, 10.0, 0.1, "RULE"),
        Check::number("no number", f64::NAN, 10.0, 0.1, "RULE"),
        Check::maybe("a lost number", None, Some(10.0), 0.1, "RULE"),
        Check::maybe("a number too many", Some(10.0), None, 0.1, "RULE"),
        Check::range("a range", 10.2, 9.0, 10.0, "RULE"),
        Check::range("no range", f64::NAN, 9.0, 10.0, "RULE"),
        Check::day("a day", Some(day(2)), day(1), "RULE"),
        Check::day("a lost day", None, day(1), "RULE"),
        Check::words("words", "boil 10 minutes", "boil 30 minutes", "RULE"),
    ];
    for check in wrong {
        let told = check.wrong().expect("it is wrong");
        assert!(
            told.starts_with(&check.what) && told.ends_with("(RULE)"),
            "{told}"
        );
    }
    let right = [
        Check::number("a number", 10.1, 10.0, 0.1000001, "RULE"),
        Check::maybe("no number", None, None, 0.1, "RULE"),
        Check::range("a range", 10.0, 9.0, 10.0, "RULE"),
        Check::day("a day", Some(day(1)), day(1), "RULE"),
        Check::words(
            "words",
            "Soak,\n  then boil 30 minutes.",
            "Boil 30 minutes",
            "RULE",
        ),
    ];
    for check in right {
        assert_eq!(check.wrong(), None);
    }
}
