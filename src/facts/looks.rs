//! The look of what a plan holds: cloth and form by name, and of what stands together.

use crate::plan::Stand;

use super::Facts;
use super::cloth::{Cloth, Form};

impl Facts<'_> {
    /// The cloth of an ingredient; that of the first for a name that is not known.
    #[must_use]
    pub fn cloth_of(&self, name: &str) -> Cloth {
        let at = self.garden.ingredient_named(name);
        let own = at.and_then(|at| self.cloths().get(at.0).copied());
        own.unwrap_or(Cloth { hue: 0, weave: 0 })
    }

    /// The cloth of what stands together: that of the first planting.
    #[must_use]
    pub fn cloth_of_stand(&self, stand: &Stand) -> Cloth {
        let first = stand.plantings.first();
        let planting = first.and_then(|at| self.plan.planting(*at));
        self.cloth_of(planting.map_or("", |p| &p.ingredient))
    }

    /// The form of an ingredient.
    #[must_use]
    pub fn form_of(&self, name: &str) -> Form {
        let at = self.garden.ingredient_named(name);
        at.map_or(Form::Leaves, |at| Form::of(&self.garden[at].crop))
    }
}
