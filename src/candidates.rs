//! Every planting worth considering: its steps on real sessions, what it takes of beds, shelf
//! and lessons, and the weather years in which it is ready. What is thrown out keeps a reason.

mod amounts;
mod candidate;
mod clash;
mod context;
mod dominance;
mod dropped;
mod going_on;
mod moves;
mod nursery;
mod places;
mod room;
mod rounds;
mod shelf;
mod slack;
mod sowings;
mod standing;
mod takes;
mod unlisted;
mod windows;
mod years;

pub use amounts::{Amounts, Level, blocks_for, fewest_for_one};
pub use candidate::{Candidate, Moves, Steps, Task, Thinning};
pub use clash::{breaks_wish, clash, families};
pub use context::Context;
pub use dominance::Scope;
pub use dropped::{DropReason, Dropped};
pub use nursery::hardening;
pub use places::{BedClass, PlotAt, PlotSet, bed_classes, plots, unions, usable_strips};
pub use room::{SessionOf, crowded_sessions, fullest, fullest_days, greatest_use};
pub use rounds::{Done, PickDay, Round, rounds};
pub use shelf::ShelfDays;
pub use slack::next_round;
pub use unlisted::{MOST_CANDIDATES, Unlisted};
pub use windows::{Seasons, family_days};
pub use years::YearSet;

use crate::deadline::Deadline;
use crate::garden::{Garden, IngredientAt, Plot};
use crate::growth::least_ready_years;

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

/// Which candidate of a list of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CandidateAt(pub usize);

impl std::ops::Index<CandidateAt> for Candidates {
    type Output = Candidate;

    fn index(&self, at: CandidateAt) -> &Candidate {
        &self.all[at.0]
    }
}

impl std::ops::Index<PlotAt> for Candidates {
    type Output = Plot;

    fn index(&self, at: PlotAt) -> &Plot {
        &self.plots[at.0]
    }
}

impl Candidates {
    /// All candidates with their positions.
    pub fn numbered(&self) -> impl Iterator<Item = (CandidateAt, &Candidate)> + Clone {
        let all = self.all.iter().enumerate();
        all.map(|(at, candidate)| (CandidateAt(at), candidate))
    }

    /// All plots with their positions.
    pub fn numbered_plots(&self) -> impl Iterator<Item = (PlotAt, &Plot)> {
        let plots = self.plots.iter().enumerate();
        plots.map(|(at, plot)| (PlotAt(at), plot))
    }

    /// Every planting that keeps the rules by itself, before any comparison.
    #[must_use]
    pub fn enumerate(garden: &Garden) -> Self {
        let context = Context::new(garden);
        let (mut found, mut standing) = Self::standing(&context);
        for at in garden.ingredient_positions() {
            found.add(&context, at, &mut standing);
        }
        found
    }

    /// The same, unless there are too many to choose from, or no time to list them.
    ///
    /// # Errors
    /// Which of the two.
    pub fn within(garden: &Garden, deadline: &Deadline) -> Result<Self, Unlisted> {
        if deadline.is_over() {
            return Err(Unlisted::OutOfTime);
        }
        let context = Context::new(garden);
        let (mut found, mut standing) = Self::standing(&context);
        for at in garden.ingredient_positions() {
            if deadline.is_over() {
                return Err(Unlisted::OutOfTime);
            }
            found.add(&context, at, &mut standing);
            if found.all.len() > MOST_CANDIDATES {
                return Err(Unlisted::TooMany);
            }
        }
        Ok(found)
    }

    /// The plots, none kept longer than what stands there already asks, and the candidates of what does, in
    /// the order of the ingredients; they are still to be added.
    fn standing(context: &Context<'_>) -> (Self, Vec<Candidate>) {
        let garden = context.garden;
        let mut plots = going_on::parted(garden, plots(garden));
        let mut dropped = Vec::new();
        let mut standing = Vec::new();
        for at in garden.ingredient_positions() {
            let mut reasons = Dropped::new();
            standing.extend(standing::candidates(context, &plots, at, &mut reasons));
            dropped.push(reasons);
        }
        standing::keep_until_cleared(garden, &mut plots, &standing);
        let found = Self {
            plots,
            years: garden.weather.years(garden.horizon()).len(),
            all: Vec::new(),
            dropped,
        };
        (found, standing)
    }

    /// Adds the candidates of an ingredient: those `standing` that are its own, or those that are sown.
    fn add(&mut self, context: &Context<'_>, at: IngredientAt, standing: &mut Vec<Candidate>) {
        let own = standing.extract_if(.., |c| c.ingredient == at);
        self.all.extend(own);
        let reasons = &mut self.dropped[at.0];
        let sown = sowings::candidates(context, &self.plots, at, reasons);
        self.all.extend(sown);
    }

    /// The same without candidates that another one of their ingredient makes needless, as far
    /// as `scope` goes.
    #[must_use]
    pub fn without_needless(mut self, garden: &Garden, scope: Scope) -> Self {
        self.all = dominance::keep_best(garden, self.all, scope);
        self
    }

    /// The same with no more than the amounts on which ready years hang: of one sowing the fewest blocks, of
    /// several as many as give the least share by themselves.
    #[must_use]
    pub fn with_least_amounts(&self, garden: &Garden) -> Self {
        let least = |c: &Candidate| {
            let mut least = c.clone();
            let ingredient = &garden[c.ingredient];
            if ingredient.most_plantings() == 1 {
                least.amounts.keep_least();
            } else if c.given.is_none() {
                let share = ingredient.least(garden.feast.portions);
                let enough = fewest_for_one(c.amounts.low / share);
                least.amounts = c.amounts.clone().at_most(enough)?;
            }
            Some(least)
        };
        Self {
            all: self.all.iter().filter_map(least).collect(),
            ..self.only(|_| false)
        }
    }

    /// Those of the same garden with one sowing of each ingredient, which then gives the least share by
    /// itself.
    #[must_use]
    pub fn sown_once(&self, garden: &Garden) -> Self {
        let once = |c: &Candidate| {
            let ingredient = &garden[c.ingredient];
            if ingredient.most_plantings() == 1 {
                return Some(c.clone());
            }
            let least = blocks_for(c.amounts.low, ingredient.least(garden.feast.portions));
            let amounts = c.amounts.clone().at_least(least)?;
            Some(Candidate {
                amounts,
                ..c.clone()
            })
        };
        Self {
            all: self.all.iter().filter_map(once).collect(),
            ..self.only(|_| false)
        }
    }

    /// Only the candidates for which `keep` holds.
    #[must_use]
    pub fn only(&self, keep: impl Fn(&Candidate) -> bool) -> Self {
        let all = self.all.iter().filter(|c| keep(c)).cloned().collect();
        Self {
            all,
            plots: self.plots.clone(),
            dropped: self.dropped.clone(),
            years: self.years,
        }
    }

    /// Least number of ready years for a planting, or an ingredient, to count at all.
    #[must_use]
    pub fn least_ready_years(&self) -> u32 {
        u32::try_from(least_ready_years(self.years)).unwrap_or(u32::MAX)
    }
}
