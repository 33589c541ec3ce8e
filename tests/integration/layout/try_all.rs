//! Every way of giving the strips of some plots to blocks, one strip after the other, by code
//! that shares nothing with the model.

use tureen::candidates::PlotAt;
use tureen::model::{Ground, Piece, PieceAt};

/// Blocks, plots, and which pieces cannot have the same strip.
#[derive(Debug, Clone)]
pub struct Case {
    pub pieces: Vec<Piece>,
    pub plots: Vec<u32>,
    pub clash: Vec<Vec<bool>>,
}

impl Case {
    /// The same as the model takes it.
    pub fn ground(&self) -> Ground {
        let clash = |PieceAt(a), PieceAt(b)| -> bool { self.clash[a][b] };
        Ground::new(self.pieces.clone(), self.plots.clone(), clash)
    }
}

/// True if all blocks find strips.
pub fn fits(case: &Case) -> bool {
    let plots = case.plots.iter();
    let mut strips = plots.map(|n| vec![Vec::new(); *n as usize]).collect();
    blocks_from(case, 0, 0, &mut strips)
}

/// What each strip of each plot carries.
type Strips = Vec<Vec<Vec<usize>>>;

/// Places the blocks of a piece from the `done`th on, then the pieces after it.
fn blocks_from(case: &Case, piece: usize, done: u32, strips: &mut Strips) -> bool {
    let Some(wanted) = case.pieces.get(piece) else {
        return true;
    };
    if done == wanted.blocks {
        return blocks_from(case, piece + 1, 0, strips);
    }
    (0..case.plots.len())
        .filter(|plot| wanted.plots.has(PlotAt(*plot)))
        .any(|plot| strips_from(case, (piece, done), plot, (0, 0), strips))
}

/// Gives a block its strips on a plot from the strip `from` on, of which it has `taken`.
fn strips_from(
    case: &Case,
    (piece, done): (usize, u32),
    plot: usize,
    (taken, from): (u32, usize),
    strips: &mut Strips,
) -> bool {
    if taken == case.pieces[piece].strips {
        return blocks_from(case, piece, done + 1, strips);
    }
    let mut tried: Vec<Vec<usize>> = Vec::new();
    for strip in from..strips[plot].len() {
        let carried = strips[plot][strip].clone();
        // Of strips that carry the same one is as good as the other.
        if carried.iter().any(|other| case.clash[piece][*other]) || tried.contains(&carried) {
            continue;
        }
        tried.push(carried);
        strips[plot][strip].push(piece);
        let found = strips_from(case, (piece, done), plot, (taken + 1, strip + 1), strips);
        strips[plot][strip].pop();
        if found {
            return true;
        }
    }
    false
}

/// True if a packing puts all blocks on plots where they may be and no plot holds too much.
pub fn is_right(case: &Case, packed: &[Vec<u32>]) -> bool {
    let all = (0..case.pieces.len()).all(|k| {
        let blocks: u32 = packed.iter().map(|plot| plot[k]).sum();
        blocks == case.pieces[k].blocks
    });
    let holds = |(plot, blocks): (usize, &Vec<u32>)| {
        let mut alone = case.clone();
        alone.plots = vec![case.plots[plot]];
        for (piece, blocks) in alone.pieces.iter_mut().zip(blocks) {
            if *blocks > 0 && !piece.plots.has(PlotAt(plot)) {
                return false;
            }
            piece.blocks = *blocks;
            piece.plots = super::packing::plot_set(1, |_| true);
        }
        fits(&alone)
    };
    all && packed.iter().enumerate().all(holds)
}
