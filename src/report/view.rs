//! A checked plan together with its garden, and the look-ups that every report needs.

use crate::calendar::Date;
use crate::checker::{CheckedPlan, IngredientReplay, Replay};
use crate::garden::{Garden, GradeAt, Ingredient, IngredientAt, Source};
use crate::plan::{Plan, Planting, Step, StepKind, When};
use crate::units::Latitude;

use super::words::Words;

/// What a report reads.
#[derive(Clone, Copy)]
pub struct View<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// Its plan with the proof that it was checked.
    pub checked: &'a CheckedPlan,
    /// The plan.
    pub plan: &'a Plan,
    /// What the replay of the plan saw.
    pub replay: &'a Replay,
    /// How dates and amounts are written.
    pub words: Words,
}

impl<'a> View<'a> {
    /// Looks at a checked plan of a garden.
    #[must_use]
    pub fn new(garden: &'a Garden, checked: &'a CheckedPlan) -> Self {
        Self {
            garden,
            checked,
            plan: checked.plan(),
            replay: checked.replay(),
            words: Words::of(garden),
        }
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

    /// `past years` or `generated weather years`.
    #[must_use]
    pub fn kind_of_years(&self) -> &'static str {
        kind_of_years(self.garden)
    }
}

/// `past years`, or `generated weather years` where no thermometer saw them.
pub(super) fn kind_of_years(garden: &Garden) -> &'static str {
    if garden.weather.is_generated() {
        "generated weather years"
    } else {
        "past years"
    }
}

/// The first and last day of a planting's steps of one kind.
pub(super) fn span_of(planting: &Planting, kind: StepKind) -> Option<(Date, Date)> {
    let first = planting
        .steps_of(kind)
        .filter_map(|s| s.when.first())
        .min()?;
    let last = planting
        .steps_of(kind)
        .filter_map(|s| s.when.last())
        .max()?;
    Some((first, last))
}

/// The first day on which anything is done to a planting.
pub(super) fn first_day(planting: &Planting) -> Option<Date> {
    planting.steps.iter().filter_map(|s| s.when.first()).min()
}

/// True if a step is done by children in their sessions.
pub(super) fn by_children(step: &Step) -> bool {
    matches!(step.when, When::Sessions(_))
}

/// True if an ingredient is sown or planted within the plan.
pub(super) fn is_sown(ingredient: &Ingredient) -> bool {
    ingredient.source == Source::Sown
}

/// `44.3 degrees north`, `the equator`.
pub(super) fn latitude(latitude: Latitude) -> String {
    if latitude.0 == 0.0 {
        return "the equator".to_owned();
    }
    let side = if latitude.0 < 0.0 { "south" } else { "north" };
    format!("{} degrees {side}", latitude.0.abs())
}
