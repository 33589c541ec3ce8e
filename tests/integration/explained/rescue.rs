//! Every rung of a rescue ladder, put into the plan by hand.

use tureen::catalogue::Catalogue;
use tureen::checker::{check, promise};
use tureen::explain::{Rescue, rescue_ladders};
use tureen::garden::{Method, Source};
use tureen::plan::{Plan, Planting};

use super::aim::plans;
use crate::random_gardens::make::TINY;

#[test]
fn every_rung_is_a_plan_that_passes_the_checker() {
    let catalogue = Catalogue::load().unwrap();
    let mut seen = [0; 3];
    for (seed, garden, plan) in plans(10_000..10_040, &TINY) {
        let checked = check(&garden, plan.clone()).unwrap();
        for ladder in rescue_ladders(&garden, &checked, &catalogue) {
            let ingredient = &garden[ladder.ingredient];
            let lost = |p: &&Planting| p.ingredient == ingredient.name;
            let promised = checked.replay().ingredients[ladder.ingredient.0].ready_years();
            let mut last = None;
            for rung in &ladder.rungs {
                let new: Vec<&Planting> =
                    rung.checked.plan().plantings.iter().filter(lost).collect();
                let [new] = new.as_slice() else {
                    panic!("seed {seed}: one planting")
                };
                // By hand: all others as they were, in their order, with the new one among them.
                let mut plantings: Vec<Planting> = plan
                    .plantings
                    .iter()
                    .filter(|p| !lost(p))
                    .cloned()
                    .collect();
                plantings.push((*new).clone());
                let mut by_hand = Plan {
                    plantings,
                    aims: Vec::new(),
                    ..plan.clone()
                };
                by_hand.promise = promise(&rung.garden, &by_hand);
                let ready = by_hand.promise.ingredients[ladder.ingredient.0].ready_years as usize;
                check(&rung.garden, by_hand).unwrap_or_else(|v| panic!("seed {seed}: {v:?}"));
                assert_eq!(ready, rung.ready_years, "seed {seed}");
                assert!(2 * ready >= promised, "seed {seed}: {ready} of {promised}");
                assert_eq!(new.steps[0].when, rung.until, "seed {seed}");
                assert!(
                    rung.until.last() > last,
                    "seed {seed}: {:?}",
                    ladder.rungs.len()
                );
                last = rung.until.last();
                let (kind, right) = match &rung.rescue {
                    Rescue::SowAgain => (0, new.method != Method::Bought),
                    Rescue::BoughtPlants => (1, new.method == Method::Bought),
                    Rescue::QuickCrop(crop) => {
                        (2, rung.garden[ladder.ingredient].crop.name == *crop)
                    }
                };
                assert!(right, "seed {seed}: {:?}", rung.rescue);
                seen[kind] += 1;
            }
            // What is sown once can be sown again at least until the day on which it is.
            let own: Vec<&Planting> = plan.plantings.iter().filter(lost).collect();
            if let ([own], Source::Sown) = (own.as_slice(), ingredient.source)
                && own.method != Method::Bought
            {
                let again = ladder.rungs.iter().find(|r| r.rescue == Rescue::SowAgain);
                let again = again.unwrap_or_else(|| panic!("seed {seed}: not sown again"));
                assert!(
                    again.until.last() >= own.steps[0].when.last(),
                    "seed {seed}"
                );
            }
        }
    }
    println!("{seen:?} rungs: sown again, bought, quick crops");
    assert!(seen[0] > 20 && seen[2] > 0, "{seen:?}");
}
