//! More freedom is never worse: a garden that may have several sowings is decided from the plan that it
//! has with one sowing each, and has that plan where it finds no better one.

use crate::candidates::{Candidate, Unlisted};
use crate::garden::Garden;
use crate::plan::{AimResult, Plan};

use super::decision::{Decided, Decision};
use super::known::Known;
use super::open_grades;
use super::options::Options;
use super::outcome::{Outcome, Recorded};
use super::solver::Unsolved;
use super::stages::Pace;

/// Decides a garden with only those candidates for which `keep` holds, from what is reached with one
/// sowing each.
///
/// # Errors
/// There are too many candidates, or no time to list them.
pub fn decide(
    garden: &Garden,
    options: &Options,
    record: bool,
    keep: &dyn Fn(&Candidate) -> bool,
) -> Result<Result<Recorded, Unsolved>, Unlisted> {
    let mut decision = Decision::new(garden, options, record)?.only(keep);
    let fewer = garden.with_one_sowing_each();
    let known = fewer.and_then(|fewer| with_less(&decision, &fewer));
    let Some(Decided { recorded, points }) = known else {
        return Ok(decision.decide().map(|decided| decided.recorded));
    };
    decision.known = Known { points };
    let freed = match decision.decide() {
        Ok(decided) => decided.recorded,
        Err(Unsolved::OutOfTime) => Recorded {
            outcome: Outcome::OutOfTime,
            programs: Vec::new(),
        },
        Err(failed) => return Ok(Err(failed)),
    };
    Ok(Ok(match recorded.outcome {
        Outcome::Planned(plan) => the_better(&decision, freed, plan),
        _ => freed,
    }))
}

/// What comes of the same garden with one sowing each. Half of the time that is left is for it.
fn with_less(decision: &Decision<'_>, garden: &Garden) -> Option<Decided> {
    let mut fewer = Decision {
        garden,
        all: decision.all.sown_once(decision.garden),
        pace: Pace {
            deadline: decision.pace.deadline.shared_by(2),
            ..decision.pace
        },
        known: Known::default(),
    };
    fewer.decide().ok()
}

/// Whichever is better by the aims in order: what came of a garden, or a known plan, of which then
/// only that is proved which was proved of the garden or which no plan can pass.
fn the_better(decision: &Decision<'_>, freed: Recorded, mut known: Plan) -> Recorded {
    let followed: &[AimResult] = match &freed.outcome {
        Outcome::Planned(plan) if !open_grades::is_better(&known.aims, &plan.aims) => return freed,
        Outcome::Planned(plan) => &plan.aims,
        _ => &[],
    };
    open_grades::widen(decision.garden, &decision.all, followed, &mut known.aims);
    Recorded {
        outcome: Outcome::Planned(known),
        ..freed
    }
}
