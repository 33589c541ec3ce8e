//! From chosen candidates to a plan in names and dates.

use crate::calendar::{Date, plus_days};
use crate::candidates::{Candidate, Candidates, Done, Round, hardening};
use crate::garden::{BedAt, Garden, Source, Strips};
use crate::growth::{effort, need_in, printed_plants};
use crate::plan::{
    AimResult, IngredientPromise, Place, Plan, Planting, Promise, Step, StepKind, When,
};
use crate::units::{Kilograms, Minutes};

use super::layout::Chosen;

/// The plan of chosen plantings and their places.
#[must_use]
pub fn plan(
    garden: &Garden,
    candidates: &Candidates,
    chosen: &[Chosen],
    places: Vec<Vec<Place>>,
    aims: Vec<AimResult>,
) -> Plan {
    let plantings = chosen
        .iter()
        .zip(places)
        .map(|(c, places)| planting(garden, &candidates[c.candidate], c.blocks, places))
        .collect();
    Plan {
        plantings,
        promise: promise(garden, candidates, chosen),
        aims,
        unseen: None,
    }
}

/// A candidate as a planting of a plan.
#[must_use]
pub fn planting(
    garden: &Garden,
    candidate: &Candidate,
    blocks: u32,
    places: Vec<Place>,
) -> Planting {
    let ingredient = &garden[candidate.ingredient];
    let printed = candidate.given.zip(garden.season.as_ref());
    let printed = printed.map(|(given, season)| &season[given]);
    let plants = printed
        .and_then(|printed| printed_plants(garden, printed))
        .unwrap_or(blocks * candidate.amounts.block.plants);
    let need = need_in(
        garden,
        candidate.ingredient,
        candidate.team,
        candidate.method,
        plants,
    );
    let stands = match ingredient.source {
        Source::Begun(which) => garden[which].in_bed(),
        Source::Sown | Source::Patch(_) => None,
    };
    let of = |(bed, strips): (BedAt, Strips)| Place::of(&garden[bed].id, strips);
    let places = match (stands, printed) {
        (Some(stands), _) => vec![of(stands)],
        (None, Some(printed)) => printed.places.iter().copied().map(of).collect(),
        (None, None) => places,
    };
    Planting {
        ingredient: ingredient.name.clone(),
        grades: garden.ids_of(candidate.team),
        method: candidate.method,
        steps: steps(garden, candidate, plants),
        places,
        plants,
        seeds: need.seeds,
        flats_sown: need.flats_sown,
        flats_kept: need.flats_kept,
        on_mat: candidate.shelf.is_some_and(|s| s.warm_until.is_some()),
    }
}

/// All steps in order of time.
fn steps(garden: &Garden, candidate: &Candidate, plants: u32) -> Vec<Step> {
    let of_kind = |kind: &StepKind| {
        let kind = *kind;
        let done = candidate.steps.of_kind(kind).map(move |done| match done {
            Done::Round(round) => in_round(garden, candidate, plants, kind, round),
            Done::Families(_) | Done::Adult(_) => aside(kind, done.when(garden)),
        });
        let span = span(garden, candidate, kind);
        done.chain(span.map(|(from, to)| aside(kind, When::Daily { from, to })))
    };
    StepKind::ALL.iter().flat_map(of_kind).collect()
}

/// First and last day of a step that goes on day by day beside others.
fn span(garden: &Garden, candidate: &Candidate, kind: StepKind) -> Option<(Date, Date)> {
    let planned = &candidate.steps;
    match kind {
        StepKind::Harden if candidate.method.is_on_shelf() => {
            planned.plant_out.as_ref().map(hardening)
        }
        StepKind::Cure => {
            let days = i64::from(garden[candidate.ingredient].crop.picking.cure_days);
            let last = planned.picks.last().filter(|_| days > 0)?.last();
            Some((plus_days(last, 1), plus_days(last, days)))
        }
        StepKind::Harden | StepKind::Sow | StepKind::PotUp => None,
        StepKind::PlantOut | StepKind::Thin | StepKind::Pick => None,
    }
}

/// A step that children do in a round.
fn in_round(
    garden: &Garden,
    candidate: &Candidate,
    plants: u32,
    kind: StepKind,
    round: &Round,
) -> Step {
    let ingredient = &garden[candidate.ingredient];
    let children = garden.children_who_share(round.classes());
    Step {
        kind,
        when: round.when(garden),
        minutes: effort(kind, ingredient, candidate.method, children).minutes(plants),
    }
}

/// A step outside sessions.
fn aside(kind: StepKind, when: When) -> Step {
    Step {
        kind,
        when,
        minutes: Minutes(0.0),
    }
}

/// What chosen plantings promise.
fn promise(garden: &Garden, candidates: &Candidates, chosen: &[Chosen]) -> Promise {
    let ready: Vec<Vec<bool>> = garden
        .ingredient_positions()
        .map(|at| {
            let needed = garden[at].least(garden.feast.portions);
            (0..candidates.years)
                .map(|year| {
                    let low = amount(
                        candidates,
                        chosen,
                        |c| c.ingredient == at && c.ready.has(year),
                        |c| c.amounts.low,
                    );
                    low.0 + 1e-9 >= needed.0
                })
                .collect()
        })
        .collect();
    let count =
        |holds: &dyn Fn(usize) -> bool| (0..candidates.years).filter(|y| holds(*y)).count() as u32;
    Promise {
        weather_years: candidates.years as u32,
        whole_dish_years: count(&|year| ready.iter().all(|r| r[year])),
        ingredients: garden
            .ingredient_positions()
            .map(|at| IngredientPromise {
                ingredient: garden[at].name.clone(),
                ready_years: count(&|year| ready[at.0][year]),
                low: amount(
                    candidates,
                    chosen,
                    |c| c.ingredient == at,
                    |c| c.amounts.low,
                ),
                expected: amount(
                    candidates,
                    chosen,
                    |c| c.ingredient == at,
                    |c| c.amounts.expected,
                ),
            })
            .collect(),
    }
}

/// Kilograms of the chosen plantings that are counted.
fn amount(
    candidates: &Candidates,
    chosen: &[Chosen],
    counts: impl Fn(&Candidate) -> bool,
    per_block: impl Fn(&Candidate) -> Kilograms,
) -> Kilograms {
    chosen
        .iter()
        .map(|c| (&candidates[c.candidate], c.blocks))
        .filter(|(c, _)| counts(c))
        .map(|(c, blocks)| per_block(c) * f64::from(blocks))
        .sum()
}
