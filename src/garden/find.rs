//! Finds what a plan calls by name or id.

use super::at::{BedAt, ClassAt, GradeAt, IngredientAt};
use super::{Crop, Garden, Team};

impl Garden {
    /// The ingredient of a name.
    #[must_use]
    pub fn ingredient_named(&self, name: &str) -> Option<IngredientAt> {
        let mut all = self.ingredient_positions();
        all.find(|at| self[*at].name == name)
    }

    /// The crop of a name, in any case, if an ingredient is of it; with the school's own figures.
    #[must_use]
    pub fn crop_named(&self, name: &str) -> Option<&Crop> {
        let name = name.trim().to_lowercase();
        let mut crops = self.ingredients.iter().map(|ingredient| &ingredient.crop);
        crops.find(|crop| crop.name.to_lowercase() == name)
    }

    /// The grade of an id.
    #[must_use]
    pub fn grade_with_id(&self, id: &str) -> Option<GradeAt> {
        self.grade_positions().find(|at| self[*at].id == id)
    }

    /// The team of some grades by their ids; `None` if there is none, or one that is not known.
    #[must_use]
    pub fn team_with_ids(&self, ids: &[String]) -> Option<Team> {
        let grades = ids.iter().map(|id| self.grade_with_id(id));
        grades
            .collect::<Option<Team>>()
            .filter(|team| team.size() > 0)
    }

    /// The ids of a team's grades, in the order of the file.
    #[must_use]
    pub fn ids_of(&self, team: Team) -> Vec<String> {
        team.grades().map(|grade| self[grade].id.clone()).collect()
    }

    /// The grade of an id or a name, in any case.
    #[must_use]
    pub fn grade_called(&self, name: &str) -> Option<GradeAt> {
        let is_it = |own: &str| own.eq_ignore_ascii_case(name);
        self.grade_positions()
            .find(|at| is_it(&self[*at].id) || is_it(&self[*at].name))
    }

    /// The class of a name, in any case.
    #[must_use]
    pub fn class_called(&self, name: &str) -> Option<ClassAt> {
        let mut all = self.grade_positions().flat_map(|g| self.classes_of(g));
        all.find(|at| self.class(*at).name.eq_ignore_ascii_case(name))
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
