//! A single aim: its program solved from a point, and how far its value is proved.

use crate::plan::{Aim, AimResult};

use super::aims::objective;
use super::board::Board;
use super::engine::best;
use super::program::{Program, value};
use super::solver::{Deadline, Objective, Solved, Unsolved, relaxed_bound};

/// Solves for one aim from a point.
pub fn solve_for(
    board: &mut Board<'_>,
    aim: Aim,
    values: &mut Vec<f64>,
    deadline: &Deadline,
) -> Result<AimResult, Unsolved> {
    let objective = objective(aim, &board.setting());
    let solved = best(board, (&objective, aim.is_whole()), Some(values), deadline)?;
    let result = result_of(aim, &objective, &board.program, &solved, deadline);
    *values = solved.values;
    Ok(result)
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
        program.greatest(&objective.terms)
    } else {
        0.0
    };
    let bound = relaxed_bound(program, objective, limit).unwrap_or(trivial);
    let bound = match (aim.is_whole(), objective.maximise) {
        (true, true) => (bound + 1e-6).floor(),
        // Never a negative nought.
        (true, false) => (bound - 1e-6).ceil() + 0.0,
        (false, _) => bound,
    };
    AimResult {
        aim,
        value: reached,
        bound,
    }
}
