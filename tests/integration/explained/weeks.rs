//! What another week would cost: the plan with a step held to it, against all others.

use tureen::candidates::Candidate;
use tureen::checker::check;
use tureen::explain::why_step;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve_where};
use tureen::plan::{Aim, Plan, PlantingAt, StepAt, StepKind, When};

use super::aim::plans;
use super::steps_by_hand::{choices, key};
use crate::random_gardens::make::TINY;

/// The first day of a candidate's start in the bed.
fn into_bed(candidate: &Candidate) -> Option<tureen::calendar::Date> {
    candidate.steps.into_bed()
}

/// The best value of an aim about years in which the ingredient starts in the bed on a day.
fn best(garden: &Garden, ingredient: &str, day: &When) -> Option<Plan> {
    let other = |c: &Candidate| garden[c.ingredient].name != ingredient;
    let keep = |c: &Candidate| other(c) || into_bed(c) == day.first();
    match solve_where(garden, &Options::default(), keep) {
        Outcome::Planned(plan) => Some(plan),
        _ => None,
    }
}

fn years_of(plan: &Plan) -> Vec<f64> {
    let about_years = [Aim::WorstIngredient, Aim::AllIngredients, Aim::WholeDish];
    let of = plan.aims.iter().filter(|a| about_years.contains(&a.aim));
    of.map(|a| a.value).collect()
}

#[test]
fn the_nearest_week_with_a_plan_is_the_first_that_has_one() {
    let (mut held, mut without) = (0, 0);
    for (seed, garden, plan) in plans(10_000..10_040, &TINY) {
        let sown = |p: &&tureen::plan::Planting| p.steps[0].kind == StepKind::Sow;
        let once = |name: &str| {
            plan.plantings
                .iter()
                .filter(|p| p.ingredient == name)
                .count()
                == 1
        };
        let Some(planting) = plan.plantings.iter().position(|p| {
            sown(&p) && once(&p.ingredient) && p.steps.iter().all(|s| s.kind != StepKind::PlantOut)
        }) else {
            continue;
        };
        let checked = check(&garden, plan.clone()).unwrap();
        let at = StepAt {
            planting: PlantingAt(planting),
            step: 0,
        };
        let why = why_step(&garden, &checked, at, &Options::default()).unwrap();
        let own = &plan.plantings[planting];
        let planned = own.steps[0].when.first();
        let mut rounds = choices(&garden, own, 0);
        rounds.retain(|when| key(when) != key(&own.steps[0].when));
        for side in &why.held {
            let mut rounds: Vec<&When> = rounds
                .iter()
                .filter(|when| (when.first() < planned) == side.earlier)
                .collect();
            if side.earlier {
                rounds.reverse();
            }
            let first = rounds
                .into_iter()
                .take(8)
                .find_map(|when| Some((when, best(&garden, &own.ingredient, when)?)));
            match (&side.plan, first) {
                (Some((when, found)), Some((expected, plan))) => {
                    assert_eq!(key(when), key(expected), "seed {seed}");
                    assert_eq!(years_of(found.plan()), years_of(&plan), "seed {seed}");
                    held += 1;
                }
                (None, None) => without += 1,
                (found, expected) => panic!("seed {seed}: {found:?}, by hand {expected:?}"),
            }
        }
    }
    println!("{held} nearest weeks with a plan, {without} sides without");
    assert!(held > 10 && without > 5, "{held}, {without}");
}
