//! What clashes of plantings that cannot be laid out: few of them, with as few blocks and as few
//! days as still do not fit. The less of it there is, the more it forbids.

use std::collections::BTreeSet;

use crate::candidates::{Candidate, CandidateAt, Candidates};
use crate::garden::Garden;

use super::layout::{Chosen, Ground, Packed, pack};

/// Each trial takes so many steps at the most; what it does not find is taken to fit.
const MOST_STEPS: u64 = 50_000;

/// A part of plantings that cannot be laid out that cannot be laid out either: none can be left out,
/// and of none there can be a block less. The fewest blocks of each are those that are too many.
#[must_use]
pub fn too_much(garden: &Garden, candidates: &Candidates, chosen: &[Chosen]) -> Vec<Candidate> {
    let mut set = TooMuch {
        garden,
        candidates,
        set: Vec::new(),
    };
    for c in chosen {
        let mut planting = candidates[c.candidate].clone();
        planting.amounts.blocks.0 = c.blocks;
        if !planting.plots.is_empty() {
            set.set.push(planting);
        }
    }
    set.leave_out();
    set.fewer_blocks();
    set.fewer_days();
    set.set
}

struct TooMuch<'a> {
    garden: &'a Garden,
    candidates: &'a Candidates,
    set: Vec<Candidate>,
}

impl TooMuch<'_> {
    /// Takes a change over if the plantings then still cannot be laid out.
    fn try_with(&mut self, change: impl FnOnce(&mut Vec<Candidate>)) -> bool {
        let mut set = self.set.clone();
        change(&mut set);
        let chosen = set.iter().enumerate().map(|(candidate, c)| Chosen {
            candidate: CandidateAt(candidate),
            blocks: c.amounts.blocks.0,
        });
        let chosen: Vec<Chosen> = chosen.collect();
        let mut trial = self.candidates.only(|_| false);
        trial.all = set;
        let ground = Ground::of(self.garden, &trial, &chosen);
        let stuck = pack(&ground, MOST_STEPS) == Packed::Impossible;
        if stuck {
            self.set = trial.all;
        }
        stuck
    }

    fn leave_out(&mut self) {
        let mut at = 0;
        while at < self.set.len() {
            if !self.try_with(|set| drop(set.remove(at))) {
                at += 1;
            }
        }
    }

    fn fewer_blocks(&mut self) {
        for at in 0..self.set.len() {
            while self.set[at].amounts.blocks.0 > 1 {
                if !self.try_with(|set| set[at].amounts.blocks.0 -= 1) {
                    break;
                }
            }
        }
    }

    /// Lets each begin later and end sooner, as other candidates of its ingredient do.
    fn fewer_days(&mut self) {
        for at in 0..self.set.len() {
            let (from, to) = self.set[at].bed_days;
            let all = self.candidates.all.iter();
            let own = all.filter(|c| c.ingredient == self.set[at].ingredient);
            let (begins, ends): (BTreeSet<usize>, BTreeSet<usize>) =
                own.map(|c| c.bed_days).unzip();
            let later = begins.range(from..=to).copied().collect();
            self.as_far(later, |set, day| set[at].bed_days.0 = day);
            let from = self.set[at].bed_days.0;
            let sooner = ends.range(from..=to).rev().copied().collect();
            self.as_far(sooner, |set, day| set[at].bed_days.1 = day);
        }
    }

    /// Goes as far along some days as the plantings still cannot be laid out. The longer a planting
    /// stays away, the likelier they can: the last such day is found by halving.
    fn as_far(&mut self, days: Vec<usize>, change: impl Fn(&mut Vec<Candidate>, usize)) {
        // What still cannot be laid out is taken over on the way.
        let _ = days.partition_point(|day| self.try_with(|set| change(set, *day)));
    }
}
