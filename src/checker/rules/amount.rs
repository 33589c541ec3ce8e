//! Every ingredient reaches its least share of the target.

use crate::checker::fault::{Fault, Quantity, Subject};
use crate::checker::harvest::Harvest;
use crate::checker::planting::Planting;
use crate::checker::run::Run;
use crate::garden::IngredientAt;
use crate::growth::Need;

/// Forgiveness for sums of kilograms.
const ROUNDING: f64 = 1e-6;

/// All faults: numbers that differ from what the strips take and give, too many or no
/// plantings, too little in the pot, promised kilograms that the plan does not give.
pub fn faults(run: &Run<'_>, harvest: &Harvest) -> Vec<Fault> {
    let mut faults: Vec<Fault> = run
        .plantings
        .iter()
        .filter_map(|p| Some(numbers(p, &p.need?)))
        .flatten()
        .collect();
    faults.extend(run.plantings.iter().filter_map(too_few_seedlings));
    for at in run.garden.ingredient_positions() {
        faults.extend(plantings(run, at));
    }
    faults.extend(too_little(run, harvest));
    faults.extend(promises(run, harvest));
    faults
}

/// A fault if a number in the plan is not the one that the replay saw.
pub fn differs(of: Subject, what: Quantity, expected: f64, got: f64) -> Option<Fault> {
    let right = (got - expected).abs() <= ROUNDING;
    (!right).then_some(Fault::Number {
        of,
        what,
        expected,
        got,
    })
}

fn numbers(planting: &Planting<'_>, need: &Need) -> Vec<Fault> {
    let plan = planting.plan;
    [
        (Quantity::Plants, need.plants, plan.plants),
        (Quantity::Seeds, need.seeds, plan.seeds),
        (Quantity::FlatsSown, need.flats_sown, plan.flats_sown),
        (Quantity::FlatsKept, need.flats_kept, plan.flats_kept),
    ]
    .into_iter()
    .filter_map(|(what, expected, got)| {
        let of = Subject::Planting(planting.name.clone());
        differs(of, what, f64::from(expected), f64::from(got))
    })
    .collect()
}

/// No more plants are planted out than stand on the shelf.
fn too_few_seedlings(planting: &Planting<'_>) -> Option<Fault> {
    let there = planting.seedlings?.count;
    let plants = planting.need?.plants;
    (plants > there).then(|| Fault::TooFewSeedlings {
        planting: planting.name.clone(),
        expected: there,
        got: plants,
    })
}

fn plantings(run: &Run<'_>, at: IngredientAt) -> Option<Fault> {
    let ingredient = &run.garden[at];
    let got = run.plantings.iter().filter(|p| p.at == at).count();
    let most = ingredient.most_plantings().max(1) as usize;
    let of = Subject::Ingredient(ingredient.name.clone());
    differs(
        of,
        Quantity::Plantings,
        got.clamp(1, most) as f64,
        got as f64,
    )
}

fn too_little(run: &Run<'_>, harvest: &Harvest) -> Vec<Fault> {
    run.garden
        .ingredient_positions()
        .zip(&harvest.ingredients)
        .filter_map(|(at, replay)| {
            let wanted = run.garden[at].least(run.garden.feast.portions).0;
            (replay.low.0 < wanted - 1e-9).then(|| Fault::TooLittle {
                ingredient: run.garden[at].name.clone(),
                expected: wanted,
                got: replay.low.0,
            })
        })
        .collect()
}

fn promises(run: &Run<'_>, harvest: &Harvest) -> Vec<Fault> {
    let promised = &run.plan.promise.ingredients;
    let names = || run.garden.ingredients.iter().map(|i| &i.name);
    let mut faults = Vec::new();
    if !names().eq(promised.iter().map(|p| &p.ingredient)) {
        faults.push(Fault::PromiseList {
            expected: names().cloned().collect(),
            got: promised.iter().map(|p| p.ingredient.clone()).collect(),
        });
    }
    for (name, replay) in names().zip(&harvest.ingredients) {
        let of = || Subject::Ingredient(name.clone());
        for promise in promised.iter().filter(|p| p.ingredient == *name) {
            let (low, expected) = (promise.low.0, promise.expected.0);
            faults.extend(differs(of(), Quantity::LowKilograms, replay.low.0, low));
            let ordinary = replay.expected.0;
            faults.extend(differs(
                of(),
                Quantity::ExpectedKilograms,
                ordinary,
                expected,
            ));
        }
    }
    faults
}
