//! What one grade has to do with: what it grows, and what it takes over.

use crate::garden::{GradeAt, Ingredient};
use crate::plan::Planting;

use super::super::view::View;

/// A planting with its ingredient.
pub(super) type Grown<'a> = (&'a Planting, &'a Ingredient);

/// What a grade has to do with.
pub(super) struct Ours<'a> {
    pub grade: GradeAt,
    /// What the grade grows.
    pub own: Vec<Grown<'a>>,
    /// What it takes over from a grade that leaves.
    pub adopted: Vec<Grown<'a>>,
}

impl<'a> Ours<'a> {
    /// What a grade has to do with in a plan.
    pub fn new(view: &View<'a>, grade: GradeAt) -> Self {
        let end = view.garden.last_day();
        Self {
            grade,
            own: view.planted_by(grade).collect(),
            adopted: view
                .planted()
                .filter(|(p, _)| {
                    let other = view.grade_of(p).filter(|other| *other != grade);
                    other.is_some_and(|other| view.garden.tending(other, end) == grade)
                })
                .collect(),
        }
    }

    /// What it grows, then what it takes over.
    pub fn all(&self) -> impl Iterator<Item = &Grown<'a>> {
        self.own.iter().chain(&self.adopted)
    }
}
