//! Depth first: what is decided next, and how the search goes on and comes back.

use crate::model::board::Board;

use super::domains::{Bounds, Dead, Domains};
use super::state::Search;

/// The clock is looked at after so many nodes.
const NODES_PER_LOOK: u64 = 64;

/// What is decided next.
enum Next {
    Group(usize),
    Column { column: usize, high_first: bool },
    Nothing,
}

impl Search<'_> {
    /// Searches until nothing is left, or a limit is passed.
    pub fn run(&mut self) {
        self.rows.look_at_all();
        if self.narrow().is_err() {
            return;
        }
        let mark = self.domains.mark();
        self.descend();
        if !self.over_limit || self.nodes <= self.most_nodes {
            return;
        }
        self.go_back(mark);
        (self.over_limit, self.most_nodes) = (false, u64::MAX);
        if self.narrow_late().is_ok() && self.probe().is_ok() {
            self.descend();
        }
    }

    /// Tries every option by itself and closes those that cannot be, until all are tried.
    fn probe(&mut self) -> Result<(), Dead> {
        for group in 0..self.domains.groups() {
            for option in self.domains.options(group).collect::<Vec<usize>>() {
                if self.is_over() {
                    return Ok(());
                }
                if !self.domains.is_open(option) || self.domains.ways(group) == 1 {
                    continue;
                }
                let mark = self.domains.mark();
                let possible = self.domains.choose(group, Some(option));
                let possible = possible.and_then(|()| self.narrow());
                self.go_back(mark);
                if possible.is_err() {
                    self.domains.close(option)?;
                    self.narrow()?;
                }
            }
        }
        Ok(())
    }

    fn is_over(&mut self) -> bool {
        let late = self.nodes.is_multiple_of(NODES_PER_LOOK) && self.limit.deadline.is_over();
        self.over_limit |=
            late || self.rows.steps > self.limit.steps || self.nodes > self.most_nodes;
        self.over_limit || self.goal.objective.terms.is_empty() && self.best.is_some()
    }

    fn descend(&mut self) {
        self.nodes += 1;
        if self.is_over() {
            return;
        }
        match self.next() {
            Next::Group(group) => self.options_of(group),
            Next::Column { column, high_first } => self.halves_of(column, high_first),
            Next::Nothing => self.leaf(),
        }
    }

    /// Goes on with a change, and takes it back.
    fn assume(&mut self, change: impl FnOnce(&mut Domains) -> Result<(), Dead>) {
        let mark = self.domains.mark();
        if change(&mut self.domains).is_ok() && self.narrow().is_ok() {
            self.descend();
        }
        self.go_back(mark);
    }

    /// Goes through the options of a group, the cheapest first; each is closed when it is done with.
    fn options_of(&mut self, group: usize) {
        let mut order: Vec<usize> = self.domains.options(group).collect();
        order.sort_by(|a, b| self.costs[*a].total_cmp(&self.costs[*b]));
        for option in order {
            if !self.domains.is_open(option) {
                continue;
            }
            self.assume(|domains| domains.choose(group, Some(option)));
            if self.is_over() {
                return;
            }
            let left = self.domains.close(option);
            if left.is_err() || self.narrow_late().is_err() {
                self.rows.forget(&mut self.domains);
                return;
            }
        }
        if self.domains.may_have_none(group) {
            self.assume(|domains| domains.choose(group, None));
        }
    }

    /// Goes on with an end of a column's values, then with the rest of them.
    fn halves_of(&mut self, column: usize, high_first: bool) {
        let Bounds { lo, hi, .. } = self.domains.column(column);
        self.assume(|domains| match high_first {
            true => domains.raise(column, hi),
            false => domains.lower(column, lo),
        });
        if self.is_over() {
            return;
        }
        self.rows.look_at_late();
        self.assume(|domains| match high_first {
            true => domains.lower(column, hi - 1.0),
            false => domains.raise(column, lo + 1.0),
        });
    }

    /// The group with the fewest ways against the branches that its rows have ended; then plantings
    /// of several sowings, then blocks.
    fn next(&mut self) -> Next {
        let mut best: Option<(f64, usize)> = None;
        for group in 0..self.domains.groups() {
            let ways = self.domains.ways(group);
            if ways == 1 {
                continue;
            }
            let score = ways as f64 / (1.0 + self.rows.ended_by(group));
            if best.is_none_or(|(least, _)| score < least) {
                best = Some((score, group));
            }
        }
        if let Some((_, group)) = best {
            return Next::Group(group);
        }
        let Board { columns, .. } = self.board;
        let open = |column: usize| !self.domains.column(column).is_fixed();
        let several = (0..self.options.len()).filter(|k| self.options[*k].is_none());
        let mut made = several.clone().map(|k| columns.made[k].0);
        let more = self.goal.objective.maximise;
        if let Some(column) = made.find(|column| open(*column)) {
            return Next::Column {
                column,
                high_first: more,
            };
        }
        let chosen = self.chosen_candidates();
        let mut blocks = chosen.filter_map(|k| columns.blocks[k]);
        match blocks.find(|col| open(col.0)) {
            // Few blocks are easier to lay out, but where amounts are the goal they are it.
            Some(col) => Next::Column {
                column: col.0,
                high_first: more && !self.goal.whole,
            },
            None => Next::Nothing,
        }
    }
}
