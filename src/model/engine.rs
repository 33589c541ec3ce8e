//! The engines behind one aim: first the search over groups, which is exact and soon done where
//! each ingredient is sown once; then, for what it leaves open, the solver.

use super::board::{Board, Places};
use super::point::settle;
use super::program::value;
use super::search::{Goal, Limit, Searched, search};
use super::solver::{Deadline, Objective, Solved, Unsolved, scale, solve};

/// Terms that the search looks at where it is the engine, some seconds' worth.
const MOST_STEPS: u64 = 1_500_000_000;
/// Terms that it looks at where several sowings add up: these are no groups.
const FEWER_STEPS: u64 = 60_000_000;

/// The best point of a board that is at least as good as a known one. What is found not to go
/// together is forbidden on the board from then on, and a known point is fitted to that.
///
/// # Errors
/// No point, none in time, or a failure of the solver.
pub fn best(
    board: &mut Board<'_>,
    goal: (&Objective, bool),
    known: Option<&mut Vec<f64>>,
    deadline: &Deadline,
) -> Result<Solved, Unsolved> {
    let (objective, whole) = goal;
    let mut start: Option<Vec<f64>> = known.as_deref().cloned();
    if let Some(steps) = steps(board).filter(|_| !deadline.is_over()) {
        let goal = Goal {
            objective,
            whole,
            better_than: start.as_deref().map(|v| value(&objective.terms, v)),
        };
        let limit = Limit {
            steps,
            deadline: *deadline,
        };
        let Searched {
            best,
            complete,
            learned,
            steps,
        } = search(board, &goal, &limit);
        board.steps += steps;
        for set in learned {
            board.forbid(set);
        }
        start = best.or(start);
        if let Some(point) = known {
            fit_to(board, point);
        }
        if let Some(point) = &mut start {
            fit_to(board, point);
        }
        if complete {
            let values = start.ok_or(Unsolved::Infeasible)?;
            return Ok(Solved {
                values,
                proved: true,
            });
        }
    }
    let scaled = scale(objective, &board.program);
    match solve(&board.program, &scaled, start.as_deref(), deadline.left()) {
        Err(Unsolved::OutOfTime) => start.map(unproved).ok_or(Unsolved::OutOfTime),
        Ok(solved) => Ok(match start {
            Some(start) if !solved.proved && is_better(objective, &start, &solved.values) => {
                unproved(start)
            }
            _ => solved,
        }),
        failed => failed,
    }
}

/// How long a board is searched; `None` if its plots are named, or if grades are to be matched with
/// ingredients, at which the solver is much better.
fn steps(board: &Board<'_>) -> Option<u64> {
    if board.places == Places::Named || board.garden.has_open_grades() {
        return None;
    }
    let mut ingredients = board.garden.ingredients.iter();
    match ingredients.all(|i| i.most_plantings() == 1) {
        true => Some(MOST_STEPS),
        false => Some(FEWER_STEPS),
    }
}

/// Gives a point the columns that were added since it was made.
fn fit_to(board: &Board<'_>, point: &mut Vec<f64>) {
    point.resize(board.program.columns().len(), 0.0);
    settle(board, point);
}

fn unproved(values: Vec<f64>) -> Solved {
    Solved {
        values,
        proved: false,
    }
}

/// True if a point is better than another.
fn is_better(objective: &Objective, point: &[f64], other: &[f64]) -> bool {
    let gain = value(&objective.terms, point) - value(&objective.terms, other);
    if objective.maximise {
        gain > 1e-9
    } else {
        gain < -1e-9
    }
}
