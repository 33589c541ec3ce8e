//! The program of an aim as it was last solved, for solvers outside: with names that a person
//! can read.

use std::collections::BTreeSet;

use crate::candidates::Candidate;
use crate::garden::BedAt;
use crate::plan::AimResult;

use super::aims::objective;
use super::board::Board;
use super::names;
use super::program::{Program, Terms};

/// The program of an aim.
#[derive(Debug, Clone, PartialEq)]
pub struct AimProgram {
    /// The aim, with the value and the bound that were found.
    pub result: AimResult,
    /// What is made as great or as small as can be.
    pub objective: Terms,
    /// Columns and rows; earlier aims are held by rows or bounds.
    pub program: Program,
    /// The name of each column, each only once.
    pub column_names: Vec<String>,
    /// The name of each row, each only once; it begins with what the row is there for.
    pub row_names: Vec<String>,
    /// The plantings that may be made.
    pub plantings: Vec<NamedPlanting>,
    /// Terms of rows that the search has looked at so far, for this aim and those before it: the work that it was, alike on every machine.
    pub steps: u64,
}

/// A planting that may be made.
#[derive(Debug, Clone, PartialEq)]
pub struct NamedPlanting {
    /// Its name, a part of the names of its columns.
    pub name: String,
    /// The planting.
    pub planting: Candidate,
    /// The beds on which it may stand, in order; none for what stands already.
    pub beds: BTreeSet<BedAt>,
}

impl AimProgram {
    /// The program of a board, with the result of the aim that is followed on it.
    #[must_use]
    pub fn of(board: &Board<'_>, result: &AimResult) -> Self {
        let candidates = &board.candidates;
        let plantings = names::plantings(board);
        Self {
            result: *result,
            objective: objective(result.aim, &board.setting()).terms,
            program: board.program.clone(),
            column_names: names::columns(board, &plantings),
            row_names: names::rows(&board.program),
            steps: board.steps,
            plantings: plantings
                .into_iter()
                .zip(&candidates.all)
                .map(|(name, planting)| NamedPlanting {
                    name,
                    planting: planting.clone(),
                    beds: planting.plots.iter().map(|p| candidates[p].bed).collect(),
                })
                .collect(),
        }
    }
}
