//! One aim after the other: solve, hold, go on from the same point.

use crate::plan::{Aim, AimResult};

use super::aims::{concession, hold, objective};
use super::board::Board;
use super::grown_share;
use super::program::{Program, scaled, value};
use super::solver::{Deadline, Objective, Solved, Unsolved, relaxed_bound, solve};

/// The aims that hang on which plantings are made, not on how much of each.
pub const ABOUT_YEARS: [Aim; 4] = [
    Aim::InThePot,
    Aim::WorstIngredient,
    Aim::AllIngredients,
    Aim::WholeDish,
];

/// A point and how far each aim so far is reached and proved.
#[derive(Debug, Clone, PartialEq)]
pub struct Staged {
    /// One value per column.
    pub values: Vec<f64>,
    /// Value and bound of each aim.
    pub aims: Vec<AimResult>,
    /// The points that reached the aims about years. Later aims may give some years back, so
    /// the last point need not show that they can be had.
    pub reached: Vec<Vec<f64>>,
}

/// Solves for the aims about years, in order. Stops after the first one if not every
/// ingredient can be in the pot.
///
/// # Errors
/// None found in time, or a failure of the solver.
pub fn years(
    board: &mut Board<'_>,
    concession_years: u32,
    deadline: &Deadline,
) -> Result<Staged, Unsolved> {
    let aim = objective(Aim::InThePot, &board.setting());
    let solved = solve(
        &board.program,
        &scale(&aim, &board.program),
        None,
        deadline.left(),
    )?;
    let first = result_of(Aim::InThePot, &aim, &board.program, &solved, deadline);
    let mut staged = Staged {
        aims: vec![first],
        reached: vec![solved.values.clone()],
        values: solved.values,
    };
    if first.value < board.garden.ingredients.len() as f64 {
        return Ok(staged);
    }
    board.all_in_the_pot();
    for aim in ABOUT_YEARS.into_iter().skip(1) {
        let result = follow(board, aim, &mut staged.values, concession_years, deadline)?;
        staged.aims.push(result);
        staged.reached.push(staged.values.clone());
    }
    Ok(staged)
}

/// Solves for the aims after those about years, which are held at `years`. An aim for which
/// time runs out keeps the point it has, with its bound.
///
/// # Errors
/// Not one point found in time, or a failure of the solver.
pub fn later(
    board: &mut Board<'_>,
    years: &[AimResult],
    concession_years: u32,
    deadline: &Deadline,
) -> Result<Staged, Unsolved> {
    board.all_in_the_pot();
    for result in years.iter().skip(1) {
        let objective = objective(result.aim, &board.setting());
        let concession = concession(result.aim, concession_years);
        hold(
            &mut board.program,
            result.aim,
            objective,
            result.value,
            concession,
        );
    }
    let start = solve(&board.program, &Objective::none(), None, deadline.left())?;
    let mut staged = Staged {
        values: start.values,
        aims: years.to_vec(),
        reached: Vec::new(),
    };
    for aim in Aim::ALL.into_iter().skip(ABOUT_YEARS.len()) {
        let result = match aim {
            Aim::LeastGrownShare => grown_share::raise(board, &mut staged.values, deadline)?,
            _ => follow(board, aim, &mut staged.values, concession_years, deadline)?,
        };
        staged.aims.push(result);
    }
    Ok(staged)
}

/// A point that keeps the aims about years, with the later aims as they happen to be and no
/// better bound than their columns allow.
#[must_use]
pub fn unfinished(board: &Board<'_>, years: Staged) -> Staged {
    let later = Aim::ALL.into_iter().skip(ABOUT_YEARS.len()).map(|aim| {
        let objective = objective(aim, &board.setting());
        let value = value(&objective.terms, &years.values);
        let bound = if objective.maximise {
            greatest(&objective, &board.program)
        } else {
            0.0
        };
        AimResult { aim, value, bound }
    });
    let aims = years.aims.iter().copied().chain(later).collect();
    Staged { aims, ..years }
}

/// Solves for one aim from a point and holds it.
fn follow(
    board: &mut Board<'_>,
    aim: Aim,
    values: &mut Vec<f64>,
    concession_years: u32,
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
    let concession = concession(aim, concession_years);
    hold(&mut board.program, aim, objective, result.value, concession);
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
