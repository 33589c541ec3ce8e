//! Small questions about one planting, step or ingredient.

use crate::calendar::Date;
use crate::garden::{Ingredient, Source};
use crate::plan::{Planting, Step, StepKind, When};

/// The first and last day of a planting's steps of one kind.
#[must_use]
pub fn span_of(planting: &Planting, kind: StepKind) -> Option<(Date, Date)> {
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
#[must_use]
pub fn first_day(planting: &Planting) -> Option<Date> {
    planting.steps.iter().filter_map(|s| s.when.first()).min()
}

/// True if a step is done by children in their sessions.
#[must_use]
pub fn by_children(step: &Step) -> bool {
    matches!(step.when, When::Sessions(_))
}

/// True if an ingredient is sown or planted within the plan.
#[must_use]
pub fn is_sown(ingredient: &Ingredient) -> bool {
    ingredient.source == Source::Sown
}
