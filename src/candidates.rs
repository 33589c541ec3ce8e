//! Every planting worth considering: its steps on real sessions, what it takes of beds, shelf
//! and lessons, and the weather years in which it is ready. What is thrown out keeps a reason.

mod amounts;
mod context;
mod dominance;
mod dropped;
mod nursery;
mod places;
mod rounds;
mod slack;
mod sowings;
mod standing;
mod windows;
mod years;

pub use amounts::{Amounts, Level};
pub use context::Context;
pub use dominance::{MOST_UNIONS, greatest_use};
pub use dropped::{DropReason, Dropped};
pub use nursery::hardening;
pub use places::{BedClass, MOST_PLOTS, PlotSet, bed_classes, plots, unions, usable_strips};
pub use rounds::{PickDay, Round, rounds};
pub use years::YearSet;

use crate::calendar::Date;
use crate::garden::{ClassAt, Garden, IngredientAt, Method, Plot};
use crate::growth::Effort;
use crate::plan::StepKind;

/// A crop is not sown on a hope that holds in fewer than one weather year of this many.
pub const HOPE: u32 = 10;

/// Who thins, and when.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Thinning {
    /// The children, in a round.
    Round(Round),
    /// An adult, where no round comes in time.
    Adult(Date),
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
    /// The first day in the bed; `None` for what stands already.
    #[must_use]
    pub fn into_bed(&self) -> Option<Date> {
        self.plant_out
            .as_ref()
            .or(self.sow.as_ref())
            .map(Round::first)
    }
}

/// Weeks on the shelf; all are week numbers of the span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ShelfWeeks {
    /// Week of the first sowing session.
    pub sown: usize,
    /// Weeks of the first and last potting-up session; both the week after `out` if none.
    pub potted: (usize, usize),
    /// Week of the last planting-out session.
    pub out: usize,
    /// The last week on the heat mat, if it stands there.
    pub warm_until: Option<usize>,
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

/// One planting that might be made.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidate {
    /// Of which ingredient.
    pub ingredient: IngredientAt,
    /// How it is grown.
    pub method: Method,
    /// Its steps.
    pub steps: Steps,
    /// The plots on which it may stand; none for what stands already.
    pub plots: PlotSet,
    /// First and last week in the bed, a week to clear it included.
    pub bed_weeks: (usize, usize),
    /// How much of it there may be and what that takes.
    pub amounts: Amounts,
    /// Weeks on the shelf, for plants raised there.
    pub shelf: Option<ShelfWeeks>,
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
    /// Weeks that its seedlings are older than they need be.
    pub late_weeks: u32,
}

/// All candidates of a garden.
#[derive(Debug, Clone, PartialEq)]
pub struct Candidates {
    /// The plots that their `plots` refer to.
    pub plots: Vec<Plot>,
    /// How many weather years there are.
    pub years: usize,
    /// The candidates, by ingredient.
    pub all: Vec<Candidate>,
    /// What was thrown out, per ingredient.
    pub dropped: Vec<Dropped>,
}

impl Candidates {
    /// Every planting that keeps the rules by itself, before any comparison.
    #[must_use]
    pub fn enumerate(garden: &Garden) -> Self {
        let context = Context::new(garden);
        let plots = plots(garden);
        let years = garden.weather.years(garden.horizon()).len();
        let mut all = Vec::new();
        let mut dropped = Vec::new();
        for at in garden.ingredient_positions() {
            let mut reasons = Dropped::new();
            all.extend(standing::candidates(&context, at, &mut reasons));
            all.extend(sowings::candidates(&context, &plots, at, &mut reasons));
            dropped.push(reasons);
        }
        Self {
            plots,
            years,
            all,
            dropped,
        }
    }

    /// The same without candidates that another one of their ingredient makes needless.
    #[must_use]
    pub fn without_needless(mut self, garden: &Garden) -> Self {
        self.all = dominance::keep_best(garden, &self.plots, self.all);
        self
    }

    /// Least number of ready years for a planting, or an ingredient, to count at all.
    #[must_use]
    pub fn least_ready_years(&self) -> u32 {
        least_ready_years(self.years)
    }
}

/// One weather year in ten, and at least one.
fn least_ready_years(years: usize) -> u32 {
    u32::try_from(years)
        .unwrap_or(u32::MAX)
        .div_ceil(HOPE)
        .max(1)
}
