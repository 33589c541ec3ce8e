//! What a plan says of its aims: each aim once and in order, no value better than its own
//! bound, every ingredient in the pot, and no bound that the plan itself passes. That a value
//! was reached when it was solved for cannot be seen here: later aims may give up a little.

use crate::plan::{Aim, AimResult, Rule};

use super::fault::{AimFault, Fault, Violation};
use super::harvest::Harvest;
use super::run::Run;

/// Forgiveness of values and bounds, as in `AimResult::proved`.
const ROUNDING: f64 = 1e-6;

/// All faults in the plan's list of aims.
pub fn violations(run: &Run<'_>, harvest: &Harvest) -> Vec<Violation> {
    let aims = &run.plan.aims;
    let mut violations = Vec::new();
    let mut last: Option<Aim> = None;
    for result in aims {
        if last.is_some_and(|last| last >= result.aim) {
            violations.push(violation(result.aim, AimFault::Order));
        }
        last = last.max(Some(result.aim));
        violations.extend(wrong(run, harvest, result).map(|why| violation(result.aim, why)));
    }
    violations
}

/// A fault if a sound plan has fewer steps without slack than is said to be possible.
pub fn fewer_fragile(run: &Run<'_>, fragile: usize) -> Option<Violation> {
    let slack = run
        .plan
        .aims
        .iter()
        .find(|result| result.aim == Aim::Slack)?;
    let (reached, bound) = (fragile as f64, slack.bound);
    let beyond = !no_better(Aim::Slack, reached, bound);
    beyond.then(|| violation(Aim::Slack, AimFault::PlanBeyondBound { reached, bound }))
}

/// The rule under which a fault of an aim is listed.
fn rule(aim: Aim) -> Rule {
    match aim {
        Aim::InThePot | Aim::LeastGrownShare | Aim::ExpectedAmounts => Rule::Amount,
        Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish => Rule::Readiness,
        Aim::Slack | Aim::Evenness => Rule::Sessions,
        Aim::Children => Rule::Participation,
        Aim::UnattendedDays => Rule::Care,
        Aim::Tidiness => Rule::Shelf,
    }
}

fn violation(aim: Aim, why: AimFault) -> Violation {
    Violation {
        rule: rule(aim),
        fault: Fault::Aim { aim, why },
    }
}

/// The first thing that is wrong with what is said of one aim.
fn wrong(run: &Run<'_>, harvest: &Harvest, result: &AimResult) -> Option<AimFault> {
    let AimResult { aim, value, bound } = *result;
    let reached = reached(run, harvest, aim);
    if !no_better(aim, value, bound) {
        return Some(AimFault::ValueBeyondBound { value, bound });
    }
    if let Some(reached) = reached.filter(|r| !no_better(aim, *r, bound)) {
        return Some(AimFault::PlanBeyondBound { reached, bound });
    }
    let expected = reached.filter(|_| aim == Aim::InThePot)?;
    ((expected - value).abs() > ROUNDING).then_some(AimFault::Value {
        expected,
        got: value,
    })
}

/// True if a value is no better than a bound; false if either is not a number.
fn no_better(aim: Aim, value: f64, bound: f64) -> bool {
    let forgiven = ROUNDING * bound.abs().max(1.0);
    let better_by = if aim.more_is_better() {
        value - bound
    } else {
        bound - value
    };
    better_by <= forgiven
}

/// What the plan reaches, for the aims that the replay counts exactly.
fn reached(run: &Run<'_>, harvest: &Harvest, aim: Aim) -> Option<f64> {
    let ingredients = &harvest.ingredients;
    let years = || ingredients.iter().map(|i| i.ready_years());
    match aim {
        Aim::InThePot => Some(run.garden.ingredients.len() as f64),
        Aim::WorstIngredient => years().min().map(|n| n as f64),
        Aim::AllIngredients => Some(years().sum::<usize>() as f64),
        Aim::WholeDish => Some(harvest.whole_dish_years() as f64),
        Aim::LeastGrownShare => {
            let shares = ingredients.iter().map(|i| i.low_share.0.min(1.0));
            shares.reduce(f64::min)
        }
        Aim::ExpectedAmounts => Some(
            ingredients
                .iter()
                .map(|i| i.expected_share.0.min(1.0))
                .sum(),
        ),
        Aim::Slack | Aim::Children | Aim::UnattendedDays | Aim::Evenness | Aim::Tidiness => None,
    }
}
