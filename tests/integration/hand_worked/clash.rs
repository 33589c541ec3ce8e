//! Which plantings cannot have the same strip, by hand, over three school years.

use tureen::candidates::{Candidate, Candidates, breaks_wish, clash, families, fullest};
use tureen::garden::{Garden, IngredientAt};

use crate::random_gardens::dice::Dice;
use crate::support::day;
use crate::support::gardens::tiny_garden;

/// The tiny garden from March 2027 to June 2030, of one family: its first crop waits for `hard[0]` years, its
/// second for `hard[1]`; both had better wait for three.
fn garden(hard: [u32; 2]) -> Garden {
    let mut garden = tiny_garden();
    garden.feast.day = day("2030-06-11");
    for (ingredient, years) in garden.ingredients.iter_mut().zip(hard) {
        let rotation = &mut ingredient.crop.rotation;
        rotation.family = "bean".to_owned();
        rotation.years_hard = years;
        rotation.years_wished = 3;
    }
    garden
}

/// A planting of an ingredient from day to day.
fn planting(garden: &Garden, of: usize, from: &str, to: &str) -> Candidate {
    let short = Candidates::enumerate(&tiny_garden());
    let horizon = garden.horizon();
    let mut planting = short.all[0].clone();
    planting.ingredient = IngredientAt(of);
    let days = [from, to].map(|text| horizon.day_number(day(text)).unwrap());
    planting.bed_days = (days[0], days[1]);
    planting
}

/// Whether two clash, and whether a wish is broken; the same in either order.
fn met(garden: &Garden, a: &Candidate, b: &Candidate) -> (bool, bool) {
    let found = (clash(garden, a, b), breaks_wish(garden, a, b));
    assert_eq!(found, (clash(garden, b, a), breaks_wish(garden, b, a)));
    found
}

#[test]
fn who_stands_there_at_once_clashes() {
    let mut garden = garden([0, 0]);
    let first = planting(&garden, 0, "2027-04-10", "2027-05-20");
    for (from, to, at_once) in [
        ("2027-03-10", "2027-04-09", false),
        ("2027-03-10", "2027-04-10", true),
        ("2027-04-20", "2027-05-10", true),
        ("2027-05-20", "2027-05-30", true),
        ("2027-05-21", "2027-05-30", false),
    ] {
        let other = planting(&garden, 1, from, to);
        assert_eq!(met(&garden, &first, &other), (at_once, !at_once), "{from}");
        garden.ingredients[1].crop.rotation.family = "other".to_owned();
        assert_eq!(met(&garden, &first, &other), (at_once, false), "{from}");
        garden.ingredients[1].crop.rotation.family = "bean".to_owned();
    }
}

#[test]
fn the_later_one_waits_as_long_as_its_own_family_must() {
    let first = |garden: &Garden| planting(garden, 0, "2027-04-10", "2027-10-20");
    // The years from the calendar year in which the first is cleared to that in which the second comes.
    for (from, to, passed) in [
        ("2027-11-10", "2027-12-09", 0),
        ("2028-03-10", "2028-06-09", 1),
        ("2029-03-10", "2029-06-09", 2),
        ("2030-03-10", "2030-06-09", 3),
    ] {
        for hard in 0..=4 {
            // What the earlier crop would have to wait for tells nothing.
            for of_earlier in [0, 4] {
                let garden = garden([of_earlier, hard]);
                let later = planting(&garden, 1, from, to);
                let waits = hard > 0 && passed <= hard;
                let expected = (waits, !waits && passed <= 3);
                let found = met(&garden, &first(&garden), &later);
                assert_eq!(found, expected, "{from}, {hard} years");
            }
        }
    }
}

#[test]
fn a_planting_that_stands_over_new_year_is_cleared_in_the_second_year() {
    let garden = garden([1, 1]);
    let over = planting(&garden, 0, "2027-10-10", "2028-03-20");
    let before = planting(&garden, 0, "2027-04-10", "2027-06-20");
    let after = planting(&garden, 1, "2029-03-10", "2029-06-20");
    let later = planting(&garden, 1, "2030-03-10", "2030-06-01");
    assert_eq!(met(&garden, &over, &after), (true, false));
    assert_eq!(met(&garden, &before, &after), (false, true));
    assert_eq!(met(&garden, &over, &later), (false, true));
}

/// Two plantings of a family never share a strip where it must wait as long as the plan spans: three years.
#[test]
fn a_family_that_waits_as_long_as_the_plan_spans_is_named() {
    let name = |garden: &Garden| {
        let both = [0, 1].map(|of| planting(garden, of, "2027-04-10", "2027-05-20"));
        let found = families(garden, &both);
        let found = found.into_iter().map(|(name, of)| (name.to_owned(), of));
        found.collect::<Vec<_>>()
    };
    let one = |of: usize| ("bean".to_owned(), vec![IngredientAt(of)]);
    let all = ("bean".to_owned(), vec![IngredientAt(0), IngredientAt(1)]);
    assert_eq!(name(&garden([2, 2])), []);
    assert_eq!(name(&garden([3, 2])), [one(0)]);
    assert_eq!(name(&garden([2, 3])), [one(1)]);
    assert_eq!(name(&garden([4, 3])), [all]);
}

/// On any day there stands no more than on one of the fullest days, and of these none says less than
/// another.
#[test]
fn the_fullest_days_say_all() {
    for seed in 0..300 {
        let dice = &mut Dice::new(seed);
        let spans: Vec<(usize, usize)> = (0..dice.int(1, 6))
            .map(|_| {
                let from = dice.below(10);
                (from, from + dice.below(5))
            })
            .collect();
        let standing = |day: usize| -> Vec<usize> {
            let all = spans.iter().enumerate();
            let here = all.filter(|(_, (from, to))| *from <= day && day <= *to);
            here.map(|(k, _)| k).collect()
        };
        let within = |a: &[usize], b: &[usize]| a.iter().all(|k| b.contains(k));
        let days = fullest(spans.iter().copied());
        assert!(days.is_sorted_by(|a, b| a < b), "{spans:?}: {days:?}");
        let full: Vec<Vec<usize>> = days.iter().map(|day| standing(*day)).collect();
        for day in 0..16 {
            let here = standing(day);
            assert!(full.iter().any(|on| within(&here, on)), "{spans:?}: {day}");
        }
        for (k, on) in full.iter().enumerate() {
            let mut others = full.iter().enumerate().filter(|(other, _)| *other != k);
            assert!(
                !others.any(|(_, other)| within(on, other)),
                "{spans:?}: {days:?}"
            );
        }
    }
    assert_eq!(fullest([(3, 5), (5, 9), (6, 7)].into_iter()), [5, 6]);
    assert_eq!(fullest(std::iter::empty()), [0; 0]);
}
