//! How the plants of a crop stand in a bed: the smallest piece in which its rows come out whole, to scale.

use crate::garden::Ingredient;
use crate::growth::amount::Block;
use crate::plan::Planting;
use crate::units::{Centimetres, Metres, STRIP};

use super::Facts;
use super::ours::Ours;

/// A piece of bed with its plants. Rows run across the bed.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern<'a> {
    /// What stands there.
    pub ingredient: &'a Ingredient,
    /// The length of the piece along the bed.
    pub length: Metres,
    /// The width of the bed.
    pub width: Metres,
    /// How many rows there are in it.
    pub rows: u32,
    /// How many plants in a row.
    pub in_row: u32,
    /// From row to row.
    pub between_rows: Centimetres,
    /// From plant to plant in a row.
    pub apart: Centimetres,
}

impl Facts<'_> {
    /// The patterns of what a grade grows in beds, each ingredient once.
    #[must_use]
    pub fn patterns<'a>(&self, ours: &Ours<'a>) -> Vec<Pattern<'a>> {
        let mut all: Vec<Pattern<'a>> = Vec::new();
        for (planting, ingredient) in &ours.own {
            if all
                .iter()
                .all(|known| known.ingredient.name != ingredient.name)
            {
                all.extend(self.pattern(planting, ingredient));
            }
        }
        all
    }

    fn pattern<'a>(&self, planting: &Planting, ingredient: &'a Ingredient) -> Option<Pattern<'a>> {
        let place = planting.places.first()?;
        let bed = self.garden.beds.iter().find(|bed| bed.id == place.bed)?;
        let block = Block::of(&ingredient.crop, bed.width)?;
        let spacing = ingredient.crop.spacing;
        let length = STRIP * f64::from(block.strips);
        let rows = (length.0 * 100.0 / spacing.between_rows.0 + 0.01)
            .floor()
            .max(1.0) as u32;
        Some(Pattern {
            ingredient,
            length,
            width: bed.width,
            rows,
            in_row: block.plants / rows,
            between_rows: spacing.between_rows,
            apart: spacing.in_row,
        })
    }
}
