//! What a search knows beforehand of the sowings of one ingredient, and of plantings that do not go
//! together.

use crate::candidates::{Candidate, fewest_for_one};
use crate::garden::IngredientAt;
use crate::model::board::Board;
use crate::model::columns::{Ready, of};
use crate::model::forbidden::stands_in_for;

use super::at::{GroupAt, OptionAt, VarAt};
use super::never::{Never, Part, Reach};
use super::rows::Row;
use super::state::{Search, Way};
use super::years::{Harvest, MOST_IN_PAIRS, Words, Years};

impl Search<'_> {
    /// The ready years of an ingredient, whose sowings have these groups.
    #[must_use]
    pub fn years(&self, at: IngredientAt, groups: &[GroupAt]) -> Years {
        let Board {
            garden,
            candidates,
            columns,
            ..
        } = self.board;
        let least = garden[at].least(garden.feast.portions);
        let mut sets: Vec<Words> = Vec::new();
        let mut plantings: Vec<Vec<Harvest>> = groups.iter().map(|_| Vec::new()).collect();
        for (k, c) in of(candidates, at) {
            let words = c.ready.words();
            let ready = sets.iter().position(|set| set == words);
            let ready = ready.unwrap_or_else(|| {
                sets.push(words.to_vec());
                sets.len() - 1
            });
            let share = c.amounts.low / least;
            for (option, plantings) in self.options[k.0].iter().zip(&mut plantings) {
                plantings.push(Harvest {
                    reach: self.reach(*option),
                    ready,
                    share,
                    // One sowing feeds everyone, and what two are not enough for a third may make up.
                    enough: match garden[at].most_plantings() {
                        MOST_IN_PAIRS => f64::from(fewest_for_one(share)),
                        _ => 0.0,
                    },
                });
            }
        }
        let dish_in = columns.dish.iter();
        let dish_in = dish_in.map(|(alike, col)| (VarAt(col.0), alike.years.words().to_vec()));
        Years {
            groups: groups.to_vec(),
            plantings,
            sets,
            only_years: self.board.only_years && groups.len() == MOST_IN_PAIRS as usize,
            own: match columns.ready[at.0] {
                Ready::AsPlanted => None,
                Ready::Decided { years, .. } => Some(VarAt(years.0)),
            },
            worst: VarAt(columns.worst_years.0),
            dish: VarAt(columns.dish_years.0),
            dish_in: dish_in.collect(),
        }
    }

    /// An option with its blocks.
    fn reach(&self, option: OptionAt) -> Reach {
        let Way {
            candidate, blocks, ..
        } = *self.way(option);
        Reach {
            option,
            blocks,
            fixed: f64::from(self.board.candidates[candidate].amounts.blocks.0),
        }
    }

    /// From now on a set of plantings is not made.
    pub fn forbid(&mut self, set: &[Candidate]) {
        let Board { candidates, .. } = self.board;
        let mut parts = Vec::new();
        for planting in set {
            let alike = candidates.numbered();
            let alike = alike.filter(|(_, c)| stands_in_for(c, planting, set));
            let mut plantings = Vec::new();
            for (k, _) in alike {
                let options = self.options[k.0].iter();
                plantings.extend(options.map(|option| self.reach(*option)));
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
