//! What is true of a checked plan: typed, made once, without a sentence in it. `report` words it,
//! `handouts` lays it out, calendars, tables and data are written from it.

pub mod climate;
pub mod compared;
pub mod crop;
pub mod dates_apart;
pub mod hand_over;
pub mod how_sure;
pub mod interval;
pub mod life;
pub mod manure;
pub mod map;
pub mod no_plan;
pub mod order;
pub mod outlook;
pub mod packet_days;
pub mod places;
pub mod program;
pub mod record;
pub mod sowings;
pub mod space;
pub mod spans;
pub mod stands;
pub mod tasks;
pub mod terms;
pub mod things;
pub mod verdict;
pub mod water;
pub mod weather_weeks;
pub mod weeks;
pub mod weeks_apart;

use std::cell::OnceCell;

use crate::calendar::Date;
use crate::checker::{CheckedPlan, IngredientReplay, Replay, Watering};
use crate::garden::{Garden, GradeAt, Ingredient, IngredientAt};
use crate::plan::{Plan, Planting};

use sowings::Sowing;
use tasks::Task;

/// A checked plan with its garden, and what follows from them.
pub struct Facts<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// Its plan with the proof that it was checked.
    pub checked: &'a CheckedPlan,
    /// The plan.
    pub plan: &'a Plan,
    /// What the replay of the plan saw.
    pub replay: &'a Replay,
    /// First and last day on which each planting takes its strips, a week to clear them included;
    /// `None` for a patch.
    pub in_bed: Vec<Option<(Date, Date)>>,
    /// All that is done, in order of time; on one day in the order of classes and plantings.
    pub tasks: Vec<Task<'a>>,
    /// Which sowing each planting is.
    sowings: Vec<Sowing>,
    watering: OnceCell<Watering>,
}

impl<'a> Facts<'a> {
    /// Looks at a checked plan of a garden.
    #[must_use]
    pub fn new(garden: &'a Garden, checked: &'a CheckedPlan) -> Self {
        let mut facts = Self {
            garden,
            checked,
            plan: checked.plan(),
            replay: checked.replay(),
            in_bed: checked.in_bed(garden),
            tasks: Vec::new(),
            sowings: sowings::sowings(checked.plan()),
            watering: OnceCell::new(),
        };
        facts.tasks = tasks::tasks(&facts);
        facts
    }

    /// The water that the beds need; worked out when it is first asked for.
    pub fn watering(&self) -> &Watering {
        let work_out = || self.checked.watering(self.garden);
        self.watering.get_or_init(work_out)
    }

    /// Which sowing of its ingredient the planting at a place in the plan is.
    #[must_use]
    pub fn sowing(&self, planting: usize) -> Sowing {
        let only = Sowing { number: 1, of: 1 };
        self.sowings.get(planting).copied().unwrap_or(only)
    }

    /// The same of one of the plan's plantings.
    #[must_use]
    pub fn sowing_of(&self, planting: &Planting) -> Sowing {
        let mut plantings = self.plan.plantings.iter();
        let at = plantings.position(|p| p == planting);
        self.sowing(at.unwrap_or(self.sowings.len()))
    }

    /// First and last day of the plan.
    #[must_use]
    pub fn span(&self) -> (Date, Date) {
        let horizon = self.garden.horizon();
        (horizon.first(), horizon.last())
    }

    /// A span of days cut to the plan.
    fn within(&self, (from, to): (Date, Date)) -> (Date, Date) {
        let (first, last) = self.span();
        (from.max(first), to.min(last))
    }

    /// Ingredients with their positions and what became of them.
    pub fn ingredients(
        &self,
    ) -> impl Iterator<Item = (IngredientAt, &'a Ingredient, &'a IngredientReplay)> + use<'a> {
        let (garden, replay) = (self.garden, self.replay);
        garden
            .ingredient_positions()
            .zip(&replay.ingredients)
            .map(move |(at, seen)| (at, &garden[at], seen))
    }

    /// The plantings of the ingredient of a name, in the order of their sowing.
    pub fn plantings_named(&self, ingredient: &str) -> impl Iterator<Item = &'a Planting> {
        self.plan
            .plantings
            .iter()
            .filter(move |p| p.ingredient == ingredient)
    }

    /// The ingredient of a planting.
    #[must_use]
    pub fn ingredient_of(&self, planting: &Planting) -> Option<&'a Ingredient> {
        let at = self.garden.ingredient_named(&planting.ingredient)?;
        self.garden.ingredients.get(at.0)
    }

    /// What became of the ingredient of a name.
    #[must_use]
    pub fn seen(&self, ingredient: &str) -> Option<&'a IngredientReplay> {
        let at = self.garden.ingredient_named(ingredient)?;
        self.replay.ingredients.get(at.0)
    }

    /// All plantings with their ingredient.
    pub fn planted(&self) -> impl Iterator<Item = (&'a Planting, &'a Ingredient)> {
        self.plan
            .plantings
            .iter()
            .filter_map(|p| Some((p, self.ingredient_of(p)?)))
    }

    /// The plantings of a grade with their ingredient.
    pub fn planted_by(
        &self,
        grade: GradeAt,
    ) -> impl Iterator<Item = (&'a Planting, &'a Ingredient)> {
        let planted = self.planted();
        planted.filter(move |(p, _)| self.grade_of(p) == Some(grade))
    }

    /// The grade that grows a planting; a checked plan names one that the project knows.
    #[must_use]
    pub fn grade_of(&self, planting: &Planting) -> Option<GradeAt> {
        self.garden.grade_with_id(&planting.grade)
    }

    /// The grade that grows an ingredient.
    #[must_use]
    pub fn grown_by(&self, ingredient: &Ingredient) -> Option<GradeAt> {
        let mut plantings = self.plantings_named(&ingredient.name);
        plantings.next().and_then(|p| self.grade_of(p))
    }

    /// The name of a grade.
    #[must_use]
    pub fn grade_name(&self, grade: GradeAt) -> &'a str {
        &self.garden[grade].name
    }

    /// The last day on which people of the school can do what is to be done by a day.
    #[must_use]
    pub fn school_day_until(&self, day: Date) -> Date {
        self.garden.school_year.school_day_until(day)
    }

    /// How many weather years there are.
    #[must_use]
    pub fn years(&self) -> usize {
        self.replay.years.len()
    }
}
