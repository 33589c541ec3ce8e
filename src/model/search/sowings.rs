//! What a search knows beforehand of the sowings of one ingredient, and of plantings that do not go
//! together.

use crate::candidates::Candidate;
use crate::garden::IngredientAt;
use crate::model::board::Board;
use crate::model::columns::{Ready, of};
use crate::model::forbidden::stands_in_for;

use super::at::{GroupAt, VarAt};
use super::never::{Never, Part, Reach};
use super::rows::Row;
use super::state::Search;
use super::years::{Harvest, Years};

/// The ready years of an ingredient, whose sowings have these groups.
#[must_use]
pub fn years(board: &Board<'_>, at: IngredientAt, groups: &[GroupAt]) -> Years {
    let ingredient = &board.garden[at];
    let least = ingredient.target(board.garden.feast.portions) * ingredient.least_share.0;
    let plantings = of(&board.candidates, at).map(|(_, c)| Harvest {
        ready: c.ready.words().to_vec(),
        // One sowing feeds everyone, and what two are not enough for a third may make up.
        shares: match groups.len() {
            2 => f64::from(c.amounts.blocks.1) * (c.amounts.low / least),
            _ => 1.0,
        },
    });
    let columns = &board.columns;
    let dish_in = columns
        .dish
        .iter()
        .map(|(alike, col)| (VarAt(col.0), alike.years.words().to_vec()));
    Years {
        groups: groups.to_vec(),
        plantings: plantings.collect(),
        own: match columns.ready[at.0] {
            Ready::AsPlanted => None,
            Ready::Decided { years, .. } => Some(VarAt(years.0)),
        },
        dish: VarAt(columns.dish_years.0),
        dish_in: dish_in.collect(),
    }
}

impl Search<'_> {
    /// From now on a set of plantings is not made.
    pub fn forbid(&mut self, set: &[Candidate]) {
        let Board { candidates, .. } = self.board;
        let mut parts = Vec::new();
        for planting in set {
            let alike = candidates.numbered();
            let alike = alike.filter(|(_, c)| stands_in_for(c, planting, set));
            let mut plantings = Vec::new();
            for (k, c) in alike {
                plantings.extend(self.options[k.0].iter().map(|option| Reach {
                    option: *option,
                    blocks: self.way(*option).blocks,
                    fixed: f64::from(c.amounts.blocks.0),
                }));
            }
            if plantings.is_empty() {
                return;
            }
            let mut groups: Vec<GroupAt> = plantings
                .iter()
                .map(|r| self.domains.group_of(r.option))
                .collect();
            groups.sort_unstable();
            groups.dedup();
            parts.push(Part {
                groups,
                blocks: f64::from(planting.amounts.blocks.0),
                plantings,
            });
        }
        self.rows.add_late(Row::Never(Never { parts }));
    }
}
