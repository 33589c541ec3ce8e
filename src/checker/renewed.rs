//! What follows from the garden derived anew, where that has changed since a plan was made.

use crate::garden::Garden;
use crate::plan::{IngredientPromise, Plan, Promise};

use super::fault::{Fault, Quantity, Subject, Violation};
use super::harvest::Harvest;
use super::rules::sessions;
use super::run::Run;
use super::standing::Difference;

/// A plan that says nothing of its aims, nor of plans made the same way.
pub fn without_claims(plan: Plan) -> Plan {
    Plan {
        aims: Vec::new(),
        unseen: None,
        ..plan
    }
}

/// The figures among violations that follow from the garden, the most important first.
pub fn differences(violations: &[Violation]) -> Vec<Difference> {
    let mut found: Vec<Difference> = violations
        .iter()
        .filter_map(|violation| match &violation.fault {
            Fault::Number {
                of,
                what,
                expected,
                got,
            } if weight(*what).is_some() => Some(Difference {
                of: of.clone(),
                what: *what,
                was: *got,
                is: *expected,
            }),
            _ => None,
        })
        .collect();
    found.sort_by(|a, b| {
        let rank = |d: &Difference| (weight(d.what), d.of != Subject::Dish);
        let change = |d: &Difference| (d.is - d.was).abs();
        rank(a).cmp(&rank(b)).then(change(b).total_cmp(&change(a)))
    });
    found
}

/// The rank of a figure that follows from the garden; `None` for what the plan decides.
fn weight(what: Quantity) -> Option<u8> {
    match what {
        Quantity::ReadyYears => Some(0),
        Quantity::WeatherYears => Some(1),
        Quantity::LowKilograms => Some(2),
        Quantity::ExpectedKilograms => Some(3),
        Quantity::Plants => Some(4),
        Quantity::Seeds => Some(5),
        Quantity::FlatsSown | Quantity::FlatsKept => Some(6),
        Quantity::Minutes => Some(7),
        Quantity::Plantings => None,
    }
}

/// A plan with all that follows from the garden derived anew, and without claims.
pub fn renewed(garden: &Garden, plan: Plan) -> Plan {
    let mut new = without_claims(plan.clone());
    let run = Run::new(garden, &plan).0;
    for planting in &run.plantings {
        let own = new.plantings.get_mut(planting.name.number - 1);
        let Some((own, need)) = own.zip(planting.need) else {
            continue;
        };
        own.plants = need.plants;
        own.seeds = need.seeds;
        own.flats_sown = need.flats_sown;
        own.flats_kept = need.flats_kept;
        for step in &planting.steps {
            let own = own.steps.get_mut(step.name.number - 1);
            if let Some((own, minutes)) = own.zip(sessions::minutes(&run, planting, step)) {
                own.minutes = minutes;
            }
        }
    }
    new.promise = promise(garden, &new);
    new
}

/// What a plan can promise: what comes of it, whatever rules it breaks.
#[must_use]
pub fn promise(garden: &Garden, plan: &Plan) -> Promise {
    let harvest = Harvest::for_feast(&Run::new(garden, plan).0);
    let whole = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let ingredients = garden.ingredients.iter().zip(&harvest.ingredients);
    Promise {
        weather_years: whole(harvest.years.len()),
        whole_dish_years: whole(harvest.whole_dish_years()),
        ingredients: ingredients
            .map(|(ingredient, seen)| IngredientPromise {
                ingredient: ingredient.name.clone(),
                ready_years: whole(seen.ready_years()),
                low: seen.low,
                expected: seen.expected,
            })
            .collect(),
    }
}
