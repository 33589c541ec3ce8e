//! A board as groups and rows.

use crate::candidates::{Candidate, CandidateAt};
use crate::model::board::Board;
use crate::model::columns::of;
use crate::model::forbidden::stands_as_long;
use crate::model::program::Section;

use super::domains::{Bounds, Domains};
use super::linear::{Linear, Owner};
use super::never::{Never, Part, Reach};
use super::rows::{Row, Rows};
use super::state::{Goal, Limit, Search};

impl<'a> Search<'a> {
    /// A search of a board that has not begun.
    #[must_use]
    pub fn new(board: &'a Board<'a>, goal: &Goal<'a>, limit: Limit) -> Self {
        let Board {
            garden,
            candidates: all,
            columns,
            program,
            ..
        } = board;
        let mut owner = vec![None; program.columns().len()];
        let mut options = vec![None; all.all.len()];
        let mut candidates = Vec::new();
        let mut sizes = Vec::new();
        for at in garden.ingredient_positions() {
            if garden[at].most_plantings() > 1 {
                continue;
            }
            let first = candidates.len();
            for (CandidateAt(k), _) in of(all, at) {
                let option = candidates.len();
                options[k] = Some(option);
                owner[columns.made[k].0] = Some(Owner::Is(option));
                for col in columns.blocks[k].iter().chain(&columns.level_up[k]) {
                    owner[col.0] = Some(Owner::Of(option));
                }
                candidates.push(k);
            }
            sizes.push(candidates.len() - first);
        }
        let bounds = program.columns().iter().map(|c| Bounds {
            lo: c.lo,
            hi: c.hi,
            whole: c.whole,
        });
        let domains = Domains::new(bounds.collect(), &sizes);
        let sign = if goal.objective.maximise { -1.0 } else { 1.0 };
        let costs = costs(goal, sign, &owner, candidates.len());
        // So many branches cost about what probing costs, which most programs do not need.
        let most_nodes = candidates.len() as u64;
        let mut search = Self {
            board,
            goal: *goal,
            limit,
            candidates,
            options,
            costs,
            rows: Rows::new(domains.groups(), owner.len()),
            best: None,
            learned: Vec::new(),
            nodes: 0,
            most_nodes,
            over_limit: false,
            sure: true,
            domains,
        };
        search.add_rows(&owner, sign);
        search
    }

    fn add_rows(&mut self, owner: &[Option<Owner>], sign: f64) {
        let terms = self.goal.objective.terms.iter();
        let cost = terms.map(|(col, weight)| (col.0, sign * weight));
        let better = self.goal.better_than.map(|v| sign * v - self.gain());
        let rhs = better.unwrap_or(f64::MAX);
        let cost = Linear::new(cost, rhs, owner, &self.domains).exact();
        self.rows.add(Row::Linear(cost));
        for (section, rows) in self.board.program.sections() {
            // What is forbidden is added as sets, which say more than their rows.
            let rows = rows.iter().filter(|_| section != Section::Forbidden);
            for row in rows {
                let terms = row.terms.iter().map(|(col, weight)| (col.0, *weight));
                let row = Linear::new(terms, row.rhs, owner, &self.domains);
                self.rows.add(Row::Linear(row));
            }
        }
        for set in &self.board.forbidden {
            self.forbid(set);
        }
    }

    /// From now on a set of plantings is not made. One of an ingredient of several sowings is left
    /// to the leaves.
    pub fn forbid(&mut self, set: &[Candidate]) {
        let all = &self.board.candidates.all;
        let mut parts = Vec::new();
        for planting in set {
            let alike = all.iter().enumerate();
            let alike = alike.filter(|(_, c)| stands_as_long(c, planting));
            let plantings: Option<Vec<Reach>> = alike
                .map(|(k, c)| {
                    Some(Reach {
                        option: self.options[k]?,
                        blocks: self.board.columns.blocks[k].map(|col| col.0),
                        fixed: f64::from(c.amounts.blocks.0),
                    })
                })
                .collect();
            let Some(plantings) = plantings else { return };
            let Some(first) = plantings.first() else {
                return;
            };
            parts.push(Part {
                group: self.domains.group_of(first.option),
                blocks: f64::from(planting.amounts.blocks.0),
                plantings,
            });
        }
        self.rows.add_late(Row::Never(Never { parts }));
    }
}

/// What each option adds to the cost, by itself.
fn costs(goal: &Goal<'_>, sign: f64, owner: &[Option<Owner>], options: usize) -> Vec<f64> {
    let mut costs = vec![0.0; options];
    for (col, weight) in &goal.objective.terms {
        if let Some(Owner::Is(option)) = owner[col.0] {
            costs[option] += sign * weight;
        }
    }
    costs
}
