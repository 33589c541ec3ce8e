//! What is sought, what was found, and a search under way.

use crate::candidates::{Candidate, CandidateAt};
use crate::model::board::Board;
use crate::model::layout::Chosen;
use crate::model::solver::{Deadline, Objective};

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};
use super::rows::Rows;

/// What is sought.
#[derive(Debug, Clone, Copy)]
pub struct Goal<'a> {
    /// What is made as great or as small as can be; any point will do if it has no terms.
    pub objective: &'a Objective,
    /// True if its values are whole.
    pub whole: bool,
    /// Only what is better than this is sought.
    pub better_than: Option<f64>,
}

/// When a search is given up.
#[derive(Debug, Clone, Copy)]
pub struct Limit {
    /// So many terms of rows are looked at.
    pub steps: u64,
    /// The last resort.
    pub deadline: Deadline,
}

/// What a search found.
#[derive(Debug, Clone, PartialEq)]
pub struct Searched {
    /// The best point, if one is better than what was known. It can be laid out.
    pub best: Option<Vec<f64>>,
    /// True if no point is better.
    pub complete: bool,
    /// Sets of plantings that were found not to go together.
    pub learned: Vec<Vec<Candidate>>,
    /// So many terms of rows were looked at.
    pub steps: u64,
}

/// A better value that is not whole is better by so much.
const LEAST_GAIN: f64 = 1e-6;

/// A candidate as one of an ingredient's sowings.
#[derive(Debug, Clone, Copy)]
pub struct Way {
    /// The candidate.
    pub candidate: CandidateAt,
    /// Its column of blocks in this sowing, where their number is decided.
    pub blocks: Option<VarAt>,
    /// What it adds to the cost, by itself.
    pub cost: f64,
}

/// Where a search stood.
#[derive(Debug, Clone, Copy)]
pub struct Mark {
    domains: usize,
    rows: usize,
}

/// A search under way.
pub struct Search<'a> {
    /// The board.
    pub board: &'a Board<'a>,
    /// What is sought.
    pub goal: Goal<'a>,
    /// When it is given up.
    pub limit: Limit,
    /// What is left open.
    pub domains: Domains,
    /// What each option is.
    pub ways: Vec<Way>,
    /// The options of each candidate, one for each sowing.
    pub options: Vec<Vec<OptionAt>>,
    /// The rows.
    pub rows: Rows,
    /// The best point and its cost; costs are to be small.
    pub best: Option<(f64, Vec<f64>)>,
    /// Sets that were found not to go together.
    pub learned: Vec<Vec<Candidate>>,
    /// The steps after which the clock was looked at last.
    pub looked_at: u64,
    /// Branches so far.
    pub nodes: u64,
    /// Branches at the most.
    pub most_nodes: u64,
    /// True once a limit was passed.
    pub over_limit: bool,
    /// False once a point was passed over of which it is not known whether it can be laid out.
    pub sure: bool,
}

impl Search<'_> {
    /// By how much a point must be better.
    #[must_use]
    pub fn gain(&self) -> f64 {
        if self.goal.whole {
            1.0 - 1e-4
        } else {
            LEAST_GAIN
        }
    }

    /// Looks at rows until none of them closes anything more.
    pub fn narrow(&mut self) -> Result<(), Dead> {
        self.rows.narrow(&mut self.domains)
    }

    /// The same with the rows that were added or changed since the search began.
    pub fn narrow_late(&mut self) -> Result<(), Dead> {
        self.rows.look_at_late();
        self.narrow()
    }

    /// Where the search stands.
    #[must_use]
    pub fn mark(&self) -> Mark {
        Mark {
            domains: self.domains.mark(),
            rows: self.rows.mark(),
        }
    }

    /// Takes all changes since a mark back.
    pub fn go_back(&mut self, mark: Mark) {
        self.rows.forget(&mut self.domains);
        self.domains.undo(mark.domains);
        self.rows.undo(mark.rows);
    }

    /// What an option is.
    #[must_use]
    pub fn way(&self, option: OptionAt) -> &Way {
        &self.ways[option.0]
    }

    /// The plantings that are made, where that is decided.
    pub fn made(&self) -> impl Iterator<Item = &Way> + '_ {
        let groups = self.domains.groups();
        let chosen = groups.filter_map(|group: GroupAt| self.domains.chosen(group));
        chosen.map(|option| self.way(option))
    }

    /// The same with the fewest blocks that are left.
    #[must_use]
    pub fn plantings(&self) -> Vec<Chosen> {
        let all = &self.board.candidates;
        let chosen = |way: &Way| Chosen {
            candidate: way.candidate,
            blocks: match way.blocks {
                Some(column) => self.domains.column(column).lo.round() as u32,
                None => all[way.candidate].amounts.blocks.0,
            },
        };
        self.made().map(chosen).collect()
    }
}
