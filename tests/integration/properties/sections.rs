//! The order of sections in a project file means nothing: sections, grades, beds and
//! ingredients in any order give the same value of every aim. Equal plans are another matter:
//! of plans that are equally good the program may then take another one.

use std::time::Duration;

use tureen::catalogue::Catalogue;
use tureen::plan::Plan;
use tureen::project;

use super::{Made, first_difference, made};
use crate::random_gardens::dice::Dice;
use crate::scenarios::text;

/// Time to prove what a scenario's plan aims at.
const AMPLE: Duration = Duration::from_secs(60);

/// A file in pieces: what stands before the first section, then each section with all that
/// belongs to it (`[[grade.class]]` to the `[[grade]]` above it).
fn pieces(file: &str) -> (String, Vec<String>) {
    let mut head = String::new();
    let mut sections: Vec<String> = Vec::new();
    let mut above = String::new();
    for line in file.split_inclusive('\n') {
        let name = line.trim_start_matches('[').split(']').next().unwrap_or("");
        if line.starts_with('[') {
            let belongs = name.starts_with(&format!("{above}."));
            if !belongs || above.is_empty() {
                sections.push(String::new());
                above = name.to_owned();
            }
        }
        sections.last_mut().unwrap_or(&mut head).push_str(line);
    }
    (head, sections)
}

/// The file with its sections in another order.
fn shuffled(file: &str, seed: u64) -> String {
    let dice = &mut Dice::new(seed);
    let (mut text, mut sections) = pieces(file);
    while !sections.is_empty() {
        text.push_str(&sections.swap_remove(dice.below(sections.len())));
        text.push('\n');
    }
    text
}

/// The plan of a scenario's file in some order.
fn planned(name: &str, file: &str) -> Plan {
    let weather = text(name, "weather.csv");
    let catalogue = Catalogue::load().unwrap();
    let garden = project::load_text(name, file, Some(&weather), &catalogue)
        .unwrap_or_else(|problems| panic!("{}\n{file}", problems.render(false, 100)));
    match made(&garden, 1, AMPLE) {
        Made::Plan(plan) => plan,
        other => panic!("{name}: {other:?}"),
    }
}

/// Plans a scenario in so many orders.
fn order_means_nothing(name: &str, orders: u64) {
    let file = text(name, "garden.toml");
    let as_written = planned(name, &file);
    for seed in 0..orders {
        let other_order = shuffled(&file, seed);
        assert_ne!(
            file.lines().collect::<Vec<_>>(),
            other_order.lines().collect::<Vec<_>>()
        );
        let other = planned(name, &other_order);
        let difference = first_difference(&as_written, &other);
        assert!(difference.is_none(), "{name}, order {seed}: {difference:?}");
    }
}

#[test]
fn two_beds_in_any_order() {
    order_means_nothing("two-beds", 4);
}

#[test]
fn wrap_day_in_any_order() {
    order_means_nothing("wrap-day", 3);
}

#[test]
fn autumn_down_under_in_any_order() {
    order_means_nothing("autumn-down-under", 3);
}

#[test]
fn a_file_is_cut_at_its_sections() {
    let file = "# head\nname = 1\n[a]\nx = 1\n[[b]]\n[[b.c]]\n# of c\n[[b]]\n[bc]\n";
    let (head, sections) = pieces(file);
    assert_eq!(head, "# head\nname = 1\n");
    assert_eq!(
        sections,
        [
            "[a]\nx = 1\n",
            "[[b]]\n[[b.c]]\n# of c\n",
            "[[b]]\n",
            "[bc]\n"
        ]
    );
}
