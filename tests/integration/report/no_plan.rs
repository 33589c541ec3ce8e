//! The words for a dish that is not possible.

use tureen::candidates::DropReason;
use tureen::facts::no_plan::Hindrance;
use tureen::garden::IngredientAt;
use tureen::model::{Impossible, LeftOut, Pressure, Why};
use tureen::page::Page;
use tureen::report;

use super::plain;
use crate::support::day;
use crate::support::gardens::tiny_garden;

const BEAN: IngredientAt = IngredientAt(0);
const TOMATO: IngredientAt = IngredientAt(1);

fn crowded() -> Impossible {
    Impossible {
        possible_together: vec![BEAN],
        left_out: vec![LeftOut {
            ingredient: TOMATO,
            why: Why::Crowded,
        }],
        proved: true,
        pressure: vec![Pressure::Beds {
            wanted: 154,
            strips: 72,
            parts: vec![(TOMATO, 97), (BEAN, 57)],
            week: Some(day("2027-05-24")),
        }],
    }
}

/// The page for what was found.
fn page(found: &Impossible) -> Page {
    let garden = tiny_garden();
    report::no_plan(&garden, &Hindrance::of(&garden, found))
}

/// The page for what was found, with all the parts that it should have, in this order.
fn expect(found: &Impossible, parts: &[&str]) {
    let text = page(found).text(plain(160));
    let mut rest = text.as_str();
    for part in parts {
        let at = rest
            .find(part)
            .unwrap_or_else(|| panic!("\"{part}\" is missing or out of order in\n{text}"));
        rest = &rest[at..];
    }
}

#[test]
fn what_runs_out_is_named_with_its_quantities() {
    expect(
        &crowded(),
        &[
            "No plan. Tomato cannot be in the pot with the rest: 1 of 2 ingredients fit, more is \
             not possible.",
            "tomato: its steps can be done, but not enough of it fits in beside the rest. Its least \
             share wants 97 strips.",
            "154 strips of 72 are wanted in the week of 24 May; tomato alone wants 97 of 72.",
            "Bean.\n",
            "For tomato: fewer grams in a portion",
        ],
    );
}

#[test]
fn two_that_pass_the_limit_only_together_are_named_together() {
    let mut found = crowded();
    found.pressure = vec![Pressure::Shelf {
        wanted: 9,
        flats: 6,
        parts: vec![(TOMATO, 5), (BEAN, 4)],
    }];
    expect(
        &found,
        &["9 flats of 6 are wanted; tomato and bean alone want 9 of 6."],
    );
}

#[test]
fn a_family_that_wants_more_strips_than_may_carry_it_is_named() {
    let mut found = crowded();
    found.pressure = vec![Pressure::Family {
        family: "nightshade".to_owned(),
        wanted: 12,
        strips: 8,
        parts: vec![(TOMATO, 7), (BEAN, 5)],
    }];
    expect(
        &found,
        &[
            "The nightshade family: 12 strips of 8 are wanted, and none carries the family twice \
             within its years; tomato and bean alone want 12 of 8.",
            "For tomato: fewer grams in a portion",
        ],
    );
}

#[test]
fn an_ingredient_for_which_nothing_works_has_its_reasons_in_order() {
    let mut found = crowded();
    found.proved = false;
    found.pressure.clear();
    found.left_out = vec![LeftOut {
        ingredient: TOMATO,
        why: Why::NoWay {
            reasons: vec![(DropReason::NoPickSession, 48), (DropReason::NoBed, 1)],
        },
    }];
    expect(
        &found,
        &[
            "more may be possible, but was not found in the time allowed",
            "48 tries",
            "no session lies where it could be picked",
            "1 try ",
            "no bed suits it",
            "For tomato: a session of every class in the last days",
        ],
    );
    let text = page(&found).text(plain(160));
    assert!(!text.contains("WHAT RUNS OUT FIRST"), "{text}");
}

#[test]
fn where_every_bed_belongs_to_others_one_is_to_be_opened() {
    let mut found = crowded();
    found.pressure.clear();
    found.left_out = vec![LeftOut {
        ingredient: TOMATO,
        why: Why::NoWay {
            reasons: vec![(DropReason::NotItsBed, 3)],
        },
    }];
    let text = page(&found).text(plain(160));
    let idea = "For tomato: a bed that belongs to another grade, opened to this one too";
    assert!(text.contains(idea), "{text}");
    assert!(!text.contains("a container"), "{text}");
}
