//! The mixed-integer program: which plantings, how much of each, in which beds. The aims are
//! followed in order; what it returns is plain data that the checker has yet to see.

mod aim_program;
mod aims;
mod board;
mod columns;
mod decode;
mod engine;
mod fit;
mod forbidden;
mod grown_share;
mod keeping;
mod layout;
mod names;
mod one_aim;
mod open_grades;
mod options;
mod point;
mod program;
mod reasons;
mod rules;
mod search;
mod setting;
mod share_floor;
mod solver;
mod stages;
mod still_possible;
mod too_much;

use crate::candidates::{Candidate, Candidates, Scope, Unlisted};
use crate::garden::Garden;
use crate::plan::{Aim, AimResult, Plan};

use board::{Board, Places};
use fit::layout;
use point::chosen;
use solver::Unsolved;
use stages::{ABOUT_AMOUNTS, Pace, SMALL, Staged, carried};
use still_possible::still_possible;

pub use aim_program::{AimProgram, NamedPlanting};
pub use decode::planting;
pub use keeping::FewestStrips;
pub use layout::{
    Chosen, Ground, Packed, Part, Parts, Piece, neat as neat_layout, pack,
    places as strips_of_layout,
};
pub use open_grades::widen;
pub use options::{CONCESSION_YEARS, Options, USUAL_TIME};
pub use program::{Col, Column, Program, Row, Section};
pub use reasons::{Impossible, LeftOut, Pressure, Why};

/// What came of a solve.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// A plan; its aims tell what is proved.
    Planned(Plan),
    /// Not every ingredient can be in the pot.
    Impossible(Impossible),
    /// There are too many plantings to choose from.
    TooMany,
    /// No plan was found in the time allowed.
    OutOfTime,
    /// The solver failed; its words.
    Failed(String),
}

impl From<Unlisted> for Outcome {
    fn from(why: Unlisted) -> Self {
        match why {
            Unlisted::TooMany => Self::TooMany,
            Unlisted::OutOfTime => Self::OutOfTime,
        }
    }
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

/// Decides a garden's plan with only those candidates for which `keep` holds.
#[must_use]
pub fn solve_where(
    garden: &Garden,
    options: &Options,
    keep: impl Fn(&Candidate) -> bool,
) -> Outcome {
    match Decision::new(garden, options, false) {
        Err(why) => why.into(),
        Ok(mut decision) => {
            decision.all = decision.all.only(keep);
            outcome(decision.decide())
        }
    }
}

/// Decides a garden's plan and keeps the program of every aim.
#[must_use]
pub fn solve_and_record(garden: &Garden, options: &Options) -> Recorded {
    decide(garden, options, true)
}

fn decide(garden: &Garden, options: &Options, record: bool) -> Recorded {
    let none = |outcome| Recorded {
        outcome,
        programs: Vec::new(),
    };
    match Decision::new(garden, options, record).map(|decision| decision.decide()) {
        Err(why) => none(why.into()),
        Ok(Ok(recorded)) => recorded,
        Ok(unsolved) => none(outcome(unsolved)),
    }
}

/// What came of a decision.
fn outcome(decided: Result<Recorded, Unsolved>) -> Outcome {
    match decided {
        Ok(recorded) => recorded.outcome,
        Err(Unsolved::Failed(words)) => Outcome::Failed(words),
        Err(Unsolved::Infeasible) => Outcome::Failed("the rows contradict each other".into()),
        Err(Unsolved::OutOfTime) => Outcome::OutOfTime,
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
    let all = [AimResult {
        aim: Aim::InThePot,
        value: garden.ingredients.len() as f64,
        bound: garden.ingredients.len() as f64,
    }];
    match keeping(garden, options, &all) {
        Ok(Some(_)) => Possible::Yes,
        Ok(None) => Possible::No,
        Err(NotKnown) => Possible::Unknown,
    }
}

/// A plan that keeps what aims have reached, whatever else becomes of it; nothing is given back.
/// `None` if it is proved that there is none. `held` begins with the first aim.
///
/// # Errors
/// Neither a plan nor a proof was found in the time allowed.
pub fn keeping(
    garden: &Garden,
    options: &Options,
    held: &[AimResult],
) -> Result<Option<Plan>, NotKnown> {
    let decision = Decision::keeping(garden, options)?;
    keeping::any(garden, &decision.all, held, &decision.pace).map_err(|_| NotKnown)
}

/// A plan that keeps what aims have reached and needs the fewest strips of bed, as far as that
/// is found in the time allowed.
///
/// # Errors
/// Not one plan was found.
pub fn on_fewest_strips(
    garden: &Garden,
    options: &Options,
    held: &[AimResult],
) -> Result<FewestStrips, NotKnown> {
    let decision = Decision::keeping(garden, options)?;
    keeping::on_fewest_strips(garden, &decision.all, held, &decision.pace).map_err(|_| NotKnown)
}

/// Nothing was found in the time allowed, or there is too much to choose from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotKnown;

/// A garden with all its candidates, and how long to think about them.
struct Decision<'a> {
    garden: &'a Garden,
    all: Candidates,
    pace: Pace,
}

/// Programs with more plots of candidates than this are not solved plot by plot.
const MOST_NAMED: usize = 3_000;

/// A solved program with its point.
type Solution<'a> = (Board<'a>, Staged);

impl<'a> Decision<'a> {
    fn new(garden: &'a Garden, options: &Options, record: bool) -> Result<Self, Unlisted> {
        let pace = Pace {
            concession_years: options.concession_years,
            deadline: options.deadline,
            record,
        };
        let all = Candidates::within(garden, &pace.deadline)?;
        Ok(Self { garden, all, pace })
    }

    /// The same, with nothing to be given back.
    fn keeping(garden: &'a Garden, options: &Options) -> Result<Self, NotKnown> {
        let options = Options {
            concession_years: 0,
            ..*options
        };
        Self::new(garden, &options, false).map_err(|_| NotKnown)
    }

    /// The candidates that matter to years: with the least amounts, none of them needless.
    fn about_years(&self) -> Candidates {
        self.all
            .with_least_amounts(self.garden)
            .without_needless(self.garden, Scope::Harvest)
    }

    /// Decides in three steps: which plantings give the best years, with the least amounts;
    /// among those that keep these years, how much of each; and among those that keep both,
    /// the small aims. Each step looks only at candidates that differ in what it asks for.
    /// Where grades are open and there are too many candidates for a step, it is done with the
    /// grades that few of them, or the step before, have chosen.
    fn decide(&self) -> Result<Recorded, Unsolved> {
        let garden = self.garden;
        let few = self.about_years();
        if self.pace.deadline.is_over() {
            return Err(Unsolved::OutOfTime);
        }
        let years = |board: &mut Board<'a>| stages::years(board, &self.pace);
        if let Some(promising) = open_grades::promising(garden, &few) {
            let solution = self.laid_out(&promising, years);
            if let Some(planned) = solution.ok().and_then(|s| self.with_grades_of(&s, &[])) {
                return Ok(planned);
            }
        }
        let (board, mut staged) = self.laid_out(&few, years)?;
        let mut programs = std::mem::take(&mut staged.programs);
        if !staged.has_all_in_the_pot(garden) {
            let reasons = reasons::impossible(garden, &self.all, &board.columns, &staged);
            return Ok(Recorded {
                outcome: Outcome::Impossible(reasons),
                programs,
            });
        }
        let mut best = (board, staged);
        let known = best.1.aims.clone();
        if garden.has_open_grades()
            && self.later(&known, Scope::Harvest).all.len() > open_grades::MOST_LATER
            && let Some(planned) = self.with_grades_of(&best, &known)
        {
            return Ok(planned);
        }
        for (scope, aims) in [
            (Scope::Harvest, &ABOUT_AMOUNTS[..]),
            (Scope::Everything, &SMALL),
        ] {
            if self.pace.deadline.is_over() {
                break;
            }
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
        let staged = stages::unfinished(&board, staged, &self.pace.deadline);
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
        if !staged.has_all_in_the_pot(self.garden) {
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
            let planting = &board.candidates[c.candidate];
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
        let known = &board.forbidden;
        self.laid_out(&few, |board| {
            let start = (board.places == Places::Projected).then_some(&start[..]);
            let earlier = &staged.aims;
            stages::later(board, start, earlier, (known, aims), &self.pace)
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
        let (chosen, parts) = layout(board, &staged.values).ok().flatten()?;
        let strips = layout::places(self.garden, candidates, &chosen, &parts)?;
        Some(decode::plan(
            self.garden,
            candidates,
            &chosen,
            strips,
            staged.aims,
        ))
    }
}
