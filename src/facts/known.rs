//! A checked plan with its garden, and what is looked up in them.

use crate::calendar::Date;
use crate::checker::{CheckedPlan, IngredientReplay, Replay, Standing, Unseen};
use crate::garden::{Garden, GradeAt, Ingredient, IngredientAt, Team};
use crate::plan::{Plan, Planting, PlantingAt, Stand};

use super::sowings::{Sowing, sowings};

/// A checked plan with its garden: all that facts are worked out from.
pub struct Known<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// Its plan with the proof that it was checked.
    pub(super) checked: &'a CheckedPlan,
    /// The plan.
    pub plan: &'a Plan,
    /// What the replay of the plan saw.
    pub replay: &'a Replay,
    /// First and last day on which each planting takes its strips, a week to clear them included;
    /// `None` for a patch.
    pub in_bed: Vec<Option<(Date, Date)>>,
    /// What stands on which strips of which bed, and when, in the order of the plan.
    pub(super) stands: Vec<Stand>,
    /// Which sowing each planting is.
    sowings: Vec<Sowing>,
}

impl<'a> Known<'a> {
    /// Looks at a checked plan of a garden.
    #[must_use]
    pub fn new(garden: &'a Garden, checked: &'a CheckedPlan) -> Self {
        Self {
            garden,
            checked,
            plan: checked.plan(),
            replay: checked.replay(),
            in_bed: checked.in_bed(garden),
            stands: checked.stands(garden),
            sowings: sowings(checked.plan()),
        }
    }

    /// Which sowing of its ingredient the planting at a place in the plan is.
    #[must_use]
    pub fn sowing(&self, planting: PlantingAt) -> Sowing {
        let only = Sowing { number: 1, of: 1 };
        self.sowings.get(planting.0).copied().unwrap_or(only)
    }

    /// The same of one of the plan's plantings.
    #[must_use]
    pub fn sowing_of(&self, planting: &Planting) -> Sowing {
        let mut plantings = self.plan.plantings.iter();
        let at = plantings.position(|p| p == planting);
        self.sowing(PlantingAt(at.unwrap_or(self.sowings.len())))
    }

    /// What the plan is worth: just made, saved, edited, or of a project that has changed since.
    #[must_use]
    pub fn standing(&self) -> &'a Standing {
        self.checked.standing()
    }

    /// The plan in years that it was not chosen on, where such can be made.
    #[must_use]
    pub fn unseen(&self) -> Option<&'a Unseen> {
        self.checked.unseen()
    }

    /// First and last day of the plan.
    #[must_use]
    pub fn span(&self) -> (Date, Date) {
        let horizon = self.garden.horizon();
        (horizon.first(), horizon.last())
    }

    /// A span of days cut to the plan.
    pub(super) fn within(&self, (from, to): (Date, Date)) -> (Date, Date) {
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

    /// The first and the last day on which anything is done for the ingredient of a name.
    #[must_use]
    pub fn work_on(&self, ingredient: &str) -> Option<(Date, Date)> {
        let steps = || self.plantings_named(ingredient).flat_map(|p| &p.steps);
        let first = steps().filter_map(|step| step.when.first()).min()?;
        let last = steps().filter_map(|step| step.when.last()).max()?;
        Some((first, last))
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

    /// Ready years of the ingredient of a name.
    #[must_use]
    pub fn ready_years(&self, ingredient: &str) -> usize {
        self.seen(ingredient).map_or(0, |seen| seen.ready_years())
    }

    /// All plantings with their ingredient.
    pub fn planted(&self) -> impl Iterator<Item = (&'a Planting, &'a Ingredient)> {
        self.plan
            .plantings
            .iter()
            .filter_map(|p| Some((p, self.ingredient_of(p)?)))
    }

    /// The plantings of a grade, alone or together with others, with their ingredient.
    pub fn planted_by(
        &self,
        grade: GradeAt,
    ) -> impl Iterator<Item = (&'a Planting, &'a Ingredient)> {
        let planted = self.planted();
        planted.filter(move |(p, _)| self.team_of(p).has(grade))
    }

    /// All plantings with their positions, by the first of the grades that grow them.
    #[must_use]
    pub fn by_grade(&self) -> Vec<(PlantingAt, &'a Planting)> {
        let mut all: Vec<_> = self.plan.numbered().collect();
        all.sort_by_key(|(_, planting)| self.team_of(planting));
        all
    }

    /// Who grows a planting; a checked plan names grades that the project knows.
    #[must_use]
    pub fn team_of(&self, planting: &Planting) -> Team {
        let team = self.garden.team_with_ids(&planting.grades);
        team.unwrap_or_default()
    }

    /// Who grows an ingredient; nobody where it is not in the plan.
    #[must_use]
    pub fn grown_by(&self, ingredient: &Ingredient) -> Team {
        let mut plantings = self.plantings_named(&ingredient.name);
        let team = plantings.next().map(|p| self.team_of(p));
        team.unwrap_or_default()
    }

    /// The name of a grade.
    #[must_use]
    pub fn grade_name(&self, grade: GradeAt) -> &'a str {
        &self.garden[grade].name
    }

    /// The names of a team's grades.
    #[must_use]
    pub fn names_of(&self, team: Team) -> Vec<&'a str> {
        team.grades().map(|grade| self.grade_name(grade)).collect()
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
