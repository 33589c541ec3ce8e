//! What is known before a garden is searched: a plan of the same garden with less to choose is a
//! plan of it too. So more freedom never makes a plan worse, even where no search ends.

use crate::candidates::{Candidate, CandidateAt, Candidates};
use crate::plan::Aim;

use super::aims::objective;
use super::board::Board;
use super::layout::Chosen;
use super::point::{self, keeps_rows};
use super::program::value;

/// Plantings that can be laid out, each with its number of blocks as its fewest.
pub type Plantings = Vec<Candidate>;

/// The plantings of a choice, each with its blocks as its fewest.
#[must_use]
pub fn plantings(candidates: &Candidates, chosen: &[Chosen]) -> Plantings {
    let planting = |c: &Chosen| {
        let mut planting = candidates[c.candidate].clone();
        planting.amounts.blocks.0 = c.blocks;
        planting
    };
    chosen.iter().map(planting).collect()
}

/// What is known of a garden beforehand.
#[derive(Debug, Clone, Default)]
pub struct Known {
    /// Points that the aims of the same garden went through with less to choose, in order.
    pub points: Vec<Plantings>,
}

impl Known {
    /// The candidates with all plantings of the known points among them, and these as positions
    /// there, with no more and no fewer blocks than there may be. Points with plantings that are no
    /// candidate of `all` are left out.
    #[must_use]
    pub fn among(&self, all: &Candidates, few: &mut Candidates) -> Vec<Vec<Chosen>> {
        let mut positions = Vec::new();
        for point in &self.points {
            let same = |planting: &Candidate| {
                let same = |c: &&Candidate| planting.is_same_planting(c);
                let is_there = few.all.iter().any(|c| same(&c));
                (!is_there).then(|| all.all.iter().find(same))
            };
            let missing: Vec<Option<&Candidate>> = point.iter().filter_map(same).collect();
            let Some(missing) = missing.into_iter().collect::<Option<Vec<_>>>() else {
                continue;
            };
            few.all.extend(missing.into_iter().cloned());
            positions.push(point);
        }
        let of = |point: &Plantings| {
            let chosen = point.iter().filter_map(|planting| {
                let same = |c: &Candidate| planting.is_same_planting(c);
                let (candidate, c) = few.numbered().find(|(_, c)| same(c))?;
                let (least, most) = c.amounts.blocks;
                let blocks = planting.amounts.blocks.0.clamp(least, most);
                Some(Chosen { candidate, blocks })
            });
            chosen.collect()
        };
        positions.into_iter().map(of).collect()
    }
}

/// The best known point for an aim that keeps all rows of a board, if it is better than a value.
#[must_use]
pub fn better(board: &Board<'_>, aim: Aim, than: Option<f64>) -> Option<Vec<f64>> {
    let objective = objective(aim, &board.setting());
    let mut best: Option<(f64, Vec<f64>)> = None;
    for chosen in &board.known {
        let values = point::values(board, chosen);
        let found = value(&objective.terms, &values);
        let gains = |than: f64| match objective.maximise {
            true => found > than + 1e-6,
            false => found < than - 1e-6,
        };
        let known = best.as_ref().map(|(value, _)| *value).or(than);
        if known.is_none_or(gains) && keeps_rows(board, &values) {
            best = Some((found, values));
        }
    }
    best.map(|(_, values)| values)
}

/// The same plantings in another set of candidates that holds them.
#[must_use]
pub fn carried(from: &Candidates, chosen: &[Chosen], to: &Candidates) -> Vec<Chosen> {
    chosen
        .iter()
        .filter_map(|c| {
            let same = |other| from[c.candidate].is_same_planting(other);
            Some(Chosen {
                candidate: CandidateAt(to.all.iter().position(same)?),
                blocks: c.blocks,
            })
        })
        .collect()
}

/// Known points in another set of candidates; those that it does not hold are left out.
#[must_use]
pub fn carried_over(from: &Candidates, known: &[Vec<Chosen>], to: &Candidates) -> Vec<Vec<Chosen>> {
    let whole = |chosen: &Vec<Chosen>| {
        let there = carried(from, chosen, to);
        (there.len() == chosen.len()).then_some(there)
    };
    known.iter().filter_map(whole).collect()
}
