//! How the plants of a crop stand in a bed: the smallest piece in which its rows come out whole, to scale.

use crate::garden::{Ingredient, Rows};
use crate::growth::amount::Block;
use crate::plan::Planting;
use crate::units::{Centimetres, Metres, STRIP};

use super::Facts;
use super::ours::Ours;

/// How the rows of a piece lie.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lie {
    /// Across the bed.
    Across {
        /// How many there are in the piece.
        rows: u32,
        /// From row to row.
        between: Centimetres,
    },
    /// One row along a trellis.
    AlongTrellis,
}

/// A piece of bed with its plants.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern<'a> {
    /// What stands there.
    pub ingredient: &'a Ingredient,
    /// The length of the piece along the bed.
    pub length: Metres,
    /// The width of the bed.
    pub width: Metres,
    /// How its rows lie.
    pub lie: Lie,
    /// How many plants in a row.
    pub in_row: u32,
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
        let bed = &self.garden[self.garden.bed_with_id(&place.bed)?];
        let crop = &ingredient.crop;
        let block = Block::of(crop, bed.rows())?;
        let rows = block.rows(crop, bed.rows());
        Some(Pattern {
            ingredient,
            length: STRIP * f64::from(block.strips),
            width: bed.width,
            lie: match bed.rows() {
                Rows::Across(_) => Lie::Across {
                    rows,
                    between: crop.spacing.between_rows,
                },
                Rows::AlongTrellis => Lie::AlongTrellis,
            },
            in_row: block.plants / rows,
            apart: crop.spacing.in_row,
        })
    }
}
