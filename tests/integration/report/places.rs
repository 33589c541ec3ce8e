//! Names in lists and places in words.

use std::collections::BTreeSet;
use std::time::SystemTime;

use proptest::prelude::*;
use tureen::facts::Facts;
use tureen::facts::order::natural;
use tureen::facts::places::{beds, places};
use tureen::handouts::calendar::Stamp;
use tureen::handouts::files;
use tureen::plan::{Place, StepKind};
use tureen::report::tables::{Cell, tables};
use tureen::words::places::in_words;
use tureen::words::tasks::spot;
use tureen::words::view::View;

use super::tiny;
use crate::support::day;
use crate::support::gardens::{bed, tiny_garden};
use crate::support::plans::place;

/// Sorts names by the order of lists.
fn sorted<'n>(names: &[&'n str]) -> Vec<&'n str> {
    let mut names = names.to_vec();
    names.sort_by(|a, b| natural(a, b));
    names
}

#[test]
fn numbers_in_names_count_as_numbers() {
    assert_eq!(sorted(&["10", "1", "2"]), ["1", "2", "10"]);
    assert_eq!(sorted(&["10a", "2b", "2a"]), ["2a", "2b", "10a"]);
    assert_eq!(
        sorted(&["Bed 10", "Bed 9", "Annex"]),
        ["Annex", "Bed 9", "Bed 10"]
    );
    assert_eq!(sorted(&["A12", "A", "A2", "B1"]), ["A", "A2", "A12", "B1"]);
    let huge = "99999999999999999999999";
    assert_eq!(sorted(&[huge, "3"]), ["3", huge]);
}

proptest! {
    #[test]
    fn numbers_come_in_the_order_of_their_size(a in 0..2_000_u32, b in 0..2_000_u32, dash in "[a-z -]{0,3}") {
        let [x, y] = [a, b].map(|n| format!("{dash}{n}"));
        prop_assert_eq!(natural(&x, &y), a.cmp(&b));
    }

    #[test]
    fn any_three_names_have_one_order(a in "[0-3a-b ]{0,5}", b in "[0-3a-b ]{0,5}", c in "[0-3a-b ]{0,5}") {
        prop_assert_eq!(natural(&a, &b), natural(&b, &a).reverse());
        prop_assert_eq!(natural(&a, &b).is_eq(), a == b);
        if natural(&a, &b).is_le() && natural(&b, &c).is_le() {
            prop_assert!(natural(&a, &c).is_le(), "{:?} {:?} {:?}", a, b, c);
        }
    }
}

#[test]
fn neighbouring_strips_are_one_place_and_beds_come_in_order() {
    let given = [
        place("10", 1, 2),
        place("2", 4, 3),
        place("1", 1, 1),
        place("2", 1, 3),
        place("10", 4, 1),
    ];
    let merged = [
        place("1", 1, 1),
        place("2", 1, 6),
        place("10", 1, 2),
        place("10", 4, 1),
    ];
    assert_eq!(places(&given), merged);
    assert_eq!(beds(&given), ["1", "2", "10"]);
    let mut garden = tiny_garden();
    garden.beds = vec![bed("1", 4, 0), bed("2", 6, 3), bed("10", 8, 0)];
    assert_eq!(
        in_words(&garden, &given),
        "bed 1 (strip 1), all of bed 2, bed 10 (strips 1 to 2) and bed 10 (strip 4)"
    );
}

proptest! {
    /// The same strips, whatever was given first, and no place beside another.
    #[test]
    fn places_hold_the_same_strips(taken in prop::collection::btree_set((1..4_u32, 1..9_u32), 1..12)) {
        let strips: Vec<(u32, u32)> = taken.into_iter().collect();
        let given: Vec<Place> = strips.iter().rev().map(|(b, s)| place(&b.to_string(), *s, 1)).collect();
        let merged = places(&given);
        let mut held: Vec<(u32, u32)> = Vec::new();
        for p in &merged {
            let bed: u32 = p.bed.parse().unwrap();
            held.extend((p.first_strip..p.first_strip + p.strips).map(|s| (bed, s)));
        }
        prop_assert_eq!(held, strips);
        for pair in merged.windows(2) {
            let beside = pair[0].bed == pair[1].bed
                && pair[0].first_strip + pair[0].strips == pair[1].first_strip;
            prop_assert!(!beside, "{:?}", pair);
        }
    }
}

#[test]
fn seedlings_harden_off_and_the_harvest_dries_elsewhere_than_in_the_bed() {
    let (garden, checked) = tiny();
    let facts = Facts::new(&garden, &checked);
    let place = |kind: StepKind| {
        let tasks = facts.tasks.iter().filter(|t| t.kind == kind);
        let places: BTreeSet<String> = tasks.map(|task| spot(&garden, task)).collect();
        places.into_iter().collect::<Vec<_>>()
    };
    assert_eq!(
        place(StepKind::Harden),
        ["outdoors, near the seedling shelf"]
    );
    assert_eq!(place(StepKind::Cure), ["a dry, airy place"]);
    assert_eq!(place(StepKind::PotUp), ["seedling shelf"]);
    assert_eq!(place(StepKind::PlantOut), ["bed A (strips 1 to 4)"]);
    assert_eq!(place(StepKind::Thin), ["all of bed B"]);
}

/// Bed B has four strips and is free from Wednesday 10 March.
#[test]
fn a_bed_has_no_strips_before_it_is_free() {
    let (garden, checked) = tiny();
    let weeks = &tables(&View::of(&Facts::new(&garden, &checked)))[2];
    let head = |name: &str| weeks.columns.iter().position(|c| c.head == name).unwrap();
    let (first, there) = (head("Week from"), head("Bed B: strips there"));
    let strips = |monday: &str| {
        let monday = Cell::Day(day(monday));
        let row = weeks.rows.iter().find(|row| row[first] == monday).unwrap();
        row[there].clone()
    };
    assert_eq!(strips("2027-03-01"), Cell::Number(0.0));
    assert_eq!(strips("2027-03-08"), Cell::Number(4.0));
    assert_eq!(strips("2027-06-07"), Cell::Number(4.0));
    let files = files(
        &View::of(&Facts::new(&garden, &checked)),
        Stamp::from(SystemTime::UNIX_EPOCH),
        &[],
    )
    .unwrap();
    let data = files.iter().find(|f| f.path == "plan-data.json").unwrap();
    let data: serde_json::Value = serde_json::from_slice(&data.bytes).unwrap();
    let told = |week: usize| data["weeks"][week]["beds"][1]["strips_there"].as_u64();
    assert_eq!([told(0), told(1)], [Some(0), Some(4)]);
}
