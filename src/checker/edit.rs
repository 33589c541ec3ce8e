//! Plantings with a step moved or left out; the spans that hang on a step go with it.

use crate::calendar::plus_days;
use crate::garden::{Garden, Ingredient};
use crate::growth::effort;
use crate::plan::{Needed, Planting, Step, StepKind, When};
use crate::units::Minutes;

use super::seedlings::HARDEN_DAYS;

/// A planting with a step (by its position) on other days, its minutes those of the classes
/// that then do it. All other steps of people stay as they are.
pub fn moved(garden: &Garden, planting: &Planting, step: usize, when: When) -> Planting {
    let mut moved = planting.clone();
    if let Some(step) = moved.steps.get_mut(step) {
        step.minutes = minutes(garden, planting, step.kind, &when);
        step.when = when;
    }
    follow(garden, &mut moved);
    moved
}

/// What is left of a planting without some steps; `None` if it is lost with them: without its
/// thinning or one of several picks it is not.
pub fn without(garden: &Garden, planting: &Planting, lost: &[usize]) -> Option<Planting> {
    let mut rest = planting.clone();
    let mut falls_out = 0..;
    rest.steps
        .retain(|_| falls_out.next().is_none_or(|at| !lost.contains(&at)));
    let steps = lost.iter().filter_map(|at| planting.steps.get(*at));
    let survives = |step: &Step| step.kind.facts().needed != Needed::Always;
    let is_picked = rest.picks().next().is_some();
    if !is_picked || !steps.into_iter().all(survives) {
        return None;
    }
    follow(garden, &mut rest);
    Some(rest)
}

/// Puts hardening before planting out and curing after the last pick.
fn follow(garden: &Garden, planting: &mut Planting) {
    let out = planting
        .steps_of(StepKind::PlantOut)
        .find_map(|s| s.when.first());
    let picked = planting.picks().filter_map(|s| s.when.last()).max();
    let cure = ingredient(garden, planting).map_or(0, |i| i.crop.picking.cure_days);
    for step in &mut planting.steps {
        let span = match step.kind {
            StepKind::Harden => {
                out.map(|out| (plus_days(out, -(HARDEN_DAYS as i64)), plus_days(out, -1)))
            }
            StepKind::Cure => {
                picked.map(|day| (plus_days(day, 1), plus_days(day, i64::from(cure))))
            }
            StepKind::Sow
            | StepKind::PotUp
            | StepKind::PlantOut
            | StepKind::Thin
            | StepKind::Pick => None,
        };
        if let Some((from, to)) = span {
            step.when = When::Daily { from, to };
        }
    }
}

/// The minutes of a step for each class that does it; none outside sessions.
fn minutes(garden: &Garden, planting: &Planting, kind: StepKind, when: &When) -> Minutes {
    let When::Sessions(visits) = when else {
        return Minutes(0.0);
    };
    let classes = visits.iter().filter_map(|v| garden.class_named(&v.class));
    let children = garden.children_who_share(classes);
    ingredient(garden, planting).map_or(Minutes(0.0), |ingredient| {
        effort(kind, ingredient, planting.method, children).minutes(planting.plants)
    })
}

fn ingredient<'g>(garden: &'g Garden, planting: &Planting) -> Option<&'g Ingredient> {
    let at = garden.ingredient_named(&planting.ingredient)?;
    Some(&garden[at])
}
