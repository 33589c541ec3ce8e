//! One planting that might be made: its steps on real days and what it takes and gives.

use crate::calendar::Date;
use crate::garden::{ClassAt, IngredientAt, Method, PrintedAt, Team};
use crate::growth::Effort;
use crate::plan::StepKind;

use super::amounts::Amounts;
use super::places::PlotSet;
use super::rounds::{Done, PickDay, Round};
use super::shelf::ShelfDays;
use super::years::YearSet;

/// Who thins, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Thinning {
    /// The children, in a round.
    Round(Round),
    /// An adult, where no round comes in time.
    Adult(Date),
    /// Families, in a break in which they care.
    Families(Date),
}

impl Thinning {
    fn done(&self) -> Done<'_> {
        match self {
            Thinning::Round(round) => Done::Round(round),
            Thinning::Adult(day) => Done::Adult(*day),
            Thinning::Families(day) => Done::Families(*day),
        }
    }
}

/// The steps of a planting on real days.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Steps {
    /// Sowing, on the shelf or in the bed.
    pub sow: Option<Round>,
    /// Potting up.
    pub pot_up: Option<Round>,
    /// Planting out.
    pub plant_out: Option<Round>,
    /// Thinning.
    pub thin: Option<Thinning>,
    /// The pick window in order of time, at least one.
    pub picks: Vec<PickDay>,
}

impl Steps {
    /// The steps of a kind that people do, in order of time; none of a kind that goes on day by
    /// day beside another.
    pub fn of_kind(&self, kind: StepKind) -> impl Iterator<Item = Done<'_>> {
        fn round(round: &Option<Round>) -> Option<Done<'_>> {
            round.as_ref().map(Done::Round)
        }
        let (once, picks) = match kind {
            StepKind::Sow => (round(&self.sow), &[][..]),
            StepKind::PotUp => (round(&self.pot_up), &[][..]),
            StepKind::PlantOut => (round(&self.plant_out), &[][..]),
            StepKind::Thin => (self.thin.as_ref().map(Thinning::done), &[][..]),
            StepKind::Pick => (None, &self.picks[..]),
            StepKind::Harden | StepKind::Cure => (None, &[][..]),
        };
        once.into_iter().chain(picks.iter().map(PickDay::done))
    }

    /// All steps that people do, in order.
    pub fn done(&self) -> impl Iterator<Item = (StepKind, Done<'_>)> {
        let kinds = StepKind::ALL.iter();
        kinds.flat_map(|kind| self.of_kind(*kind).map(|done| (*kind, done)))
    }

    /// The steps that children do in a round, in order.
    pub fn rounds(&self) -> impl Iterator<Item = (StepKind, &Round)> {
        self.done().filter_map(|(kind, done)| match done {
            Done::Round(round) => Some((kind, round)),
            Done::Families(_) | Done::Adult(_) => None,
        })
    }

    /// The first day in the bed; `None` for what stands already.
    #[must_use]
    pub fn into_bed(&self) -> Option<Date> {
        self.plant_out
            .as_ref()
            .or(self.sow.as_ref())
            .map(Round::first)
    }
}

/// Work in one session of one class.
#[derive(Debug, Clone, PartialEq)]
pub struct Task {
    /// What is done.
    pub kind: StepKind,
    /// The class.
    pub class: ClassAt,
    /// The session.
    pub date: Date,
    /// Minutes as a function of plants.
    pub effort: Effort,
}

/// Dates that move. Those that the season has seen already cannot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Moves {
    /// How many: a day of a class, of families or of an adult is one.
    pub dates: u32,
    /// By how many days, added up.
    pub days: u32,
}

/// One planting that might be made.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Of which ingredient.
    pub ingredient: IngredientAt,
    /// Who grows it.
    pub team: Team,
    /// How it is grown.
    pub method: Method,
    /// Its steps.
    pub steps: Steps,
    /// The plots on which it may stand; none for what stands outside the beds.
    pub plots: PlotSet,
    /// First and last day number in the bed, a week to clear it included.
    pub bed_days: (usize, usize),
    /// How much of it there may be and what that takes.
    pub amounts: Amounts,
    /// Days on the shelf, for plants raised there.
    pub shelf: Option<ShelfDays>,
    /// Work in sessions.
    pub tasks: Vec<Task>,
    /// The weather years in which it is ready for the feast.
    pub ready: YearSet,
    /// Gaps (positions in `Garden::gaps`) in which it needs someone.
    pub gaps: Vec<usize>,
    /// Steps that one cancelled session would lose.
    pub fragile: u32,
    /// Steps not done by the children who sowed.
    pub by_others: u32,
    /// Weeks that its seedlings are older than they need be, and whole weeks that its harvest
    /// waits for the feast; of what is put by, weeks from the first day to its last pick.
    pub idle_weeks: u32,
    /// The printed planting with which it goes on; `None` for one that has yet to begin.
    pub given: Option<PrintedAt>,
    /// What it moves of the dates that were printed.
    pub moves: Moves,
}

impl Candidate {
    /// True if the other is the same planting, whatever its amounts. One on the heat mat and one beside it
    /// are two, though all their steps fall on the same days.
    #[must_use]
    pub fn is_same_planting(&self, other: &Self) -> bool {
        self.ingredient == other.ingredient
            && self.team == other.team
            && self.method == other.method
            && self.plots == other.plots
            && self.steps == other.steps
            && self.shelf == other.shelf
            && self.amounts.block == other.amounts.block
            && self.given == other.given
    }
}
