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

    /// The same project with no more than one sowing of each ingredient; `None` if it has no more
    /// anyway.
    #[must_use]
    pub fn with_one_sowing_each(&self) -> Option<Self> {
        let several = |i: &Ingredient| i.most_plantings() > 1;
        self.ingredients.iter().any(several).then(|| {
            let mut fewer = self.clone();
            for ingredient in &mut fewer.ingredients {
                ingredient.max_sowings = 1;
            }
            fewer
        })
    }

    /// The most grades that can grow something at once (the size of a greatest matching of
    /// ingredients and grades, by augmenting paths).
    #[must_use]
    pub fn most_grades(&self) -> usize {
        self.greatest_matching(&self.who_may_grow())
            .iter()
            .flatten()
            .count()
    }

    /// A grade for every ingredient, some of which are given, so that as many grades as can be with
    /// these grow something.
    #[must_use]
    pub fn share_out(&self, given: &[(IngredientAt, GradeAt)]) -> Vec<GradeAt> {
        let mut may = self.who_may_grow();
        for (at, grade) in given {
            may[at.0] = vec![*grade];
        }
        let matched = self.greatest_matching(&may);
        let own = |at: IngredientAt| {
            let grade = matched.iter().position(|grown| *grown == Some(at));
            grade.map(GradeAt).or(may[at.0].first().copied())
        };
        self.ingredient_positions().filter_map(own).collect()
    }

    /// The grades of which one grows each ingredient.
    fn who_may_grow(&self) -> Vec<Vec<GradeAt>> {
        self.ingredients.iter().map(|i| i.grades.clone()).collect()
    }

    /// By grade: the ingredient that is matched with it, in a greatest matching.
    fn greatest_matching(&self, may: &[Vec<GradeAt>]) -> Vec<Option<IngredientAt>> {
        let mut grown_by: Vec<Option<IngredientAt>> = vec![None; self.grades.len()];
        for at in self.ingredient_positions() {
            gives_to_another(may, at, &mut grown_by, &mut vec![false; self.grades.len()]);
        }
        grown_by
    }

    /// How many grades the file gives an ingredient that no other grade may grow.
    #[must_use]
    pub fn grades_with_their_own(&self) -> usize {
        let only = self.ingredients.iter().filter_map(Ingredient::only_grade);
        only.collect::<BTreeSet<_>>().len()
    }

    /// True if no grade ever grows two ingredients: as many grades as there are ingredients
    /// must grow something.
    #[must_use]
    pub fn each_grade_grows_one(&self) -> bool {
        self.most_grades() == self.ingredients.len()
    }
}

/// Gives an ingredient to a grade that has none yet, if need be by moving others on.
fn gives_to_another(
    may: &[Vec<GradeAt>],
    at: IngredientAt,
    grown_by: &mut [Option<IngredientAt>],
    seen: &mut [bool],
) -> bool {
    for GradeAt(grade) in &may[at.0] {
        if std::mem::replace(&mut seen[*grade], true) {
            continue;
        }
        let free = match grown_by[*grade] {
            None => true,
            Some(other) => gives_to_another(may, other, grown_by, seen),
        };
        if free {
            grown_by[*grade] = Some(at);
            return true;
        }
    }
    false
}
