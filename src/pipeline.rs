//! The way from a garden to a checked plan: decide, then check; or read what was saved.

use std::path::Path;

use crate::candidates::Candidate;
use crate::checker::{CheckedPlan, Violation, check};
use crate::disk;
use crate::garden::Garden;
use crate::model::{
    AimProgram, Impossible, Options, Outcome, solve, solve_and_record, solve_where,
};
use crate::plan::Plan;
use crate::plan::saved::{self, SavedError, Since};

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

/// Decides a plan and has it checked.
///
/// # Errors
/// Why there is none.
pub fn plan(garden: &Garden, options: &Options) -> Result<CheckedPlan, NoPlan> {
    checked(garden, solve(garden, options))
}

/// Decides a plan with only those candidates for which `keep` holds, and has it checked.
///
/// # Errors
/// Why there is none.
pub fn plan_where(
    garden: &Garden,
    options: &Options,
    keep: impl Fn(&Candidate) -> bool,
) -> Result<CheckedPlan, NoPlan> {
    checked(garden, solve_where(garden, options, keep))
}

/// Decides a plan and has it checked; also gives the program of every aim that was followed.
pub fn plan_with_programs(
    garden: &Garden,
    options: &Options,
) -> (Result<CheckedPlan, NoPlan>, Vec<AimProgram>) {
    let recorded = solve_and_record(garden, options);
    (checked(garden, recorded.outcome), recorded.programs)
}

fn checked(garden: &Garden, outcome: Outcome) -> Result<CheckedPlan, NoPlan> {
    match outcome {
        Outcome::Planned(plan) => match check(garden, plan) {
            Ok(checked) => Ok(checked.counted(garden)),
            Err(violations) => Err(NoPlan::Refused(violations)),
        },
        Outcome::Impossible(why) => Err(NoPlan::Impossible(why)),
        Outcome::TooMany => Err(NoPlan::TooMany),
        Outcome::OutOfTime => Err(NoPlan::OutOfTime),
        Outcome::Failed(words) => Err(NoPlan::Failed(words)),
    }
}

/// Largest saved plan, in bytes: room for thousands of plantings.
pub const PLAN_LIMIT: u64 = 8 << 20;

/// Why a saved plan cannot be read.
#[derive(Debug)]
pub enum Unreadable {
    /// The file itself.
    File(std::io::Error),
    /// What is in it.
    Content(SavedError),
}

/// Reads the plan that was saved for a garden, and tells what happened since.
///
/// # Errors
/// The first thing that is wrong with the file or with what is in it.
pub fn read_saved(garden: &Garden, path: &Path) -> Result<(Plan, Since), Unreadable> {
    let text = disk::read_text(path, PLAN_LIMIT).map_err(Unreadable::File)?;
    saved::read(&text)
        .and_then(|saved| saved.for_garden(garden))
        .map_err(Unreadable::Content)
}
