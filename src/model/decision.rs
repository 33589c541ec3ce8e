//! One garden's decision: its candidates, and the steps in which the aims are followed.

use crate::candidates::{Candidate, Candidates, Scope, Unlisted};
use crate::garden::Garden;
use crate::plan::{Aim, AimResult, Plan};

use super::board::{Board, Places};
use super::fit::layout;
use super::known::{Known, Plantings, plantings};
use super::layout::places;
use super::options::Options;
use super::outcome::{NotKnown, Outcome, Recorded};
use super::point::chosen;
use super::solver::{Deadline, Unsolved};
use super::stages::{self, ABOUT_AMOUNTS, ABOUT_DATES, Pace, SMALL, Staged};
use super::still_possible::still_possible;
use super::{decode, open_grades, reasons};

/// A garden with all its candidates, and how long to think about them.
pub struct Decision<'a> {
    pub garden: &'a Garden,
    pub all: Candidates,
    pub pace: Pace,
    pub known: Known,
}

/// What came of a decision.
pub struct Decided {
    /// The plan, or why there is none.
    pub recorded: Recorded,
    /// The points that were reached, in order.
    pub points: Vec<Plantings>,
}

/// Programs with more plots of candidates than this are not solved plot by plot.
const MOST_NAMED: usize = 3_000;

/// A solved program with its point.
type Solution<'a> = (Board<'a>, Staged);

impl<'a> Decision<'a> {
    /// A decision that nothing is known for.
    ///
    /// # Errors
    /// There are too many candidates, or no time to list them.
    pub fn new(garden: &'a Garden, options: &Options, record: bool) -> Result<Self, Unlisted> {
        let pace = Pace {
            concession_years: options.concession_years,
            deadline: options.deadline,
            record,
        };
        let all = Candidates::within(garden, &pace.deadline)?;
        Ok(Self {
            garden,
            all,
            pace,
            known: Known::default(),
        })
    }

    /// The same with only those candidates for which `keep` holds.
    #[must_use]
    pub fn only(mut self, keep: &dyn Fn(&Candidate) -> bool) -> Self {
        self.all.all.retain(keep);
        self
    }

    /// The same, with nothing to be given back.
    ///
    /// # Errors
    /// There are too many candidates, or no time to list them.
    pub fn keeping(garden: &'a Garden, options: &Options) -> Result<Self, NotKnown> {
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
    /// Where grades are open and too many candidates are left for the small aims, or the half of the time that
    /// the years have is over before they are all followed, the rest is followed with the grades chosen by then.
    ///
    /// # Errors
    /// No plan was found in time, or a failure of the solver.
    pub fn decide(&mut self) -> Result<Decided, Unsolved> {
        let garden = self.garden;
        let few = self.about_years();
        if self.pace.deadline.is_over() {
            return Err(Unsolved::OutOfTime);
        }
        let promising = self.promising(&few);
        let half = promising.as_ref().map(|_| self.pace.deadline.shared_by(2));
        let all = self.years(&few, half.unwrap_or(self.pace.deadline));
        // Without time for all candidates the plan is that with the grades of the promising ones.
        if let (Err(Unsolved::OutOfTime), Some(promising)) = (&all, &promising) {
            let planned = self.with_grades_of(promising, &[]);
            return planned.ok_or(Unsolved::OutOfTime);
        }
        let (board, mut staged) = all?;
        let mut programs = std::mem::take(&mut staged.programs);
        let mut points = std::mem::take(&mut staged.points);
        if !staged.has_all_in_the_pot(garden) {
            let reasons = reasons::impossible(garden, &self.all, &board.columns, &staged);
            let recorded = Recorded {
                outcome: Outcome::Impossible(reasons),
                programs,
            };
            return Ok(Decided { recorded, points });
        }
        let mut best = (board, staged);
        if !best.1.has_followed_years()
            && promising.is_some()
            && let Some(planned) = self.with_grades_of(&best, &best.1.aims)
        {
            return Ok(planned);
        }
        for (scope, aims) in self.after_years() {
            // Aims have an order: where one was not looked at, none after it is.
            if self.pace.deadline.is_over() || !best.1.has_followed_years() {
                break;
            }
            let later = self.later(&best.1.aims, scope);
            if scope == Scope::Everything
                && self.are_many_for_open_grades(&later)
                && let Some(planned) = self.with_grades_of(&best, &best.1.aims)
            {
                return Ok(planned);
            }
            match self.go_on(&best, later, aims) {
                Ok((board, mut staged)) => {
                    programs.append(&mut staged.programs);
                    points.append(&mut staged.points);
                    best = (board, staged);
                }
                Err(Unsolved::OutOfTime) => break,
                Err(failed) => return Err(failed),
            }
        }
        let outcome = self.outcome(best);
        let recorded = Recorded { outcome, programs };
        Ok(Decided { recorded, points })
    }

    /// The plan of a solution, with the aims that were not followed as they happen to be.
    fn outcome(&self, (board, staged): Solution<'a>) -> Outcome {
        let staged = stages::unfinished(&board, staged, &self.pace.deadline);
        let plan = self.plan(&board, staged);
        plan.map_or(Outcome::OutOfTime, Outcome::Planned)
    }

    /// The aims after those about years, in steps: where the season is under way, dates that stay come first.
    fn after_years(&self) -> impl Iterator<Item = (Scope, &'static [Aim])> {
        let dates = self.garden.season.as_ref();
        let dates = dates.map(|_| (Scope::Harvest, &ABOUT_DATES[..]));
        let usual = [
            (Scope::Harvest, &ABOUT_AMOUNTS[..]),
            (Scope::Everything, &SMALL),
        ];
        dates.into_iter().chain(usual)
    }

    /// True if the choice of grades leaves too many candidates for the small aims.
    fn are_many_for_open_grades(&self, later: &Candidates) -> bool {
        self.garden.has_open_grades() && later.all.len() > open_grades::MOST_LATER
    }

    /// The aims about years, with some candidates.
    fn years(&self, few: &Candidates, deadline: Deadline) -> Result<Solution<'a>, Unsolved> {
        let pace = Pace {
            deadline,
            ..self.pace
        };
        self.laid_out(few, |board| stages::years(board, &pace))
    }

    /// The same with promising candidates only, where there are many. What it reaches is known from then
    /// on.
    fn promising(&mut self, few: &Candidates) -> Option<Solution<'a>> {
        let promising = open_grades::promising(self.garden, few)?;
        let solution = self
            .years(&promising, self.pace.deadline.shared_by(2))
            .ok()?;
        self.known.points.extend(solution.1.points.clone());
        Some(solution)
    }

    /// A plan with the grades of a solution, if it finds one; `known` are the aims that were followed with
    /// all candidates.
    fn with_grades_of(
        &self,
        (board, staged): &Solution<'a>,
        known: &[AimResult],
    ) -> Option<Decided> {
        if !staged.has_all_in_the_pot(self.garden) {
            return None;
        }
        let teams = open_grades::chosen(board, &staged.values);
        let garden = self.garden.grown_by(&teams);
        let made = chosen(&board.candidates, &board.columns, &staged.values);
        let mut fixed = Decision {
            garden: &garden,
            all: self.all.only(|c| teams.contains(&(c.ingredient, c.team))),
            pace: self.pace,
            known: Known {
                points: vec![plantings(&board.candidates, &made)],
            },
        };
        let mut decided = fixed.decide().ok()?;
        let Outcome::Planned(plan) = &mut decided.recorded.outcome else {
            return None;
        };
        open_grades::widen(self.garden, &self.all, known, &mut plan.aims);
        Some(decided)
    }

    /// The candidates that matter after the aims so far.
    fn later(&self, aims: &[AimResult], scope: Scope) -> Candidates {
        let (garden, pace) = (self.garden, &self.pace);
        still_possible(garden, &self.all, aims, pace.concession_years)
            .without_needless(garden, scope)
    }

    /// Follows more aims from a solution of the earlier ones, with the candidates that matter to them.
    fn go_on(
        &self,
        (board, staged): &Solution<'a>,
        mut few: Candidates,
        aims: &[Aim],
    ) -> Result<Solution<'a>, Unsolved> {
        let made = chosen(&board.candidates, &board.columns, &staged.values);
        let made = Known {
            points: vec![plantings(&board.candidates, &made)],
        };
        let start = made.among(&self.all, &mut few).into_iter().next();
        let known = &board.forbidden;
        self.laid_out(&few, |next| {
            next.steps = board.steps;
            let start = start
                .as_deref()
                .filter(|_| next.places == Places::Projected);
            let earlier = &staged.aims;
            stages::later(next, start, earlier, (known, aims), &self.pace)
        })
    }

    /// Solves over sets of plots; where an aim then has a bound that may only be due to that,
    /// plot by plot, unless that program is too large to be of use.
    fn laid_out(
        &self,
        candidates: &Candidates,
        solve: impl Fn(&mut Board<'a>) -> Result<Staged, Unsolved>,
    ) -> Result<Solution<'a>, Unsolved> {
        let mut candidates = candidates.clone();
        let known = self.known.among(&self.all, &mut candidates);
        let mut board = Board::new(self.garden, candidates.clone(), Places::Projected);
        board.known = known;
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
        let mut exact = Board::new(self.garden, candidates, Places::Named);
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
        let strips = places(self.garden, candidates, &chosen, &parts)?;
        Some(decode::plan(
            self.garden,
            candidates,
            &chosen,
            strips,
            staged.aims,
        ))
    }
}
