//! How the work is done, on the pages of the grades.

use tureen::garden::{Crop, Tending};
use tureen::report;

use super::{plain, tiny};
use crate::support::crops::sown_crop;

#[test]
fn a_crop_that_says_nothing_has_no_block() {
    let (garden, checked) = tiny();
    for grade in garden.grade_positions() {
        let text = report::grade(&garden, &checked, grade).text(plain(1000));
        assert!(!text.contains("HOW IT IS DONE"), "{text}");
    }
}

#[test]
fn every_step_of_a_grade_is_told_with_its_figures() {
    let (mut garden, checked) = tiny();
    let catalogue = tureen::catalogue::Catalogue::load().unwrap();
    let how = catalogue.get("carrot").unwrap().how.clone();
    for ingredient in &mut garden.ingredients {
        ingredient.crop = Crop {
            how: how.clone(),
            ..ingredient.crop.clone()
        };
    }
    let pages: Vec<String> = garden
        .grade_positions()
        .map(|grade| report::grade(&garden, &checked, grade).text(plain(1000)))
        .collect();
    let with_it: Vec<&String> = pages
        .iter()
        .filter(|p| p.contains("HOW IT IS DONE"))
        .collect();
    assert!(!with_it.is_empty(), "{pages:?}");
    for page in with_it {
        for part in [
            "Pick when what shows at the ground is as wide as you want it",
            "An adult lifts it with a digging fork",
            "Net: a fine net over hoops",
            "come first.",
        ] {
            assert!(page.contains(part), "{part}\n{page}");
        }
    }
}

#[test]
fn what_is_made_by_hand_in_tests_says_nothing() {
    assert_eq!(sown_crop("plain", 60.0).how, None);
}

#[test]
fn every_crop_of_the_catalogue_says_how() {
    let catalogue = tureen::catalogue::Catalogue::load().unwrap();
    for name in catalogue.names() {
        let crop = catalogue.get(name).unwrap();
        let how = crop
            .how
            .as_ref()
            .unwrap_or_else(|| panic!("{name}: nothing"));
        if let Some((least, most)) = how.depth {
            assert!(
                least <= most && least.0 >= 0.0 && most.0 <= 20.0,
                "{name}: {how:?}"
            );
        }
        assert_eq!(
            how.cures.is_some(),
            crop.picking.cure_days > 0,
            "{name}: {how:?}"
        );
        let held = [Tending::Climb, Tending::Stake, Tending::Strings];
        let is_held = how.tending.iter().any(|tending| held.contains(tending));
        assert!(is_held || !crop.needs.trellis, "{name}: {how:?}");
    }
}
