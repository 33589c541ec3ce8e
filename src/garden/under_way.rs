//! What a season that is under way asks of a garden: what has begun, and which strips are still full of what was lost.

use crate::calendar::Date;

use super::Garden;
use super::at::{BedAt, IngredientAt};
use super::season::{Printed, PrintedAt};
use super::strips::Strips;

impl Garden {
    /// The printed plantings of an ingredient that have begun; none before the season is under way.
    pub fn begun_of(&self, at: IngredientAt) -> impl Iterator<Item = (PrintedAt, &Printed)> {
        self.season.iter().flat_map(move |s| s.begun_of(at))
    }

    /// The first day on which strips are free of what was lost there; `None` if nothing was.
    #[must_use]
    pub fn free_of_lost(&self, bed: BedAt, strips: Strips) -> Option<Date> {
        let clearing = self.season.iter().flat_map(|season| &season.clearing);
        let here = clearing.filter(|lost| lost.bed == bed && lost.strips.meets(strips));
        here.map(|lost| lost.free_from).max()
    }
}
