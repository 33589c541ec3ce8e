//! How many grades can grow something: one grade for every ingredient, shared out so that as
//! few grades as possible are left with nothing.

use std::collections::BTreeSet;

use super::Garden;
use super::at::{GradeAt, IngredientAt};
use super::dish::Ingredient;

impl Garden {
    /// True if the grade of some ingredient is to be chosen.
    #[must_use]
    pub fn has_open_grades(&self) -> bool {
        self.ingredients.iter().any(|i| i.only_grade().is_none())
    }

    /// The same project with the grades of its ingredients fixed.
    #[must_use]
    pub fn grown_by(&self, grades: &[(IngredientAt, GradeAt)]) -> Self {
        let mut fixed = self.clone();
        for (at, grade) in grades {
            fixed.ingredients[at.0].grades = vec![*grade];
        }
        fixed
    }

    /// The most grades that can grow something at once (the size of a greatest matching of
    /// ingredients and grades, by augmenting paths).
    #[must_use]
    pub fn most_grades(&self) -> usize {
        let mut grown_by: Vec<Option<IngredientAt>> = vec![None; self.grades.len()];
        self.ingredient_positions()
            .filter(|at| {
                self.gives_to_another(*at, &mut grown_by, &mut vec![false; self.grades.len()])
            })
            .count()
    }

    /// How many grades the file gives an ingredient that no other grade may grow.
    #[must_use]
    pub fn grades_with_their_own(&self) -> usize {
        let only = self.ingredients.iter().filter_map(Ingredient::only_grade);
        only.collect::<BTreeSet<_>>().len()
    }

    /// Gives an ingredient to a grade that has none yet, if need be by moving others on.
    fn gives_to_another(
        &self,
        at: IngredientAt,
        grown_by: &mut [Option<IngredientAt>],
        seen: &mut [bool],
    ) -> bool {
        for GradeAt(grade) in &self[at].grades {
            if std::mem::replace(&mut seen[*grade], true) {
                continue;
            }
            let free = match grown_by[*grade] {
                None => true,
                Some(other) => self.gives_to_another(other, grown_by, seen),
            };
            if free {
                grown_by[*grade] = Some(at);
                return true;
            }
        }
        false
    }

    /// True if no grade ever grows two ingredients: as many grades as there are ingredients
    /// must grow something.
    #[must_use]
    pub fn each_grade_grows_one(&self) -> bool {
        self.most_grades() == self.ingredients.len()
    }
}
