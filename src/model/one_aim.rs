//! A single aim: its program solved from a point, and how far its value is proved.

use crate::plan::{Aim, AimResult};

use super::aims::objective;
use super::board::Board;
use super::program::{Col, Program, scaled, value};
use super::solver::{Deadline, Objective, Solved, Unsolved, relaxed_bound, solve};

/// Solves for one aim from a point.
pub fn solve_for(
    board: &Board<'_>,
    aim: Aim,
    values: &mut Vec<f64>,
    deadline: &Deadline,
) -> Result<AimResult, Unsolved> {
    let objective = objective(aim, &board.setting());
    let scaled = scale(&objective, &board.program);
    let solved = match solve(&board.program, &scaled, Some(values), deadline.left()) {
        Ok(solved) => better(&objective, solved, values),
        Err(Unsolved::OutOfTime) => Solved {
            values: values.clone(),
            proved: false,
        },
        Err(other) => return Err(other),
    };
    let result = result_of(aim, &objective, &board.program, &solved, deadline);
    *values = solved.values;
    Ok(result)
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
pub fn result_of(
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
    let limit = deadline.left_for_bounds();
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
    let most = |(col, weight): &(Col, f64)| weight * program.columns()[col.0].hi;
    objective.terms.iter().map(most).sum()
}

/// The objective with its greatest value near 1, as solvers like it.
pub fn scale(objective: &Objective, program: &Program) -> Objective {
    let greatest = greatest(objective, program).max(1e-9);
    Objective {
        terms: scaled(objective.terms.clone(), 1.0 / greatest),
        ..objective.clone()
    }
}
