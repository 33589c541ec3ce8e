//! Every rung of a rescue ladder, put into the plan by hand.

use tureen::catalogue::Catalogue;
use tureen::checker::{CheckedPlan, check, promise};
use tureen::deadline::Deadline;
use tureen::explain::{Rescue, RescueLadder, RescueRung, rescue_ladders};
use tureen::garden::{Garden, IngredientAt, Method, Source};
use tureen::plan::{Plan, Planting};

use super::aim::plans;
use crate::random_gardens::make::TINY;

/// A garden with its plan.
struct Case {
    seed: u64,
    garden: Garden,
    checked: CheckedPlan,
}

/// Puts a rung into the plan by hand: all others as they were, and the new planting.
fn by_hand(case: &Case, at: IngredientAt, rung: &RescueRung) {
    let Case { seed, .. } = case;
    let plan = case.checked.plan();
    let name = &case.garden[at].name;
    let lost = |p: &&Planting| p.ingredient == *name;
    let replaced = rung.checked.plan().plantings.iter();
    let new: Vec<&Planting> = replaced.filter(lost).collect();
    let [new] = new.as_slice() else {
        panic!("seed {seed}: one planting")
    };
    let staying = plan.plantings.iter().filter(|p| !lost(p));
    let mut by_hand = Plan {
        plantings: staying.chain([*new]).cloned().collect(),
        aims: Vec::new(),
        unseen: None,
        promise: plan.promise.clone(),
    };
    by_hand.promise = promise(&rung.garden, &by_hand);
    let ready = by_hand.promise.ingredients[at.0].ready_years as usize;
    check(&rung.garden, by_hand).unwrap_or_else(|v| panic!("seed {seed}: {v:?}"));
    let promised = case.checked.replay().ingredients[at.0].ready_years();
    assert_eq!(ready, rung.ready_years, "seed {seed}");
    assert!(2 * ready >= promised, "seed {seed}: {ready} of {promised}");
    assert_eq!(new.steps[0].when, rung.until, "seed {seed}");
    let right = match &rung.rescue {
        Rescue::SowAgain => new.method != Method::Bought,
        Rescue::BoughtPlants => new.method == Method::Bought,
        Rescue::QuickCrop(crop) => rung.garden[at].crop.name == *crop,
    };
    assert!(right, "seed {seed}: {:?}", rung.rescue);
}

/// What is sown once can be sown again at least until the day on which it is.
fn not_too_early(case: &Case, ladder: &RescueLadder) {
    let ingredient = &case.garden[ladder.ingredient];
    let plantings = case.checked.plan().plantings.iter();
    let own: Vec<&Planting> = plantings
        .filter(|p| p.ingredient == ingredient.name)
        .collect();
    if let ([own], Source::Sown) = (own.as_slice(), ingredient.source)
        && own.method != Method::Bought
    {
        let again = ladder.rungs.iter().find(|r| r.rescue == Rescue::SowAgain);
        let again = again.unwrap_or_else(|| panic!("seed {}: not sown again", case.seed));
        assert!(
            again.until.last() >= own.steps[0].when.last(),
            "seed {}",
            case.seed
        );
    }
}

#[test]
fn every_rung_is_a_plan_that_passes_the_checker() {
    let catalogue = Catalogue::load().unwrap();
    let mut seen = [0; 3];
    for (seed, garden, plan) in plans(10_000..10_040, &TINY) {
        let checked = check(&garden, plan).unwrap();
        let case = Case {
            seed,
            garden,
            checked,
        };
        for ladder in rescue_ladders(&case.garden, &case.checked, &catalogue, &Deadline::never()) {
            let mut last = None;
            for rung in &ladder.rungs {
                by_hand(&case, ladder.ingredient, rung);
                assert!(rung.until.last() > last, "seed {seed}");
                last = rung.until.last();
                let kind = match &rung.rescue {
                    Rescue::SowAgain => 0,
                    Rescue::BoughtPlants => 1,
                    Rescue::QuickCrop(_) => 2,
                };
                seen[kind] += 1;
            }
            not_too_early(&case, &ladder);
            if matches!(case.garden[ladder.ingredient].source, Source::Begun(_)) {
                assert!(ladder.rungs.is_empty(), "seed {seed}: {:?}", ladder.rungs);
            }
        }
    }
    println!("{seen:?} rungs: sown again, bought, quick crops");
    assert!(seen.iter().all(|n| *n > 0) && seen[0] > 20, "{seen:?}");
}
