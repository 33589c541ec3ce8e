//! Nothing is thinned before it is up: in the bundled scenarios, and of crops of every pace in the climates of
//! all of them.

use tureen::calendar::Date;
use tureen::candidates::{Candidates, Thinning};
use tureen::catalogue::Catalogue;
use tureen::garden::{Garden, Method};
use tureen::plan::StepKind;

use super::{ALL, load, planned};
use crate::support::thinning::Rows;

/// True if rows are up on the day before they are thinned in nine of ten years in which they come up.
fn up_before(up: &[i64], sown: Date, thinned: Date) -> bool {
    let days = (thinned - sown).num_days();
    let not_up = up.iter().filter(|up| **up >= days).count();
    10 * not_up <= up.len()
}

#[test]
fn no_scenario_thins_before_it_is_up() {
    let mut thinned = 0;
    for (name, garden, checked) in planned() {
        let rows = Rows::of(garden);
        for planting in &checked.plan().plantings {
            assert!(rows.thinned_in_time(planting), "{name}: {planting:?}");
            thinned += planting.steps_of(StepKind::Thin).count();
        }
    }
    assert!(thinned >= 5, "{thinned}");
}

/// A garden with one crop in the place of all that it grows.
fn growing(garden: &Garden, crop: &str) -> Garden {
    let mut garden = garden.clone();
    let mut ingredient = garden.ingredients.swap_remove(0);
    let known = Catalogue::load().unwrap();
    ingredient.name = crop.to_owned();
    ingredient.crop = known.get(crop).unwrap().clone();
    ingredient.methods = vec![Method::Direct];
    ingredient.source = tureen::garden::Source::Sown;
    garden.begun.clear();
    garden.ingredients = vec![ingredient];
    garden
}

#[test]
fn no_crop_is_thinned_before_it_is_up_in_any_climate() {
    let (mut thinned, mut crops) = (0, 0);
    for place in ALL {
        let school = load(place, "garden.toml");
        for crop in ["radish", "spinach", "kale", "carrot", "parsley", "dill"] {
            let garden = growing(&school, crop);
            let rows = Rows::of(&garden);
            let candidates = Candidates::enumerate(&garden);
            let before = thinned;
            for candidate in &candidates.all {
                let (Some(sow), Some(thin)) = (&candidate.steps.sow, &candidate.steps.thin) else {
                    continue;
                };
                let bed = candidates[candidate.plots.iter().next().unwrap()].bed;
                let parts = sow.visits.len();
                for part in 0..parts {
                    let sown = sow.day_of_part(part);
                    let on = match thin {
                        Thinning::Round(round) => round.day_of_part(part),
                        Thinning::Adult(day) | Thinning::Families(day) => *day,
                    };
                    let up = rows.days_up((candidate.ingredient, bed), sown);
                    assert!(
                        up_before(&up, sown, on),
                        "{place}: {crop} {sown} {on} {up:?}"
                    );
                }
                thinned += 1;
            }
            crops += usize::from(thinned > before);
        }
    }
    assert!(thinned > 1000 && crops > 20, "{thinned} {crops}");
}
