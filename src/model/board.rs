//! A garden's program under work: candidates, their columns, and the rows so far.

use crate::candidates::{Candidate, Candidates};
use crate::garden::Garden;
use crate::plan::{Aim, AimResult};

use super::aims::{concession, hold, objective};
use super::columns::Columns;
use super::forbidden::{Reached, forbid};
use super::layout::Chosen;
use super::program::{Program, Section};
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
    /// Sets of plantings that cannot be laid out together, each with its fewest blocks.
    pub forbidden: Vec<Vec<Candidate>>,
    /// Columns that tell of plantings in these sets.
    pub reached: Vec<Reached>,
    /// The blocks that each candidate has at least where it is made, under what is held.
    pub fewest: Vec<u32>,
    /// Points that are known beforehand: their plantings can be laid out.
    pub known: Vec<Vec<Chosen>>,
    /// True if only years are asked for and nothing is held but years: more than the least amount is of no use.
    pub only_years: bool,
    /// Terms of rows that searches have looked at on it.
    pub steps: u64,
}

impl<'a> Board<'a> {
    /// The program of all rules.
    #[must_use]
    pub fn new(garden: &'a Garden, candidates: Candidates, places: Places) -> Self {
        let mut program = Program::default();
        let mut columns = Columns::add(&mut program, garden, &candidates);
        let setting = Setting {
            garden,
            candidates: &candidates,
            columns: &columns,
        };
        rules::add_rows(&mut program, &setting);
        if places == Places::Named {
            columns.on_plot = rules::name_plots(&mut program, &setting);
        }
        let fewest = candidates.all.iter().map(|c| c.amounts.blocks.0);
        Self {
            fewest: fewest.collect(),
            garden,
            candidates,
            columns,
            program,
            places,
            forbidden: Vec::new(),
            reached: Vec::new(),
            known: Vec::new(),
            only_years: false,
            steps: 0,
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

    /// From now on a set of plantings that cannot be laid out is not made.
    pub fn forbid(&mut self, set: Vec<Candidate>) {
        self.program.begin(Section::Forbidden);
        let reached = forbid(
            &mut self.program,
            self.garden,
            (&self.candidates, &self.columns),
            &self.fewest,
            &set,
        );
        self.reached.extend(reached);
        self.forbidden.push(set);
    }

    /// From now on every ingredient is in the pot.
    pub fn all_in_the_pot(&mut self) {
        for col in &self.columns.in_pot {
            self.program.raise(*col, 1.0);
        }
    }

    /// From now on every ingredient has at least a share of its target in a poor year.
    pub fn hold_share(&mut self, share: f64) {
        let Self {
            garden,
            candidates,
            columns,
            program,
            ..
        } = self;
        program.begin(Section::Held(Aim::LeastGrownShare));
        self.fewest = at_least(
            program,
            &Setting {
                garden,
                candidates,
                columns,
            },
            share,
        );
    }

    /// From now on an aim keeps the value that it has reached, less what it may give back.
    pub fn hold(&mut self, result: &AimResult, concession_years: u32) {
        if result.aim == Aim::LeastGrownShare {
            self.hold_share(result.value);
            return;
        }
        let objective = objective(result.aim, &self.setting());
        let concession = concession(self.garden, result, concession_years);
        self.program.begin(Section::Held(result.aim));
        hold(
            &mut self.program,
            result.aim,
            objective,
            result.value,
            concession,
        );
    }
}
