//! Which plots the chosen plantings stand on, and on which strips: each in one piece where
//! that can be, on beds that suit the wished rotation, next to nothing of its own elsewhere.

mod chains;
mod chosen;
mod ground;
mod neat;
mod packing;
mod strips;

use crate::candidates::{Candidates, PlotAt};
use crate::garden::Garden;

pub use chains::GaveUp;
pub use chosen::{Chosen, Part, Parts, PieceAt};
pub use ground::{Ground, Piece};
pub use neat::neat;
pub use packing::{Packed, pack};
pub use strips::places;

/// Packing takes so many steps at the most, some tenths of a second.
pub const MOST_STEPS: u64 = 1_000_000;

/// The parts of each chosen planting, in order; `None` if there is no way to place them all.
///
/// # Errors
/// Neither a layout nor a proof that there is none was found.
pub fn lay_out(
    garden: &Garden,
    candidates: &Candidates,
    chosen: &[Chosen],
) -> Result<Option<Parts>, GaveUp> {
    if let Some(parts) = neat(garden, candidates, chosen) {
        return Ok(Some(parts));
    }
    match pack(&Ground::of(garden, candidates, chosen), MOST_STEPS) {
        Packed::Found(plots) => Ok(Some(by_planting(&plots, chosen.len()))),
        Packed::Impossible => Ok(None),
        Packed::Unknown => Err(GaveUp),
    }
}

/// The parts of each planting, from the blocks of each on every plot.
fn by_planting(plots: &[Vec<u32>], plantings: usize) -> Parts {
    let parts = |planting: usize| {
        let all = plots.iter().enumerate().map(|(plot, blocks)| Part {
            plot: PlotAt(plot),
            blocks: blocks[planting],
        });
        all.filter(|part| part.blocks > 0).collect()
    };
    (0..plantings).map(parts).collect()
}
