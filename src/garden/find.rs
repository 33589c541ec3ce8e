//! Finds what a plan calls by name or id.

use super::Garden;
use super::at::{BedAt, ClassAt, GradeAt, IngredientAt};

impl Garden {
    /// The ingredient of a name.
    #[must_use]
    pub fn ingredient_named(&self, name: &str) -> Option<IngredientAt> {
        let mut all = self.ingredient_positions();
        all.find(|at| self[*at].name == name)
    }

    /// The grade of an id.
    #[must_use]
    pub fn grade_with_id(&self, id: &str) -> Option<GradeAt> {
        self.grade_positions().find(|at| self[*at].id == id)
    }

    /// The bed of an id.
    #[must_use]
    pub fn bed_with_id(&self, id: &str) -> Option<BedAt> {
        self.bed_positions().find(|at| self[*at].id == id)
    }

    /// The class of a name; no two classes of a school share one.
    #[must_use]
    pub fn class_named(&self, name: &str) -> Option<ClassAt> {
        let mut all = self.grade_positions().flat_map(|g| self.classes_of(g));
        all.find(|at| self.class(*at).name == name)
    }
}
