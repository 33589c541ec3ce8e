//! Picks to which somebody does not come, and when what is left still counts, by hand.

use tureen::checker::{Edit, Harvest, IngredientReplay, check};
use tureen::garden::{ClassAt, GradeAt};
use tureen::growth::Unready;
use tureen::plan::{PlantingAt, StepAt};
use tureen::units::{Kilograms, Share};

use super::methods::{patch_bean, patch_garden, with_bean};

/// The patch is picked by both classes of grade 1 on two days. It bears every year, so nothing is lost as
/// long as each class comes once.
#[test]
fn a_patch_is_lost_to_a_class_that_never_picks_it() {
    let garden = patch_garden();
    let checked = check(&garden, with_bean(&garden, patch_bean(), 4, 0.6, 3)).unwrap();
    let replayer = checked.replayer(&garden);
    let class = |class| ClassAt {
        grade: GradeAt(0),
        class,
    };
    let (a, b) = (Some(class(0)), Some(class(1)));
    for (missed, years) in [
        (&[][..], 4),
        (&[(0, a)], 4),
        (&[(0, a), (0, b)], 4),
        (&[(0, a), (1, b)], 4),
        (&[(0, None)], 4),
        (&[(0, a), (1, a)], 0),
        (&[(0, b), (1, b)], 0),
        (&[(0, None), (1, b)], 0),
        (&[(0, None), (1, None)], 0),
    ] {
        let at = |step| StepAt {
            planting: PlantingAt(0),
            step,
        };
        let missed = missed.iter().map(|(step, who)| (at(*step), *who)).collect();
        let edit = Edit::Missed(missed);
        let harvest = replayer.harvest(&edit);
        assert_eq!(harvest.ingredients[0].ready_years(), years, "{edit:?}");
        assert_eq!(harvest.plantings[0], years, "{edit:?}");
    }
}

/// A harvest of so many weather years: in how many of them each planting and each ingredient is ready.
fn harvest(years: usize, plantings: &[usize], ingredients: &[usize]) -> Harvest {
    let ready = |in_years: &usize| IngredientReplay {
        ready: (0..years)
            .map(|year| match year < *in_years {
                true => Ok(()),
                false => Err(Unready::NotRipe),
            })
            .collect(),
        ready_on_rain_date: None,
        low: Kilograms(1.0),
        expected: Kilograms(1.0),
        low_share: Share(1.0),
        expected_share: Share(1.0),
    };
    Harvest {
        years: (2001..).take(years).collect(),
        plantings: plantings.to_vec(),
        ingredients: ingredients.iter().map(ready).collect(),
        dish_ready: vec![true; years],
        dish_ready_on_rain_date: None,
    }
}

/// One year in ten is enough, and of fewer than ten years one. Two sowings that are each ready often enough
/// may still not be enough together.
#[test]
fn what_is_ready_in_one_year_of_ten_is_hoped_for() {
    for (years, plantings, ingredients, hopeful, of_ingredients) in [
        (20, &[2, 2][..], &[2][..], true, true),
        (20, &[2, 2], &[1], false, false),
        (20, &[2, 1], &[2], false, true),
        (20, &[1, 2], &[3], false, true),
        (20, &[5], &[2, 1], false, false),
        (20, &[5], &[1, 2], false, false),
        (21, &[3], &[3], true, true),
        (21, &[2], &[3], false, true),
        (21, &[3], &[2], false, false),
        (4, &[1], &[1], true, true),
        (4, &[0], &[1], false, true),
        (4, &[1], &[0], false, false),
        (4, &[], &[], true, true),
    ] {
        let harvest = harvest(years, plantings, ingredients);
        let told = format!("{years}: {plantings:?}, {ingredients:?}");
        assert_eq!(harvest.is_hopeful(), hopeful, "{told}");
        assert_eq!(harvest.ingredients_are_hopeful(), of_ingredients, "{told}");
    }
}
