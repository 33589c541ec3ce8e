//! Grades that grow nothing in a plan, and why.

use crate::garden::GradeAt;

use super::Facts;

/// Why a grade grows nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Idle {
    /// The file gives every ingredient to other grades.
    GivenToOthers,
    /// Of the ingredients whose grade the file leaves open none is for its age.
    TooYoung,
    /// More grades could grow something than there are ingredients for them.
    TooFewIngredients,
}

impl Facts<'_> {
    /// Why a grade grows nothing of its own; `None` if it grows something.
    #[must_use]
    pub fn idle(&self, grade: GradeAt) -> Option<Idle> {
        if self.planted_by(grade).next().is_some() {
            return None;
        }
        let ingredients = &self.garden.ingredients;
        let may = ingredients.iter().any(|i| i.may_be_grown_by(grade));
        let open = ingredients.iter().any(|i| i.only_team().is_none());
        Some(match (may, open) {
            (true, _) => Idle::TooFewIngredients,
            (false, true) => Idle::TooYoung,
            (false, false) => Idle::GivenToOthers,
        })
    }

    /// The reasons that there are, each with its grades in the order of the file.
    #[must_use]
    pub fn idle_grades(&self) -> Vec<(Idle, Vec<GradeAt>)> {
        let reasons = [Idle::GivenToOthers, Idle::TooYoung, Idle::TooFewIngredients];
        let of_reason = |why: Idle| {
            let grades = self.garden.grade_positions();
            let idle: Vec<GradeAt> = grades.filter(|g| self.idle(*g) == Some(why)).collect();
            (why, idle)
        };
        let all = reasons.into_iter().map(of_reason);
        all.filter(|(_, grades)| !grades.is_empty()).collect()
    }
}
