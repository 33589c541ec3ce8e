//! One aim after the other: solve, hold, go on from the same point.

use crate::candidates::Candidates;
use crate::garden::Garden;
use crate::plan::{Aim, AimResult};

use super::aims::{concession, hold, objective};
use super::columns::Columns;
use super::program::{Program, scaled, value};
use super::solver::{Deadline, Objective, Solved, Unsolved, relaxed_bound, solve};

/// What the stages brought.
#[derive(Debug, Clone, PartialEq)]
pub struct Staged {
    /// One value per column.
    pub values: Vec<f64>,
    /// Value and bound of each aim.
    pub aims: Vec<AimResult>,
    /// The points that reached the aims of which later ones may give something back.
    pub conceded: Vec<Vec<f64>>,
}

/// Solves for the first aim alone: as many ingredients in the pot as can be.
///
/// # Errors
/// None found in time, or a failure of the solver.
pub fn in_the_pot(
    program: &Program,
    garden: &Garden,
    candidates: &Candidates,
    columns: &Columns,
    deadline: &Deadline,
) -> Result<Staged, Unsolved> {
    let aim = objective(Aim::InThePot, garden, candidates, columns);
    let solved = solve(program, &scale(&aim, program), None, deadline.left())?;
    let result = result_of(Aim::InThePot, &aim, program, &solved, deadline);
    Ok(Staged {
        values: solved.values,
        aims: vec![result],
        conceded: Vec::new(),
    })
}

/// Solves for all later aims in order, from a point in which every ingredient is in the pot.
/// An aim for which time runs out keeps the point it has, with its bound.
///
/// # Errors
/// A failure of the solver.
pub fn later_aims(
    program: &mut Program,
    garden: &Garden,
    candidates: &Candidates,
    columns: &Columns,
    mut staged: Staged,
    concession_years: u32,
    deadline: &Deadline,
) -> Result<Staged, Unsolved> {
    for aim in Aim::ALL.into_iter().skip(1) {
        let objective = objective(aim, garden, candidates, columns);
        let scaled = scale(&objective, program);
        let solved = match solve(program, &scaled, Some(&staged.values), deadline.left()) {
            Ok(solved) => better(&objective, solved, &staged.values),
            Err(Unsolved::OutOfTime) => Solved {
                values: staged.values.clone(),
                proved: false,
            },
            Err(other) => return Err(other),
        };
        let result = result_of(aim, &objective, program, &solved, deadline);
        staged.values = solved.values;
        staged.aims.push(result);
        let given_back = concession(aim, concession_years);
        if given_back > 0.0 {
            staged.conceded.push(staged.values.clone());
        }
        hold(program, aim, objective, result.value, given_back);
    }
    Ok(staged)
}

/// The solved point, or the one that was known if that is better.
fn better(objective: &Objective, solved: Solved, known: &[f64]) -> Solved {
    let gain = value(&objective.terms, known) - value(&objective.terms, &solved.values);
    let known_is_better = if objective.maximise {
        gain > 1e-9
    } else {
        gain < -1e-9
    };
    if known_is_better && !solved.proved {
        Solved {
            values: known.to_vec(),
            proved: false,
        }
    } else {
        solved
    }
}

/// Value and bound of an aim at a point.
fn result_of(
    aim: Aim,
    objective: &Objective,
    program: &Program,
    solved: &Solved,
    deadline: &Deadline,
) -> AimResult {
    let reached = value(&objective.terms, &solved.values);
    let reached = if aim.is_whole() {
        reached.round()
    } else {
        reached
    };
    if solved.proved || objective.terms.is_empty() {
        return AimResult {
            aim,
            value: reached,
            bound: reached,
        };
    }
    // The time for a bound is short: it is a program without whole columns.
    let limit = deadline.left().max(std::time::Duration::from_secs(1));
    let trivial = if objective.maximise {
        greatest(objective, program)
    } else {
        0.0
    };
    let bound = relaxed_bound(program, objective, limit).unwrap_or(trivial);
    let bound = match (aim.is_whole(), objective.maximise) {
        (true, true) => (bound + 1e-6).floor(),
        (true, false) => (bound - 1e-6).ceil(),
        (false, _) => bound,
    };
    AimResult {
        aim,
        value: reached,
        bound,
    }
}

/// The greatest value that an objective could have by its columns' bounds.
fn greatest(objective: &Objective, program: &Program) -> f64 {
    let most = |(col, weight): &(super::program::Col, f64)| weight * program.columns()[col.0].hi;
    objective.terms.iter().map(most).sum()
}

/// The objective with its greatest value near 1, as solvers like it.
fn scale(objective: &Objective, program: &Program) -> Objective {
    let greatest = greatest(objective, program).max(1e-9);
    Objective {
        terms: scaled(objective.terms.clone(), 1.0 / greatest),
        ..objective.clone()
    }
}
