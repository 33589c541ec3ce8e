//! A garden's program under work: candidates, their columns, and the rows so far.

use crate::candidates::Candidates;
use crate::garden::Garden;

use super::columns::Columns;
use super::program::Program;
use super::rules;
use super::setting::Setting;

/// How beds stand in the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Places {
    /// By sets of plots: fewer columns; a layout is sought after the solve.
    Projected,
    /// Plot by plot, where no layout was found for the projected form.
    Named,
}

/// The program with what its columns mean.
#[derive(Debug, Clone)]
pub struct Board<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// The candidates.
    pub candidates: &'a Candidates,
    /// Their columns.
    pub columns: Columns,
    /// Columns and rows.
    pub program: Program,
}

impl<'a> Board<'a> {
    /// The program of all rules.
    #[must_use]
    pub fn new(garden: &'a Garden, candidates: &'a Candidates, places: Places) -> Self {
        let mut program = Program::default();
        let columns = Columns::add(&mut program, garden, candidates);
        let setting = Setting {
            garden,
            candidates,
            columns: &columns,
        };
        rules::add_rows(&mut program, &setting);
        if places == Places::Named {
            rules::name_plots(&mut program, &setting);
        }
        Self {
            garden,
            candidates,
            columns,
            program,
        }
    }

    /// What rules and aims look at.
    #[must_use]
    pub fn setting(&self) -> Setting<'_> {
        Setting {
            garden: self.garden,
            candidates: self.candidates,
            columns: &self.columns,
        }
    }

    /// From now on every ingredient is in the pot.
    pub fn all_in_the_pot(&mut self) {
        for col in &self.columns.in_pot {
            self.program.raise(*col, 1.0);
        }
    }
}
