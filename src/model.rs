//! The mixed-integer program: which plantings, how much of each, in which beds. The aims are
//! followed in order; what it returns is plain data that the checker has yet to see.

mod aim_program;
mod aims;
mod board;
mod columns;
mod decode;
mod fit;
mod forbidden;
mod grown_share;
mod layout;
mod names;
mod open_grades;
mod point;
mod program;
mod reasons;
mod rules;
mod setting;
mod share_floor;
mod solver;
mod stages;
mod still_possible;
mod strips;

use std::time::Duration;

use crate::candidates::{Candidates, Scope};
use crate::garden::Garden;
use crate::plan::{Aim, AimResult, Plan};

use board::{Board, Places};
use fit::layout;
use point::chosen;
use solver::{Deadline, Unsolved};
use stages::{ABOUT_AMOUNTS, ABOUT_YEARS, Pace, SMALL, Staged, carried};
use still_possible::still_possible;

pub use aim_program::{AimProgram, NamedPlanting};
pub use program::{Col, Column, Program, Row, Section};
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

/// What came of a solve, with the program of every aim that was followed.
#[derive(Debug, Clone, PartialEq)]
pub struct Recorded {
    /// What came of it.
    pub outcome: Outcome,
    /// The programs, in the order of the aims.
    pub programs: Vec<AimProgram>,
}

/// Decides a garden's plan.
#[must_use]
pub fn solve(garden: &Garden, options: &Options) -> Outcome {
    decide(garden, options, false).outcome
}

/// Decides a garden's plan and keeps the program of every aim.
#[must_use]
pub fn solve_and_record(garden: &Garden, options: &Options) -> Recorded {
    decide(garden, options, true)
}

fn decide(garden: &Garden, options: &Options, record: bool) -> Recorded {
    let outcome = match Decision::new(garden, options, record).decide() {
        Ok(recorded) => return recorded,
        Err(Unsolved::Failed(words)) => Outcome::Failed(words),
        Err(Unsolved::Infeasible) => Outcome::Failed("the rows contradict each other".into()),
        Err(Unsolved::OutOfTime) => Outcome::OutOfTime,
    };
    Recorded {
        outcome,
        programs: Vec::new(),
    }
}

/// Whether every ingredient can be in the pot at once.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Possible {
    /// It can.
    Yes,
    /// It is proved that it cannot.
    No,
    /// Neither is known in the time allowed.
    Unknown,
}

/// Tells whether every ingredient of a garden can be in the pot at once, without looking how
/// well.
#[must_use]
pub fn possible(garden: &Garden, options: &Options) -> Possible {
    let decision = Decision::new(garden, options, false);
    decision.possible().unwrap_or(Possible::Unknown)
}

/// A garden with all its candidates, and how long to think about them.
struct Decision<'a> {
    garden: &'a Garden,
    all: Candidates,
    pace: Pace,
}

/// Programs with more plots of candidates than this are not solved plot by plot.
const MOST_NAMED: usize = 3_000;

/// With more candidates than this and open grades, the aims about years are first followed
/// with the most promising ones, and the later aims with the grades chosen so far. Below, a
/// plan took some seconds at the most where it was measured.
const MOST_AT_FIRST: usize = 3_000;
const MOST_LATER: usize = 1_000;

/// A solved program with its point.
type Solution<'a> = (Board<'a>, Staged);

impl<'a> Decision<'a> {
    fn new(garden: &'a Garden, options: &Options, record: bool) -> Self {
        let all = Candidates::enumerate(garden);
        let pace = Pace {
            concession_years: options.concession_years,
            deadline: Deadline::after(options.time_limit),
            record,
        };
        Self { garden, all, pace }
    }

    /// The candidates that matter to years: with the least amounts, none of them needless.
    fn about_years(&self) -> Candidates {
        self.all
            .with_least_amounts(self.garden)
            .without_needless(self.garden, Scope::Harvest)
    }

    /// Solves for the first aim; where grades are open and there are many candidates, with few
    /// of them first.
    fn possible(&self) -> Result<Possible, Unsolved> {
        let all = self.about_years();
        if self.garden.has_open_grades() && all.all.len() > MOST_AT_FIRST {
            let few = open_grades::promising(&all);
            if let Ok(Possible::Yes) = self.possible_with(&few) {
                return Ok(Possible::Yes);
            }
        }
        self.possible_with(&all)
    }

    fn possible_with(&self, candidates: &Candidates) -> Result<Possible, Unsolved> {
        let first = |board: &mut Board<'a>| stages::in_the_pot(board, &self.pace);
        let (_, staged) = self.laid_out(candidates, first)?;
        let wanted = self.garden.ingredients.len() as f64;
        let is = |edge: fn(&AimResult) -> f64| staged.aims.iter().all(|a| edge(a) >= wanted);
        Ok(match (is(|first| first.value), is(|first| first.bound)) {
            (true, _) if staged.laid_out => Possible::Yes,
            (_, false) => Possible::No,
            _ => Possible::Unknown,
        })
    }

    /// Decides in three steps: which plantings give the best years, with the least amounts;
    /// among those that keep these years, how much of each; and among those that keep both,
    /// the small aims. Each step looks only at candidates that differ in what it asks for.
    /// Where grades are open and there are too many candidates for a step, it is done with the
    /// grades that few of them, or the step before, have chosen.
    fn decide(&self) -> Result<Recorded, Unsolved> {
        let garden = self.garden;
        let few = self.about_years();
        let years = |board: &mut Board<'a>| stages::years(board, &self.pace);
        if garden.has_open_grades() && few.all.len() > MOST_AT_FIRST {
            let solution = self.laid_out(&open_grades::promising(&few), years);
            if let Some(planned) = solution.ok().and_then(|s| self.with_grades_of(&s, &[])) {
                return Ok(planned);
            }
        }
        let (board, mut staged) = self.laid_out(&few, years)?;
        let mut programs = std::mem::take(&mut staged.programs);
        if staged.aims.len() < ABOUT_YEARS.len() {
            let reasons = reasons::impossible(garden, &self.all, &board.columns, &staged);
            return Ok(Recorded {
                outcome: Outcome::Impossible(reasons),
                programs,
            });
        }
        let mut best = (board, staged);
        let known = best.1.aims.clone();
        if garden.has_open_grades()
            && self.later(&known, Scope::Harvest).all.len() > MOST_LATER
            && let Some(planned) = self.with_grades_of(&best, &known)
        {
            return Ok(planned);
        }
        for (scope, aims) in [
            (Scope::Harvest, &ABOUT_AMOUNTS[..]),
            (Scope::Everything, &SMALL),
        ] {
            match self.go_on(&best, scope, aims) {
                Ok((board, mut staged)) => {
                    programs.append(&mut staged.programs);
                    best = (board, staged);
                }
                Err(Unsolved::OutOfTime) => break,
                Err(failed) => return Err(failed),
            }
        }
        let (board, staged) = best;
        let staged = stages::unfinished(&board, staged);
        let plan = self.plan(&board, staged);
        Ok(Recorded {
            outcome: plan.map_or(Outcome::OutOfTime, Outcome::Planned),
            programs,
        })
    }

    /// A plan with the grades of a solution of the aims about years, if it finds one; `known`
    /// are the aims that were followed with all candidates.
    fn with_grades_of(
        &self,
        (board, staged): &Solution<'a>,
        known: &[AimResult],
    ) -> Option<Recorded> {
        if staged.aims.len() < ABOUT_YEARS.len() {
            return None;
        }
        let grades = open_grades::chosen(board, &staged.values);
        let garden = self.garden.grown_by(&grades);
        let fixed = Decision {
            garden: &garden,
            all: self.all.only(|c| grades.contains(&(c.ingredient, c.grade))),
            pace: self.pace,
        };
        let mut recorded = fixed.decide().ok()?;
        let Outcome::Planned(plan) = &mut recorded.outcome else {
            return None;
        };
        open_grades::widen(self.garden, &self.all, known, &mut plan.aims);
        Some(recorded)
    }

    /// The candidates that matter after the aims so far.
    fn later(&self, aims: &[AimResult], scope: Scope) -> Candidates {
        let (garden, pace) = (self.garden, &self.pace);
        still_possible(garden, &self.all, aims, pace.concession_years)
            .without_needless(garden, scope)
    }

    /// Follows more aims from a solution of the earlier ones.
    fn go_on(
        &self,
        (board, staged): &Solution<'a>,
        scope: Scope,
        aims: &[Aim],
    ) -> Result<Solution<'a>, Unsolved> {
        let mut few = self.later(&staged.aims, scope);
        let made = chosen(&board.candidates, &board.columns, &staged.values);
        for c in &made {
            let planting = &board.candidates.all[c.candidate];
            if !few.all.iter().any(|other| planting.is_same_planting(other)) {
                let same = self
                    .all
                    .all
                    .iter()
                    .find(|other| planting.is_same_planting(other));
                few.all.extend(same.cloned());
            }
        }
        let start = carried(&board.candidates, &made, &few);
        self.laid_out(&few, |board| {
            let start = (board.places == Places::Projected).then_some(&start[..]);
            let earlier = &staged.aims;
            stages::later(board, start, earlier, aims, &self.pace)
        })
    }

    /// Solves over sets of plots; where an aim then has a bound that may only be due to that,
    /// plot by plot, unless that program is too large to be of use.
    fn laid_out(
        &self,
        candidates: &Candidates,
        solve: impl Fn(&mut Board<'a>) -> Result<Staged, Unsolved>,
    ) -> Result<Solution<'a>, Unsolved> {
        let mut board = Board::new(self.garden, candidates.clone(), Places::Projected);
        let relaxed = match solve(&mut board) {
            Ok(staged) if staged.laid_out => return Ok((board, staged)),
            // What cannot be laid out was forbidden until nothing was left.
            Err(Unsolved::Infeasible) => None,
            other => Some(other?),
        };
        let named: usize = candidates.all.iter().map(|c| c.plots.iter().count()).sum();
        let relaxed = match relaxed {
            Some(staged) if named > MOST_NAMED => return Ok((board, staged)),
            other => other,
        };
        let mut exact = Board::new(self.garden, candidates.clone(), Places::Named);
        match solve(&mut exact) {
            Ok(staged) => Ok((exact, staged)),
            Err(Unsolved::OutOfTime) => relaxed
                .map(|staged| (board, staged))
                .ok_or(Unsolved::OutOfTime),
            Err(failed) => Err(failed),
        }
    }

    /// The plan of a point, if its plantings can be laid out.
    fn plan(&self, board: &Board<'_>, staged: Staged) -> Option<Plan> {
        let candidates = &board.candidates;
        let found = layout(board, &staged.values, &self.pace.deadline)
            .ok()
            .flatten();
        let (chosen, parts) = found?;
        let strips = strips::places(self.garden, candidates, &chosen, &parts);
        Some(decode::plan(
            self.garden,
            candidates,
            &chosen,
            strips,
            staged.aims,
        ))
    }
}
