//! The engines behind one aim: first the search over groups, which is exact and mostly soon done; then,
//! for what it leaves open, the solver. Both are limited by what they look at, not by the clock, so that
//! a busy machine finds the same plan; the deadline is the last resort.

use super::board::{Board, Places};
use super::point::settle;
use super::program::value;
use super::search::{Goal, Limit, Searched, search};
use super::solver::{Deadline, Objective, Solved, Unsolved, scale, solve};

/// Terms of rows that one search looks at, about a second's worth. What was ever proved of the scenarios,
/// with two sowings and open grades, took less than a fifth of it.
const MOST_STEPS: u64 = 400_000_000;
/// The same of all searches for one plan; each has no more than half of what is left.
const MOST_IN_ALL: u64 = 2_000_000_000;
/// Programs with more terms than this are left as the search leaves them: with larger ones the solver
/// is busy for long with its first points.
const MOST_TERMS: usize = 100_000;

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
    let terms = board.program.rows().iter().map(|row| row.terms.len());
    if board.places == Places::Projected && terms.sum::<usize>() > MOST_TERMS {
        return start.map(unproved).ok_or(Unsolved::OutOfTime);
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

/// How long a board is searched; `None` if its plots are named.
fn steps(board: &Board<'_>) -> Option<u64> {
    let left = MOST_IN_ALL.saturating_sub(board.steps);
    (board.places == Places::Projected).then_some(MOST_STEPS.min(left / 2))
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
