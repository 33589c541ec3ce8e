//! The end of a branch: a point or none.

use crate::model::board::Board;
use crate::model::layout::{Chosen, Ground, MOST_STEPS, Packed, pack};
use crate::model::point;
use crate::model::program::value;
use crate::model::too_much::too_much;

use super::state::Search;

/// To give up a packing takes about as long as to look at so many terms.
const GAVE_UP: u64 = 20 * MOST_STEPS;

impl Search<'_> {
    /// Everything is decided: the point counts if all rows hold, it is better, and its plantings
    /// can be laid out.
    pub fn leaf(&mut self) {
        let chosen = self.plantings();
        let values = point::values(self.board, &chosen);
        let found = value(&self.goal.objective.terms, &values);
        let cost = if self.goal.objective.maximise {
            -found
        } else {
            found
        };
        if !self.is_better(cost) || !point::keeps_rows(self.board, &values) || !self.fits(&chosen) {
            return;
        }
        self.rows.lower_objective(cost - self.gain());
        self.best = Some((cost, values));
    }

    fn is_better(&self, cost: f64) -> bool {
        self.rows.objective().is_some_and(|row| cost <= row.rhs)
    }

    /// True if plantings can be laid out; what clashes is learned.
    fn fits(&mut self, chosen: &[Chosen]) -> bool {
        let Board {
            garden, candidates, ..
        } = self.board;
        match pack(&Ground::of(garden, candidates, chosen), MOST_STEPS) {
            Packed::Found(_) => return true,
            Packed::Unknown => {
                self.sure = false;
                self.rows.steps += GAVE_UP;
            }
            Packed::Impossible => {
                let set = too_much(garden, candidates, chosen);
                self.forbid(&set);
                self.learned.push(set);
            }
        }
        false
    }
}
