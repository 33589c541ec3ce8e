//! The only door to the solver: a program and an objective in, values out.

use std::mem::size_of;
use std::time::Duration;

use good_lp::{Expression, SolverModel, Variable, variable, variables};
use microlp::{Error, OptimizationDirection, Problem, SolveOptions, TerminationReason};

pub use crate::deadline::Deadline;

use super::program::{Program, Terms, scaled, value};

/// What is made as great or as small as can be.
#[derive(Debug, Clone, PartialEq)]
pub struct Objective {
    /// The weighted sum.
    pub terms: Terms,
    /// True to make it great.
    pub maximise: bool,
}

impl Objective {
    /// No objective: any point will do.
    #[must_use]
    pub fn none() -> Self {
        Self {
            terms: Vec::new(),
            maximise: false,
        }
    }
}

/// A feasible point of a program.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    /// One value per column; whole columns are rounded.
    pub values: Vec<f64>,
    /// True if no point is better.
    pub proved: bool,
}

/// Why there is no point.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unsolved {
    /// No point keeps all rows.
    Infeasible,
    /// None was found in time.
    OutOfTime,
    /// The solver gave up; its words.
    Failed(String),
}

/// The search keeps every point of choice that is still open, so one search looks at no more of
/// them than would fill so many bytes, if none were ever closed. Counted, not timed: the same
/// program ends at the same point on every machine.
const MOST_BYTES: usize = 320 << 20;

/// And at no more than would be so many terms of rows, if each were looked at once at every point.
const MOST_WORK: usize = 500_000_000;

/// Solves a program for an objective, from a feasible point if one is known. Where a search ends
/// at its ceiling with a better point, it is begun anew from that point, which leaves it less to
/// look at; where it ends without one, it is tried with the rows turned, and then given up.
///
/// # Errors
/// No point, none in time and within the ceiling, or a failure of the solver.
pub fn solve(
    program: &Program,
    objective: &Objective,
    start: Option<&[f64]>,
    limit: Duration,
) -> Result<Solved, Unsolved> {
    let deadline = Deadline::of_a_part(limit);
    let mut best: Option<Vec<f64>> = None;
    let mut order = RowOrder::AsGiven;
    loop {
        let from = best.as_deref().or(start);
        let ended = run(program, objective, from, deadline.left(), true, order);
        match ended {
            Ok(Ended { solved, at_ceiling }) => {
                // A search that ended at its ceiling without gain would end there again: it gets one other way.
                let better = from.is_none_or(|known| gains(objective, known, &solved.values));
                if solved.proved || !at_ceiling || (!better && order == RowOrder::Turned) {
                    return Ok(solved);
                }
                if !better {
                    order = RowOrder::Turned;
                }
                best = Some(solved.values);
            }
            Err(Unsolved::Failed(_) | Unsolved::OutOfTime)
                if order == RowOrder::AsGiven && !deadline.is_over() =>
            {
                order = RowOrder::Turned;
            }
            Err(error) => {
                let values = best.ok_or(error)?;
                let proved = false;
                return Ok(Solved { values, proved });
            }
        }
    }
}

/// True if the second point is better than the first.
fn gains(objective: &Objective, known: &[f64], found: &[f64]) -> bool {
    let gain = value(&objective.terms, found) - value(&objective.terms, known);
    let gain = if objective.maximise { gain } else { -gain };
    gain > 1e-9
}

/// The objective with its greatest value near 1, as the solver likes it.
#[must_use]
pub fn scale(objective: &Objective, program: &Program) -> Objective {
    let greatest = program.greatest(&objective.terms).max(1e-9);
    Objective {
        terms: scaled(objective.terms.clone(), 1.0 / greatest),
        ..objective.clone()
    }
}

/// A bound on the objective: its best value when whole columns may take parts. `None` if there
/// is no time for it.
#[must_use]
pub fn relaxed_bound(program: &Program, objective: &Objective, limit: Duration) -> Option<f64> {
    if limit.is_zero() {
        return None;
    }
    let Ended { solved, .. } =
        run(program, objective, None, limit, false, RowOrder::AsGiven).ok()?;
    solved
        .proved
        .then(|| value(&objective.terms, &solved.values))
}

/// The order in which the solver is given the rows. Very rarely it loses its way in rounding
/// (a "singular matrix"); with the rows turned round it takes another way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum RowOrder {
    AsGiven,
    Turned,
}

/// How a search ended that found a point.
struct Ended {
    solved: Solved,
    /// True if it ended because it had looked at as much as it may.
    at_ceiling: bool,
}

fn run(
    program: &Program,
    objective: &Objective,
    start: Option<&[f64]>,
    limit: Duration,
    whole: bool,
    order: RowOrder,
) -> Result<Ended, Unsolved> {
    if program.columns().iter().any(|c| c.lo > c.hi) {
        return Err(Unsolved::Infeasible);
    }
    let model = model(program, objective, whole, order);
    let mut options = SolveOptions::default();
    options.time_limit = Some(limit);
    options.node_limit = Some(most_nodes(program));
    if let (Some(values), true) = (start, whole) {
        options.warm_start = Some(columns(values.len()).zip(values.iter().copied()).collect());
    }
    let ended = model.as_inner().solve_with(options);
    let solution = ended
        .map_err(unsolved_because)?
        .into_solution()
        .map_err(|_| Unsolved::OutOfTime)?;
    // The solver's values are whole or within bounds only to its own rounding.
    let values = solution
        .iter()
        .zip(program.columns())
        .map(|((_, value), c)| {
            if c.whole && whole {
                value.round()
            } else {
                value.clamp(c.lo, c.hi)
            }
        });
    let reason = solution.termination_reason();
    Ok(Ended {
        solved: Solved {
            values: values.collect(),
            proved: reason == TerminationReason::ProvenOptimal,
        },
        at_ceiling: reason == TerminationReason::NodeLimit,
    })
}

/// The program as the solver takes it.
fn model(
    program: &Program,
    objective: &Objective,
    whole: bool,
    order: RowOrder,
) -> good_lp::solvers::microlp::MicroLpProblem {
    let mut defined = variables!();
    let vars: Vec<Variable> = program
        .columns()
        .iter()
        .map(|c| {
            let var = variable().clamp(c.lo, c.hi);
            defined.add(if c.whole && whole { var.integer() } else { var })
        })
        .collect();
    let sum = |terms: &Terms| -> Expression {
        terms
            .iter()
            .map(|(col, weight)| *weight * vars[col.0])
            .sum()
    };
    let aim = sum(&objective.terms);
    let unsolved = if objective.maximise {
        defined.maximise(aim)
    } else {
        defined.minimise(aim)
    };
    let mut model = unsolved.using(good_lp::microlp);
    let mut rows: Vec<_> = program.rows().iter().collect();
    if order == RowOrder::Turned {
        rows.reverse();
    }
    for row in rows {
        model.add_constraint(sum(&row.terms).leq(row.rhs));
    }
    model
}

/// The solver's names of the first columns of any program: it counts them.
fn columns(count: usize) -> impl Iterator<Item = microlp::Variable> {
    let mut counted = Problem::new(OptimizationDirection::Minimize);
    (0..count).map(move |_| counted.add_var(0.0, (0.0, 0.0)))
}

/// How many points of choice one search of a program may look at.
fn most_nodes(program: &Program) -> u64 {
    let (columns, rows) = (program.columns().len(), program.rows().len());
    // A bound changed for every column, in a list with room for as many again, and a sign of
    // where each column and row stands.
    let change = 2 * size_of::<(usize, f64, f64)>();
    let bytes = columns * (change + 1) + rows;
    let terms: usize = program.rows().iter().map(|row| row.terms.len()).sum();
    let fit = (MOST_BYTES / bytes.max(1)).min(MOST_WORK / terms.max(1));
    u64::try_from(fit).unwrap_or(u64::MAX).max(1)
}

/// The solver's errors as ours.
fn unsolved_because(error: Error) -> Unsolved {
    match error {
        Error::Infeasible => Unsolved::Infeasible,
        other => Unsolved::Failed(other.to_string()),
    }
}
