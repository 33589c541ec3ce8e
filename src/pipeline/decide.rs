//! From a garden to a checked plan, or the reason why there is none.

use crate::candidates::Candidate;
use crate::checker::{CheckedPlan, Violation, check};
use crate::garden::Garden;
use crate::model::{
    AimProgram, Impossible, Options, Outcome, solve, solve_and_record, solve_where,
};

/// Why there is no plan.
#[derive(Debug, Clone, PartialEq)]
pub enum NoPlan {
    /// No plan keeps every rule with all ingredients.
    Impossible(Impossible),
    /// There are too many plantings to choose from.
    TooMany,
    /// None was found in the time allowed.
    OutOfTime,
    /// The solver failed; its words.
    Failed(String),
    /// The program's own plan breaks rules: a fault of the program.
    Refused(Vec<Violation>),
}

/// Decides a plan and has it checked. What it promises is not counted.
///
/// # Errors
/// Why there is none.
pub fn decide(garden: &Garden, options: &Options) -> Result<CheckedPlan, NoPlan> {
    checked(garden, solve(garden, options))
}

/// The same with only those candidates for which `keep` holds.
///
/// # Errors
/// Why there is none.
pub fn decide_where(
    garden: &Garden,
    options: &Options,
    keep: impl Fn(&Candidate) -> bool,
) -> Result<CheckedPlan, NoPlan> {
    checked(garden, solve_where(garden, options, keep))
}

/// The same with any candidate; also gives the program of every aim that was followed.
pub fn decide_with_programs(
    garden: &Garden,
    options: &Options,
) -> (Result<CheckedPlan, NoPlan>, Vec<AimProgram>) {
    let recorded = solve_and_record(garden, options);
    (checked(garden, recorded.outcome), recorded.programs)
}

fn checked(garden: &Garden, outcome: Outcome) -> Result<CheckedPlan, NoPlan> {
    match outcome {
        Outcome::Planned(plan) => check(garden, plan).map_err(NoPlan::Refused),
        Outcome::Impossible(why) => Err(NoPlan::Impossible(why)),
        Outcome::TooMany => Err(NoPlan::TooMany),
        Outcome::OutOfTime => Err(NoPlan::OutOfTime),
        Outcome::Failed(words) => Err(NoPlan::Failed(words)),
    }
}
