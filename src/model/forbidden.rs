//! Sets of plantings that cannot be laid out together, as rows.

use crate::candidates::{Candidate, CandidateAt, Candidates};
use crate::garden::Garden;

use super::columns::Columns;
use super::program::{Col, Program, Terms};

/// A column that is 1 where a planting is made with so many blocks. Where one is 1, so is the column
/// that stands for it in rows.
#[derive(Debug, Clone, PartialEq)]
pub struct Reached {
    /// The column.
    pub col: Col,
    /// Candidates that reach the number, with the number of blocks.
    pub by: Vec<(CandidateAt, u32)>,
}

/// Forbids a set of plantings that cannot be laid out together, and with it every set of
/// plantings that take at least as much: each planting, with its fewest blocks, stands for all of
/// its ingredient that stand at least as long, on no more plots, with at least as many strips
/// (`stands_in_for`). `fewest` are the blocks that each candidate has at least, under what is held.
///
/// Where a candidate may have fewer blocks than are too many, or more than one of them may be made,
/// the part has a column of its own.
/// Gives back these columns.
pub fn forbid(
    program: &mut Program,
    garden: &Garden,
    (candidates, columns): (&Candidates, &Columns),
    fewest: &[u32],
    set: &[Candidate],
) -> Vec<Reached> {
    let mut row = Vec::new();
    let mut reached = Vec::new();
    for planting in set {
        let blocks = planting.amounts.blocks.0;
        let once = garden[planting.ingredient].most_plantings() == 1;
        let all = candidates.numbered();
        let alike: Vec<CandidateAt> = all
            .filter(|(_, c)| c.amounts.blocks.1 >= blocks)
            .filter(|(_, c)| stands_in_for(c, planting, set))
            .map(|(k, _)| k)
            .collect();
        // Made is as many as is too many: the columns themselves say it, and closer than a new one.
        if (once || alike.len() == 1) && alike.iter().all(|k| fewest[k.0] >= blocks) {
            row.extend(alike.iter().map(|k| (columns.made[k.0], 1.0)));
            continue;
        }
        let col = program.binary();
        let each = alike.iter();
        let each = each.map(|k| reaches(candidates, columns, fewest[k.0], *k, blocks));
        // One row says it closer, but holds only where no two of them are made.
        let rows: Vec<Terms> = match once {
            true => vec![each.flatten().collect()],
            false => each.collect(),
        };
        for mut terms in rows {
            terms.push((col, -1.0));
            program.at_most(terms, 0.0);
        }
        row.push((col, 1.0));
        let by = alike.into_iter().map(|k| (k, blocks)).collect();
        reached.push(Reached { col, by });
    }
    program.at_most(row, set.len() as f64 - 1.0);
    reached
}

/// Terms that are more than 0, and at most 1, where a candidate is made with at least so many
/// blocks, and else not more than 0.
fn reaches(
    candidates: &Candidates,
    columns: &Columns,
    fewest: u32,
    which: CandidateAt,
    blocks: u32,
) -> Terms {
    let made = columns.made[which.0];
    match columns.blocks[which.0] {
        Some(col) if fewest < blocks => {
            let most = candidates[which].amounts.blocks.1;
            // Nothing at one block too few, 1 at the most blocks that there may be, and more than nothing between.
            let weight = 1.0 / f64::from(most - blocks + 1);
            vec![(col, weight), (made, -weight * f64::from(blocks - 1))]
        }
        _ => vec![(made, 1.0)],
    }
}

/// True if a set of plantings is as impossible with `c` in the place of one of them: `c` takes at
/// least as much. Of two sowings of one ingredient each stands only for itself, or one planting could
/// be taken for both.
#[must_use]
pub fn stands_in_for(c: &Candidate, planting: &Candidate, set: &[Candidate]) -> bool {
    let mut others = set.iter().filter(|p| !p.is_same_planting(planting));
    let alone = others.all(|p| p.ingredient != planting.ingredient);
    alone && stands_as_long(c, planting) || c.is_same_planting(planting)
}

/// True if `c` takes at least the days and the choice of plots that `other` takes.
fn stands_as_long(c: &Candidate, other: &Candidate) -> bool {
    c.ingredient == other.ingredient
        && c.bed_days.0 <= other.bed_days.0
        && c.bed_days.1 >= other.bed_days.1
        && other.plots.covers(c.plots)
        && c.amounts.block == other.amounts.block
}
