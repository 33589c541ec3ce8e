//! Sets of plantings that cannot be laid out together, as rows.

use crate::candidates::{Candidate, Candidates};
use crate::garden::Garden;

use super::columns::Columns;
use super::program::Program;

/// Forbids a set of plantings that cannot be laid out together, and with it every set of
/// plantings that take at least as much: each planting stands for all of its ingredient that
/// stand at least as long, on no more plots, with at least as many strips. Of an ingredient of
/// several sowings it stands for itself: two that take as much may do without the others.
pub fn forbid(
    program: &mut Program,
    garden: &Garden,
    candidates: &Candidates,
    columns: &Columns,
    set: &[Candidate],
) {
    let once = |c: &Candidate| garden[c.ingredient].most_plantings() == 1;
    let mut row = Vec::new();
    for planting in set {
        for (k, c) in candidates.all.iter().enumerate() {
            let as_large = once(planting) && takes_as_much(c, planting);
            if as_large || c.is_same_planting(planting) {
                row.push((columns.made[k], 1.0));
            }
        }
    }
    program.at_most(row, set.len() as f64 - 1.0);
}

/// True if `c` takes at least the strips, days and choice of plots that `other` takes.
fn takes_as_much(c: &Candidate, other: &Candidate) -> bool {
    c.ingredient == other.ingredient
        && c.bed_days.0 <= other.bed_days.0
        && c.bed_days.1 >= other.bed_days.1
        && other.plots.covers(c.plots)
        && c.amounts.block == other.amounts.block
        && c.amounts.blocks.0 >= other.amounts.blocks.0
}
