//! The only door to the solver: a program and an objective in, values out.

use std::time::{Duration, Instant};

use good_lp::solvers::{Solution, SolutionStatus};
use good_lp::{
    Expression, ResolutionError, SolverModel, Variable, WithInitialSolution, WithTimeLimit,
    microlp, variable, variables,
};

use super::program::{Column, Program, Terms, scaled};

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

/// When to stop.
#[derive(Debug, Clone, Copy)]
pub struct Deadline(Instant);

/// When time is up, all bounds together still have so long: a plan without a bound tells less.
const FOR_BOUNDS: Duration = Duration::from_secs(1);

impl Deadline {
    /// A deadline some time from now.
    #[must_use]
    pub fn after(limit: Duration) -> Self {
        Self(Instant::now() + limit)
    }

    /// The time left.
    #[must_use]
    pub fn left(&self) -> Duration {
        self.0.saturating_duration_since(Instant::now())
    }

    /// True if no time is left.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.left().is_zero()
    }

    /// The time left for bounds.
    #[must_use]
    pub fn left_for_bounds(&self) -> Duration {
        (self.0 + FOR_BOUNDS).saturating_duration_since(Instant::now())
    }
}

/// Solves a program for an objective, from a feasible point if one is known.
///
/// # Errors
/// No point, none in time, or a failure of the solver.
pub fn solve(
    program: &Program,
    objective: &Objective,
    start: Option<&[f64]>,
    limit: Duration,
) -> Result<Solved, Unsolved> {
    let order = RowOrder::AsGiven;
    match run(program, objective, start, limit, true, order) {
        Err(Unsolved::Failed(_)) => run(program, objective, start, limit, true, RowOrder::Turned),
        other => other,
    }
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
    let solved = run(program, objective, None, limit, false, RowOrder::AsGiven).ok()?;
    if !solved.proved {
        return None;
    }
    Some(super::program::value(&objective.terms, &solved.values))
}

/// The order in which the solver is given the rows. Very rarely it loses its way in rounding
/// (a "singular matrix"); with the rows turned round it takes another way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum RowOrder {
    AsGiven,
    Turned,
}

fn run(
    program: &Program,
    objective: &Objective,
    start: Option<&[f64]>,
    limit: Duration,
    whole: bool,
    order: RowOrder,
) -> Result<Solved, Unsolved> {
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
    let mut model = unsolved.using(microlp).with_time_limit(limit.as_secs_f64());
    let mut rows: Vec<_> = program.rows().iter().collect();
    if order == RowOrder::Turned {
        rows.reverse();
    }
    for row in rows {
        model.add_constraint(sum(&row.terms).leq(row.rhs));
    }
    if let (Some(values), true) = (start, whole) {
        model = model.with_initial_solution(vars.iter().copied().zip(values.iter().copied()));
    }
    let solution = model.solve().map_err(unsolved_because)?;
    // The solver's values are whole or within bounds only to its own rounding.
    let value = |(var, c): (&Variable, &Column)| {
        let value = solution.value(*var);
        if c.whole && whole {
            value.round()
        } else {
            value.clamp(c.lo, c.hi)
        }
    };
    Ok(Solved {
        values: vars.iter().zip(program.columns()).map(value).collect(),
        proved: matches!(solution.status(), SolutionStatus::Optimal),
    })
}

/// The solver's errors as ours. A time limit without a point is its `Other`.
fn unsolved_because(error: ResolutionError) -> Unsolved {
    match error {
        ResolutionError::Infeasible => Unsolved::Infeasible,
        ResolutionError::Other(_) => Unsolved::OutOfTime,
        other => Unsolved::Failed(other.to_string()),
    }
}
