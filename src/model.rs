//! The mixed-integer program: which plantings, how much of each, in which beds. The aims are
//! followed in order; what it returns is plain data that the checker has yet to see.

mod aims;
mod board;
mod columns;
mod decode;
mod grown_share;
mod layout;
mod program;
mod reasons;
mod rules;
mod setting;
mod solver;
mod stages;
mod strips;
mod years_bound;

use std::time::Duration;

use crate::candidates::Candidates;
use crate::garden::Garden;
use crate::plan::Plan;

use board::{Board, Places};
use columns::Columns;
use layout::{Chosen, Part, lay_out};
use solver::{Deadline, Unsolved};
use stages::Staged;

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

/// Decides in two steps: first which plantings give the best years, with the least amounts;
/// then, among the plantings that keep those years, how much of each and the smaller aims.
fn decide(
    garden: &Garden,
    candidates: &Candidates,
    options: &Options,
    deadline: &Deadline,
    places: Places,
) -> Result<Outcome, Unsolved> {
    let concession = options.concession_years;
    let least = candidates.with_least_amounts(garden);
    let mut board = Board::new(garden, &least, places);
    let years = stages::years(&mut board, concession, deadline)?;
    // Sets of plots only relax the beds: what they promise must really have a place.
    let has_place = |values: &Vec<f64>| layout(&board, values, deadline).is_some();
    if places == Places::Projected && !years.reached.iter().all(has_place) {
        return decide(garden, candidates, options, deadline, Places::Named);
    }
    if years.aims.len() < stages::ABOUT_YEARS.len() {
        let reasons = reasons::impossible(garden, candidates, &board.columns, &years);
        return Ok(Outcome::Impossible(reasons));
    }
    let possible = years_bound::still_possible(garden, candidates, &years.aims, concession)
        .without_needless(garden);
    let mut later = Board::new(garden, &possible, places);
    let laid_out = match stages::later(&mut later, &years.aims, concession, deadline) {
        Ok(staged) => place(&later, staged, deadline),
        Err(Unsolved::OutOfTime) => place(&board, stages::unfinished(&board, years), deadline),
        Err(failed) => return Err(failed),
    };
    match laid_out {
        Some(plan) => Ok(Outcome::Planned(plan)),
        None if places == Places::Projected => {
            decide(garden, candidates, options, deadline, Places::Named)
        }
        None => Err(Unsolved::OutOfTime),
    }
}

/// The plan of a point, if its plantings can be laid out.
fn place(board: &Board<'_>, staged: Staged, deadline: &Deadline) -> Option<Plan> {
    let Board {
        garden, candidates, ..
    } = board;
    let (chosen, parts) = layout(board, &staged.values, deadline)?;
    let strips = strips::places(garden, candidates, &chosen, &parts);
    Some(decode::plan(
        garden,
        candidates,
        &chosen,
        strips,
        staged.aims,
    ))
}

/// The plantings of a point and the parts of plots on which they stand, if they all fit.
fn layout(
    board: &Board<'_>,
    values: &[f64],
    deadline: &Deadline,
) -> Option<(Vec<Chosen>, Vec<Vec<Part>>)> {
    let Board {
        garden,
        candidates,
        columns,
        ..
    } = board;
    let chosen = chosen(candidates, columns, values);
    let parts = lay_out(garden, candidates, &chosen, deadline)?;
    Some((chosen, parts))
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
