//! The mixed-integer program: which plantings, how much of each, in which beds. The aims are
//! followed in order; what it returns is plain data that the checker has yet to see.

mod aims;
mod columns;
mod decode;
mod layout;
mod program;
mod reasons;
mod rules;
mod solver;
mod stages;
mod strips;

use std::time::Duration;

use crate::candidates::Candidates;
use crate::garden::Garden;
use crate::plan::Plan;

use columns::Columns;
use layout::{Chosen, lay_out};
use program::Program;
use solver::{Deadline, Unsolved};
use stages::{in_the_pot, later_aims};

pub use reasons::{Impossible, LeftOut, Pressure, Why};

/// What may be chosen for a solve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// After this time the best plan so far is given, with its bounds.
    pub time_limit: Duration,
    /// Weather years that each aim about years may give back to later aims.
    pub concession_years: u32,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            time_limit: Duration::from_secs(10),
            concession_years: 1,
        }
    }
}

/// What came of a solve.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// A plan; its aims tell what is proved.
    Planned(Plan),
    /// Not every ingredient can be in the pot.
    Impossible(Impossible),
    /// No plan was found in the time allowed.
    OutOfTime,
    /// The solver failed; its words.
    Failed(String),
}

/// Decides a garden's plan.
#[must_use]
pub fn solve(garden: &Garden, options: &Options) -> Outcome {
    let deadline = Deadline::after(options.time_limit);
    let candidates = Candidates::enumerate(garden).without_needless(garden);
    solve_until(garden, &candidates, options, &deadline)
}

/// Decides a garden's plan among given candidates.
#[must_use]
pub fn solve_among(garden: &Garden, candidates: &Candidates, options: &Options) -> Outcome {
    let deadline = Deadline::after(options.time_limit);
    solve_until(garden, candidates, options, &deadline)
}

fn solve_until(
    garden: &Garden,
    candidates: &Candidates,
    options: &Options,
    deadline: &Deadline,
) -> Outcome {
    let places = if candidates.plots.len() > crate::candidates::MOST_PLOTS {
        Places::Named
    } else {
        Places::Projected
    };
    match decide(garden, candidates, options, deadline, places) {
        Ok(outcome) => outcome,
        Err(Unsolved::Failed(words)) => Outcome::Failed(words),
        Err(Unsolved::Infeasible) => Outcome::Failed("the rows contradict each other".into()),
        Err(Unsolved::OutOfTime) => Outcome::OutOfTime,
    }
}

/// How beds stand in the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Places {
    /// By sets of plots: fewer columns; a layout is sought after the solve.
    Projected,
    /// Plot by plot, where no layout was found for the projected form.
    Named,
}

fn decide(
    garden: &Garden,
    candidates: &Candidates,
    options: &Options,
    deadline: &Deadline,
    places: Places,
) -> Result<Outcome, Unsolved> {
    let mut program = Program::default();
    let columns = Columns::add(&mut program, garden, candidates);
    let setting = rules::Setting {
        garden,
        candidates,
        columns: &columns,
    };
    rules::add_rows(&mut program, &setting);
    if places == Places::Named {
        rules::name_plots(&mut program, &setting);
    }
    let has_layout = |values: &[f64]| {
        let chosen = chosen(candidates, &columns, values);
        lay_out(garden, candidates, &chosen, deadline).is_some()
    };
    let first = in_the_pot(&program, garden, candidates, &columns, deadline)?;
    if first
        .aims
        .iter()
        .any(|a| a.value < garden.ingredients.len() as f64)
    {
        // Sets of plots only relax the beds: what they promise must really have a place.
        if places == Places::Projected && !has_layout(&first.values) {
            return decide(garden, candidates, options, deadline, Places::Named);
        }
        return Ok(Outcome::Impossible(reasons::impossible(
            garden, candidates, &columns, &first,
        )));
    }
    for col in &columns.in_pot {
        program.raise(*col, 1.0);
    }
    let staged = later_aims(
        &mut program,
        garden,
        candidates,
        &columns,
        first,
        options.concession_years,
        deadline,
    )?;
    // The final plan need not reach what a conceded aim reached; some other plan must.
    if places == Places::Projected && !staged.conceded.iter().all(|v| has_layout(v)) {
        return decide(garden, candidates, options, deadline, Places::Named);
    }
    let chosen = chosen(candidates, &columns, &staged.values);
    match lay_out(garden, candidates, &chosen, deadline) {
        Some(parts) => {
            let strips = strips::places(garden, candidates, &chosen, &parts);
            Ok(Outcome::Planned(decode::plan(
                garden,
                candidates,
                &chosen,
                strips,
                staged.aims,
            )))
        }
        None if places == Places::Projected => {
            decide(garden, candidates, options, deadline, Places::Named)
        }
        None => Err(Unsolved::OutOfTime),
    }
}

/// The plantings that are made, by ingredient and first day.
fn chosen(candidates: &Candidates, columns: &Columns, values: &[f64]) -> Vec<Chosen> {
    let mut chosen: Vec<Chosen> = (0..candidates.all.len())
        .filter(|k| values[columns.made[*k].0] > 0.5)
        .map(|candidate| Chosen {
            candidate,
            blocks: match columns.blocks[candidate] {
                Some(col) => values[col.0] as u32,
                None => candidates.all[candidate].amounts.blocks.0,
            },
        })
        .collect();
    chosen.sort_by_key(|c| {
        let candidate = &candidates.all[c.candidate];
        (candidate.ingredient, candidate.bed_weeks, c.candidate)
    });
    chosen
}
