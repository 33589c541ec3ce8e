//! Rotation: beds that carried a family too recently are no place of any candidate, so there
//! are no rows for them. Within the plan no strip carries a family twice within its years: where
//! these are as many as the plan's, all that the family takes in a set of plots is at most its
//! strips. Wished years have a price when plantings are laid out.

use crate::candidates::{Candidate, families};
use crate::garden::{Garden, IngredientAt, Plot};
use crate::model::program::Program;
use crate::model::setting::Setting;

use super::crowds::{self, Crowd, Who, plot_sets};
use super::needs;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    debug_assert!(setting.candidates.all.iter().all(|c| {
        let crop = &setting.garden[c.ingredient].crop;
        c.plots.iter().all(|p| {
            let plot = &setting.candidates[p];
            let tired = |day| {
                setting
                    .garden
                    .is_tired_of((plot.bed, plot.strips), crop, day)
            };
            !c.steps.into_bed().is_some_and(tired)
        })
    }));
    let short = short_of_strips(setting);
    crowds::add_rows(program, setting, &short);
    needs::add_least(program, setting, &short);
}

/// The plantings of a family within a set of plots, where strips can run short.
#[must_use]
pub fn short_of_strips(setting: &Setting<'_>) -> Vec<Crowd> {
    let garden = setting.garden;
    let sowings = |at: &IngredientAt| garden[*at].most_plantings();
    let families = families(garden, &setting.candidates.all);
    let mut short = Vec::new();
    for set in plot_sets(setting) {
        let several = families
            .values()
            .filter(|of_it| of_it.iter().map(sowings).sum::<u32>() > 1);
        short.extend(several.filter_map(|of_it| Crowd::new(setting, set, Who::Of(of_it.clone()))));
    }
    short
}

/// True if a planting on a plot keeps the hard years of its family, but not the wished ones.
#[must_use]
pub fn wish_broken(garden: &Garden, candidate: &Candidate, plot: &Plot) -> bool {
    let crop = &garden[candidate.ingredient].crop;
    let day = candidate.steps.into_bed();
    let years = day.and_then(|day| garden.years_since((plot.bed, plot.strips), crop, day));
    years.is_some_and(|passed| crop.rotation.should_wait(passed))
}
