//! Depth first: what is decided next, and how the search goes on and comes back.

use std::cmp::Reverse;

use crate::candidates::CandidateAt;

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Bounds, Dead, Domains};
use super::state::Search;

/// The clock is looked at after so many steps, some hundredths of a second.
const STEPS_PER_LOOK: u64 = 5_000_000;

/// What is decided next.
enum Next {
    Group(GroupAt),
    Column { column: VarAt, high_first: bool },
    Nothing,
}

impl Search<'_> {
    /// Searches until nothing is left, or a limit is passed.
    pub fn run(&mut self) {
        self.rows.look_at_all();
        if self.narrow().is_err() {
            return;
        }
        let mark = self.mark();
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
        for group in self.domains.groups() {
            for option in self.domains.options(group).collect::<Vec<OptionAt>>() {
                if self.is_over() {
                    return Ok(());
                }
                if !self.domains.is_open(option) || self.domains.ways(group) == 1 {
                    continue;
                }
                let mark = self.mark();
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
        if self.rows.steps >= self.looked_at + STEPS_PER_LOOK {
            self.looked_at = self.rows.steps;
            self.over_limit |= self.limit.deadline.is_over();
        }
        self.over_limit |= self.rows.steps > self.limit.steps || self.nodes > self.most_nodes;
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
            Next::Nothing => {
                self.leaf();
                // A layout can take as long as many rows.
                self.over_limit |= self.limit.deadline.is_over();
            }
        }
    }

    /// Goes on with a change, and takes it back.
    fn assume(&mut self, change: impl FnOnce(&mut Domains) -> Result<(), Dead>) {
        let mark = self.mark();
        if change(&mut self.domains).is_ok() && self.narrow().is_ok() {
            self.descend();
        }
        self.go_back(mark);
    }

    /// Goes through the options of a group, the cheapest first and of these what is ready most often; each is closed when it is done with.
    /// That there is none comes last, but of a further sowing first: most need none, and what is not
    /// made needs no room.
    fn options_of(&mut self, group: GroupAt) {
        let mut order: Vec<OptionAt> = self.domains.options(group).collect();
        let further = order.first().is_some_and(|option| self.is_further(*option));
        let ready = |option: &OptionAt| {
            self.board.candidates[self.way(*option).candidate]
                .ready
                .len()
        };
        order.sort_by_key(|option| Reverse(ready(option)));
        order.sort_by(|a, b| self.way(*a).cost.total_cmp(&self.way(*b).cost));
        let mut order: Vec<Option<OptionAt>> = order.into_iter().map(Some).collect();
        order.insert(if further { 0 } else { order.len() }, None);
        for option in order {
            let open = match option {
                Some(option) => self.domains.is_open(option),
                None => self.domains.may_have_none(group),
            };
            if !open {
                continue;
            }
            self.assume(|domains| domains.choose(group, option));
            if self.is_over() {
                return;
            }
            let left = match option {
                Some(option) => self.domains.close(option),
                None => self.domains.close_none(group),
            };
            if left.is_err() || self.narrow_late().is_err() {
                self.rows.forget(&mut self.domains);
                return;
            }
        }
    }

    /// True if an option is that of a second sowing, or a later one.
    fn is_further(&self, option: OptionAt) -> bool {
        let CandidateAt(candidate) = self.way(option).candidate;
        self.options[candidate].first() != Some(&option)
    }

    /// Goes on with an end of a column's values, then with the rest of them.
    fn halves_of(&mut self, column: VarAt, high_first: bool) {
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

    /// The group with the fewest ways against the branches that its rows have ended; then blocks.
    fn next(&mut self) -> Next {
        let mut best: Option<(f64, GroupAt)> = None;
        for group in self.domains.groups() {
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
        let more = self.goal.objective.maximise;
        let mut blocks = self.made().filter_map(|way| way.blocks);
        match blocks.find(|column| !self.domains.column(*column).is_fixed()) {
            // Few blocks are easier to lay out, but where amounts are the goal they are it.
            Some(column) => Next::Column {
                column,
                high_first: more && !self.goal.whole,
            },
            None => Next::Nothing,
        }
    }
}
