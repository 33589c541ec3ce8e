//! What a plan says of its aims: each aim once and in order, no value better than its own
//! bound, every ingredient in the pot, and no bound that the plan itself passes. That a value
//! was reached when it was solved for cannot be seen here: later aims may give up a little.
//! So a plan that was edited is held to what is counted in it.

use crate::plan::{Aim, AimResult, Rule};

use super::counted::of_harvest;
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

/// A fault for each aim of an edited plan whose value is not what is counted in it. Years may have
/// been given back since the aim was followed: of them the plan may have fewer.
pub fn not_counted(run: &Run<'_>, counted: &[(Aim, f64)]) -> Vec<Violation> {
    let differs = |result: &AimResult| {
        let (aim, expected) = *counted.iter().find(|(aim, _)| *aim == result.aim)?;
        // Shares are held to that much when later aims are followed.
        let forgiven = if aim.is_whole() { 0.0 } else { 2.0 * ROUNDING };
        let got = result.value;
        let years = [Aim::WorstIngredient, Aim::AllIngredients, Aim::WholeDish];
        let given_back = years.contains(&aim) && got > expected;
        let right = given_back || (expected - got).abs() <= forgiven;
        (!right).then(|| violation(aim, AimFault::Value { expected, got }))
    };
    run.plan.aims.iter().filter_map(differs).collect()
}

/// The rule under which a fault of an aim is listed.
fn rule(aim: Aim) -> Rule {
    match aim {
        Aim::InThePot | Aim::LeastGrownShare | Aim::ExpectedAmounts => Rule::Amount,
        Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish => Rule::Readiness,
        Aim::MovedDates | Aim::MovedDays => Rule::Happened,
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
    let reached = of_harvest(run, harvest, aim);
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
