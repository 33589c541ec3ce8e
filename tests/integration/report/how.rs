//! How the work is done, on the pages of the grades.

use tureen::checker::check;
use tureen::garden::{Crop, GradeAt, Tending};
use tureen::report;

use super::{plain, tiny};
use crate::support::crops::sown_crop;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{bare_plan, promise, tiny_bean, tiny_tomato};

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

/// Both of one grade's ingredients are lifted: how is said of the first.
#[test]
fn how_two_are_taken_alike_is_said_once() {
    let mut garden = tiny_garden();
    garden.ingredients[1].grades = vec![GradeAt(0)];
    let mut tomato = tiny_tomato();
    tomato.grade = "1".to_owned();
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    let plan = bare_plan(&garden, vec![tiny_bean(), tomato], promises, 2);
    let checked = check(&garden, plan).unwrap();
    let catalogue = tureen::catalogue::Catalogue::load().unwrap();
    let mut page = |names: [&str; 2]| {
        for (ingredient, name) in garden.ingredients.iter_mut().zip(names) {
            ingredient
                .crop
                .how
                .clone_from(&catalogue.get(name).unwrap().how);
        }
        report::grade(&garden, &checked, GradeAt(0)).text(plain(1000))
    };
    let fork = "An adult lifts it with a digging fork";
    let alike = page(["carrot", "garlic"]);
    assert_eq!(alike.matches(fork).count(), 1, "{alike}");
    assert_eq!(alike.matches("Take it like bean.").count(), 1, "{alike}");
    let apart = page(["carrot", "tomato"]);
    assert_eq!(apart.matches(fork).count(), 1, "{apart}");
    assert!(!apart.contains("Take it like"), "{apart}");
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
