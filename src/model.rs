//! The mixed-integer program: which plantings, how much of each, in which beds. The aims are
//! followed in order; what it returns is plain data that the checker has yet to see.

mod aim_program;
mod aims;
mod board;
mod columns;
mod decision;
mod decode;
mod engine;
mod fit;
mod forbidden;
mod freedom;
mod grown_share;
mod keeping;
mod known;
mod layout;
mod names;
mod one_aim;
mod open_grades;
mod options;
mod outcome;
mod point;
mod program;
mod reasons;
mod rules;
mod search;
mod setting;
mod share_floor;
mod solver;
mod stages;
mod still_possible;
mod too_much;

use crate::candidates::Candidate;
use crate::garden::Garden;
use crate::plan::{Aim, AimResult, Plan};

use decision::Decision;

pub use aim_program::{AimProgram, NamedPlanting};
pub use decode::planting;
pub use keeping::FewestStrips;
pub use layout::{
    Chosen, Ground, Packed, Part, Parts, Piece, PieceAt, neat as neat_layout, pack,
    places as strips_of_layout,
};
pub use open_grades::widen;
pub use options::{CONCESSION_YEARS, Options, USUAL_TIME};
pub use outcome::{NotKnown, Outcome, Recorded};
pub use program::{Col, Column, Program, Row, Section};
pub use reasons::{Impossible, LeftOut, Pressure, Why};

/// Decides a garden's plan.
#[must_use]
pub fn solve(garden: &Garden, options: &Options) -> Outcome {
    decide(garden, options, false, &|_| true).outcome
}

/// Decides a garden's plan with only those candidates for which `keep` holds.
#[must_use]
pub fn solve_where(
    garden: &Garden,
    options: &Options,
    keep: impl Fn(&Candidate) -> bool,
) -> Outcome {
    decide(garden, options, false, &keep).outcome
}

/// Decides a garden's plan and keeps the program of every aim.
#[must_use]
pub fn solve_and_record(garden: &Garden, options: &Options) -> Recorded {
    decide(garden, options, true, &|_| true)
}

fn decide(
    garden: &Garden,
    options: &Options,
    record: bool,
    keep: &dyn Fn(&Candidate) -> bool,
) -> Recorded {
    let none = |outcome| Recorded {
        outcome,
        programs: Vec::new(),
    };
    match freedom::decide(garden, options, record, keep) {
        Err(why) => none(why.into()),
        Ok(Ok(recorded)) => recorded,
        Ok(Err(why)) => none(why.into()),
    }
}

/// Whether every ingredient can be in the pot at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Possible {
    /// It can.
    Yes,
    /// It is proved that it cannot.
    No,
    /// Neither is known in the time allowed.
    Unknown,
}

/// Tells whether every ingredient of a garden can be in the pot at once, without looking how
/// well.
#[must_use]
pub fn possible(garden: &Garden, options: &Options) -> Possible {
    let all = [AimResult {
        aim: Aim::InThePot,
        value: garden.ingredients.len() as f64,
        bound: garden.ingredients.len() as f64,
    }];
    match keeping(garden, options, &all) {
        Ok(Some(_)) => Possible::Yes,
        Ok(None) => Possible::No,
        Err(NotKnown) => Possible::Unknown,
    }
}

/// A plan that keeps what aims have reached, whatever else becomes of it; nothing is given back.
/// `None` if it is proved that there is none. `held` begins with the first aim.
///
/// # Errors
/// Neither a plan nor a proof was found in the time allowed.
pub fn keeping(
    garden: &Garden,
    options: &Options,
    held: &[AimResult],
) -> Result<Option<Plan>, NotKnown> {
    let decision = Decision::keeping(garden, options)?;
    keeping::any(garden, &decision.all, held, &decision.pace).map_err(|_| NotKnown)
}

/// A plan that keeps what aims have reached and needs the fewest strips of bed, as far as that
/// is found in the time allowed.
///
/// # Errors
/// Not one plan was found.
pub fn on_fewest_strips(
    garden: &Garden,
    options: &Options,
    held: &[AimResult],
) -> Result<FewestStrips, NotKnown> {
    let decision = Decision::keeping(garden, options)?;
    keeping::on_fewest_strips(garden, &decision.all, held, &decision.pace).map_err(|_| NotKnown)
}
