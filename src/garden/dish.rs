//! The feast and what is eaten at it.

use crate::calendar::Date;
use crate::units::{Kilograms, Share};

use super::at::{BegunAt, GradeAt, PatchAt};
use super::crop::Crop;
use super::grade::Grade;
use super::method::Method;
use super::team::Team;

/// The shared day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Feast {
    /// The day of the feast.
    pub day: Date,
    /// A second day, for rain; readiness is reported for it too.
    pub rain_date: Option<Date>,
    /// When the kitchen needs the harvest, cured where it must be cured.
    pub deliver_by: Date,
    /// How many portions.
    pub portions: u32,
}

/// What is bought if an ingredient fails.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fallback {
    /// The last day to order.
    pub buy_by: Date,
    /// What it costs, in the school's currency.
    pub cost: Option<f64>,
}

/// Where an ingredient comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Sown or planted within the plan.
    Sown,
    /// It has begun already.
    Begun(BegunAt),
    /// A perennial patch.
    Patch(PatchAt),
}

/// One ingredient of the dish.
#[derive(Debug, Clone, PartialEq)]
pub struct Ingredient {
    /// Its name, unique in the dish; the crop's name unless given.
    pub name: String,
    /// The crop with the project's overrides applied.
    pub crop: Crop,
    /// The teams of which one grows it, in the order of the file, at least one: single grades, or one team of
    /// several that grow it together.
    pub teams: Vec<Team>,
    /// Where it comes from.
    pub source: Source,
    /// The ways of sowing or planting that are allowed; at least one for `Source::Sown`.
    pub methods: Vec<Method>,
    /// Edible grams that a portion should hold: a target, not an oath.
    pub grams_per_portion: f64,
    /// The least share of the target that counts as in the pot.
    pub least_share: Share,
    /// What every child of the team sows.
    pub each_child_sows: u32,
    /// How many sowings there may be, 1 to 4.
    pub max_sowings: u32,
    /// The crops that the cook takes in its place, the best first; none where any will do.
    pub instead: Vec<Crop>,
    /// What is bought if it fails.
    pub fallback: Option<Fallback>,
}

impl Ingredient {
    /// How many plantings of it there may be: what stands already is there once, and of a
    /// patch one pick is counted.
    #[must_use]
    pub fn most_plantings(&self) -> u32 {
        match self.source {
            Source::Sown => self.max_sowings,
            Source::Begun(_) | Source::Patch(_) => 1,
        }
    }

    /// True if a grade may grow it, alone or together with others.
    #[must_use]
    pub fn may_be_grown_by(&self, grade: GradeAt) -> bool {
        self.teams.iter().any(|team| team.has(grade))
    }

    /// The team that grows it, if there is nothing to choose.
    #[must_use]
    pub fn only_team(&self) -> Option<Team> {
        match self.teams[..] {
            [only] => Some(only),
            _ => None,
        }
    }

    /// From which age on children can do all that it asks of them: tiny seed where it is sown,
    /// a knife where it is cut. `None` where any age will do.
    #[must_use]
    pub fn least_age(&self) -> Option<u32> {
        self.crop.ages.least(&self.methods)
    }

    /// True if a grade is known to be too young for it.
    #[must_use]
    pub fn is_too_hard_for(&self, grade: &Grade) -> bool {
        let least = self.least_age();
        grade.age.zip(least).is_some_and(|(age, least)| age < least)
    }

    /// Edible kilograms for all portions.
    #[must_use]
    pub fn target(&self, portions: u32) -> Kilograms {
        Kilograms(self.grams_per_portion * f64::from(portions) / 1000.0)
    }

    /// The edible kilograms of them that count as in the pot.
    #[must_use]
    pub fn least(&self, portions: u32) -> Kilograms {
        self.target(portions) * self.least_share.0
    }
}
