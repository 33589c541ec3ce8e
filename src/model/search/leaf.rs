//! The end of a branch: a point or none.

use crate::candidates::CandidateAt;
use crate::model::board::Board;
use crate::model::layout::{Chosen, Ground, MOST_STEPS, Packed, pack};
use crate::model::point;
use crate::model::program::{Section, value};
use crate::model::too_much::too_much;

use super::state::Search;

impl Search<'_> {
    /// Everything is decided: the point counts if all rows hold, it is better, and its plantings
    /// can be laid out.
    pub fn leaf(&mut self) {
        let Board {
            candidates,
            columns,
            ..
        } = self.board;
        let blocks = |k: usize| match columns.blocks[k] {
            Some(col) => self.domains.column(col.0).lo.round() as u32,
            None => candidates.all[k].amounts.blocks.0,
        };
        let chosen = self.chosen_candidates().map(|candidate| Chosen {
            candidate: CandidateAt(candidate),
            blocks: blocks(candidate),
        });
        let chosen: Vec<Chosen> = chosen.collect();
        let values = point::values(self.board, &chosen);
        let found = value(&self.goal.objective.terms, &values);
        let cost = if self.goal.objective.maximise {
            -found
        } else {
            found
        };
        if !self.rows_hold(&values) || !self.is_better(cost) || !self.fits(&chosen) {
            return;
        }
        self.rows.lower_objective(cost - self.gain());
        self.best = Some((cost, values));
    }

    fn is_better(&self, cost: f64) -> bool {
        self.rows.objective().is_some_and(|row| cost <= row.rhs)
    }

    /// True if the point keeps all rows; those about what is forbidden follow from its layout.
    fn rows_hold(&self, values: &[f64]) -> bool {
        let sections = self.board.program.sections();
        let mut rows = sections
            .filter(|(section, _)| *section != Section::Forbidden)
            .flat_map(|(_, rows)| rows);
        let held = rows.all(|row| value(&row.terms, values) <= row.rhs + 1e-6);
        let mut columns = self.board.program.columns().iter().zip(values);
        held && columns.all(|(c, v)| c.lo - 1e-6 <= *v && *v <= c.hi + 1e-6)
    }

    /// True if plantings can be laid out; what clashes is learned.
    fn fits(&mut self, chosen: &[Chosen]) -> bool {
        let Board {
            garden, candidates, ..
        } = self.board;
        match pack(&Ground::of(garden, candidates, chosen), MOST_STEPS) {
            Packed::Found(_) => return true,
            Packed::Unknown => self.sure = false,
            Packed::Impossible => {
                let set = too_much(garden, candidates, chosen);
                self.forbid(&set);
                self.learned.push(set);
            }
        }
        false
    }
}
