//! Rotation: beds that carried a family too recently are no place of any candidate, so there
//! are no rows. Wished years beyond that have a price when plantings are laid out.

use crate::candidates::Candidate;
use crate::garden::{Garden, Plot};
use crate::model::program::Program;

use crate::model::setting::Setting;

/// Adds the rows of the rule: none.
pub fn add_rows(_program: &mut Program, setting: &Setting<'_>) {
    debug_assert!(setting.candidates.all.iter().all(|c| {
        let crop = &setting.garden[c.ingredient].crop;
        c.plots.iter().all(|p| {
            let bed = &setting.garden[setting.candidates.plots[p].bed];
            c.steps
                .into_bed()
                .is_none_or(|day| !bed.is_tired_of(crop, day))
        })
    }));
}

/// True if a planting on a plot keeps the hard years of its family, but not the wished ones.
#[must_use]
pub fn wish_broken(garden: &Garden, candidate: &Candidate, plot: &Plot) -> bool {
    let crop = &garden[candidate.ingredient].crop;
    let day = candidate.steps.into_bed();
    let years = day.and_then(|day| garden[plot.bed].years_since(crop, day));
    years.is_some_and(|years| years <= crop.rotation.years_wished)
}
