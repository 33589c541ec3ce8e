//! A garden's program under work: candidates, their columns, and the rows so far.

use crate::candidates::Candidates;
use crate::garden::Garden;
use crate::plan::{Aim, AimResult};

use super::aims::{concession, hold, objective};
use super::columns::Columns;
use super::program::Program;
use super::rules;
use super::setting::Setting;
use super::share_floor::at_least;

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
    pub candidates: Candidates,
    /// Their columns.
    pub columns: Columns,
    /// Columns and rows.
    pub program: Program,
    /// How beds stand in the program.
    pub places: Places,
}

impl<'a> Board<'a> {
    /// The program of all rules.
    #[must_use]
    pub fn new(garden: &'a Garden, candidates: Candidates, places: Places) -> Self {
        let mut program = Program::default();
        let columns = Columns::add(&mut program, garden, &candidates);
        let setting = Setting {
            garden,
            candidates: &candidates,
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
            places,
        }
    }

    /// What rules and aims look at.
    #[must_use]
    pub fn setting(&self) -> Setting<'_> {
        Setting {
            garden: self.garden,
            candidates: &self.candidates,
            columns: &self.columns,
        }
    }

    /// From now on every ingredient is in the pot.
    pub fn all_in_the_pot(&mut self) {
        for col in &self.columns.in_pot {
            self.program.raise(*col, 1.0);
        }
    }

    /// From now on an aim keeps the value that it has reached, less what it may give back.
    pub fn hold(&mut self, result: &AimResult, concession_years: u32) {
        let setting = Setting {
            garden: self.garden,
            candidates: &self.candidates,
            columns: &self.columns,
        };
        if result.aim == Aim::LeastGrownShare {
            return at_least(&mut self.program, &setting, result.value);
        }
        let objective = objective(result.aim, &setting);
        let concession = concession(result.aim, concession_years);
        hold(
            &mut self.program,
            result.aim,
            objective,
            result.value,
            concession,
        );
    }
}
