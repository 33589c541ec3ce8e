//! Whole blocks on plots, exactly. Plot after plot gets a set of blocks to which none can be added:
//! whatever packing there is can be made so from the first plot on, by moving blocks there from
//! later plots, which only makes room. A remainder that did not fit on the plots that were left is
//! remembered and not tried there again.

use std::collections::HashSet;

use crate::candidates::{PlotAt, PlotSet};

use super::chains::GaveUp;
use super::chosen::PieceAt;
use super::ground::{Ground, Load, Room};

/// What came of packing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Packed {
    /// Per plot: blocks of each piece.
    Found(Vec<Vec<u32>>),
    /// There is no way.
    Impossible,
    /// Neither was found within the limit of steps.
    Unknown,
}

/// Puts the blocks of all pieces on their plots, within a number of steps. Steps, not seconds:
/// the same blocks come out the same on a machine that is busy.
#[must_use]
pub fn pack(ground: &Ground, most_steps: u64) -> Packed {
    let used = |plot: &PlotAt| ground.pieces.iter().any(|p| p.plots.has(*plot));
    let all = (0..ground.plots.len()).map(PlotAt);
    let mut order: Vec<PlotAt> = all.filter(used).collect();
    let users = |plot: PlotAt| -> Vec<bool> {
        let users = ground.pieces.iter().map(|p| p.plots.has(plot));
        users.collect()
    };
    // Plots that few may use come first: little can be done wrong there. Those that are alike
    // stand together, so that the same remainders come again.
    order.sort_by_cached_key(|plot| {
        let users = users(*plot);
        let few = users.iter().filter(|user| **user).count();
        (few, users, ground.plots[plot.0], *plot)
    });
    let placed = |p: &super::ground::Piece| if p.plots.is_empty() { 0 } else { p.blocks };
    let left: Vec<u32> = ground.pieces.iter().map(placed).collect();
    let mut search = Search {
        ground,
        crowds: ground.crowds(),
        order,
        failed: HashSet::new(),
        packed: vec![vec![0; left.len()]; ground.plots.len()],
        steps: 0,
        most_steps,
        sure: true,
    };
    match search.from(0, &left) {
        Ok(true) => Packed::Found(search.packed),
        Ok(false) if search.sure => Packed::Impossible,
        Ok(false) | Err(GaveUp) => Packed::Unknown,
    }
}

struct Search<'a> {
    ground: &'a Ground,
    /// Pieces of which no two can have the same strip, with all their plots.
    crowds: Vec<(Vec<PieceAt>, PlotSet)>,
    /// The plots, in the order in which they are filled.
    order: Vec<PlotAt>,
    /// Blocks left over that do not fit on the plots from a place in the order on.
    failed: HashSet<(usize, Vec<u32>)>,
    packed: Vec<Vec<u32>>,
    steps: u64,
    most_steps: u64,
    /// False once a plot was taken to hold less than it may.
    sure: bool,
}

impl Search<'_> {
    /// Packs what is left on the plots from a place in the order on.
    fn from(&mut self, at: usize, left: &[u32]) -> Result<bool, GaveUp> {
        if left.iter().all(|blocks| *blocks == 0) {
            for plot in &self.order[at..] {
                self.packed[plot.0].fill(0);
            }
            return Ok(true);
        }
        self.step()?;
        if self.order.len() == at || !self.may_fit(at, left) {
            return Ok(false);
        }
        let state = (at, left.to_vec());
        if self.failed.contains(&state) {
            return Ok(false);
        }
        let mut load = self.ground.empty(self.order[at]);
        let found = self.fill(at, PieceAt(0), left, &mut load)?;
        if !found {
            self.failed.insert(state);
        }
        Ok(found)
    }

    fn step(&mut self) -> Result<(), GaveUp> {
        self.steps += 1;
        if self.steps > self.most_steps {
            return Err(GaveUp);
        }
        Ok(())
    }

    /// False if what is left cannot fit on the plots that are left: a piece by itself, or pieces
    /// that want strips of their own.
    fn may_fit(&self, at: usize, left: &[u32]) -> bool {
        let Ground { pieces, plots, .. } = self.ground;
        let rest = || self.order[at..].iter();
        let alone = pieces.iter().zip(left).all(|(piece, blocks)| {
            let own = rest().filter(|plot| piece.plots.has(**plot));
            *blocks == 0 || *blocks <= own.map(|plot| plots[plot.0] / piece.strips.max(1)).sum()
        });
        let strips = |set: &PlotSet| -> u32 {
            let own = rest().filter(|plot| set.has(**plot));
            own.map(|plot| plots[plot.0]).sum()
        };
        let wanted = |crowd: &[PieceAt]| -> u32 {
            let strips = crowd.iter().map(|k| self.ground.strips_of(*k, left[k.0]));
            strips.sum()
        };
        let mut crowds = self.crowds.iter();
        alone && crowds.all(|(crowd, set)| wanted(crowd) <= strips(set))
    }

    /// Puts blocks of the pieces from `piece` on on a plot, as many as it holds first, and what is
    /// left on the plots after it.
    fn fill(
        &mut self,
        at: usize,
        piece: PieceAt,
        left: &[u32],
        load: &mut Load,
    ) -> Result<bool, GaveUp> {
        let plot = self.order[at];
        let Some(wanted) = left.get(piece.0) else {
            return self.go_on(at, left, load);
        };
        let most = self.room(plot, piece, load).min(*wanted);
        // As many as there is room for first: what is full leaves the least over.
        for blocks in (0..=most).rev() {
            self.step()?;
            load.put(self.ground, piece, blocks);
            let found = self.fill(at, PieceAt(piece.0 + 1), left, load);
            load.take_off(self.ground, piece, blocks);
            if found? {
                return Ok(true);
            }
        }
        Ok(false)
    }

    /// Goes on to the next plot, unless something more could stand on this one.
    fn go_on(&mut self, at: usize, left: &[u32], load: &Load) -> Result<bool, GaveUp> {
        let plot = self.order[at];
        for piece in self.ground.positions() {
            // Not full: the same with more on this plot is tried as well, and is no worse.
            let is_left = load.blocks[piece.0] < left[piece.0];
            if is_left && self.room(plot, piece, load) > 0 {
                return Ok(false);
            }
        }
        let here = left.iter().zip(&load.blocks);
        let rest: Vec<u32> = here.map(|(left, blocks)| left - blocks).collect();
        let found = self.from(at + 1, &rest)?;
        if found {
            self.packed[plot.0].clone_from(&load.blocks);
        }
        Ok(found)
    }

    /// How many more blocks of a piece a plot holds.
    fn room(&mut self, plot: PlotAt, piece: PieceAt, load: &Load) -> u32 {
        if !self.ground[piece].plots.has(plot) {
            return 0;
        }
        let Room { blocks, sure } = load.room(self.ground, piece);
        self.sure &= sure;
        blocks
    }
}
