//! What plantings want of plots, without their names, and how much of it a plot holds.

use std::ops::{Index, Range};

use crate::candidates::{Candidates, PlotAt, PlotSet, clash, fullest};
use crate::garden::Garden;

use super::chains::{GaveUp, Use, chains};
use super::chosen::{Chosen, PieceAt};

/// Blocks of one planting.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Piece {
    /// How many blocks.
    pub blocks: u32,
    /// Strips of one block.
    pub strips: u32,
    /// The plots on which they may stand; if there are none, it has its place already.
    pub plots: PlotSet,
    /// First and last day in the bed.
    pub days: (usize, usize),
}

/// Plantings to be laid out.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// The plantings.
    pub pieces: Vec<Piece>,
    /// Strips of each plot.
    pub plots: Vec<u32>,
    /// How many days there are on which beds are fullest.
    days: usize,
    /// Per piece: those of these days on which it stands.
    stands: Vec<Range<usize>>,
    /// Per piece: pieces that never stand at the same time, and still cannot have the same strip.
    waits_for: Vec<Vec<PieceAt>>,
    /// True if there are no such pieces at all.
    nothing_waits: bool,
    /// Pieces in order of their first day.
    in_time: Vec<PieceAt>,
}

impl Ground {
    /// Pieces and plots; `clash` tells of two pieces whether no strip can carry both.
    #[must_use]
    pub fn new(
        pieces: Vec<Piece>,
        plots: Vec<u32>,
        clash: impl Fn(PieceAt, PieceAt) -> bool,
    ) -> Self {
        let days = fullest(pieces.iter().map(|p| p.days));
        let position = |day: usize| days.partition_point(|d| *d < day);
        let all = || (0..pieces.len()).map(PieceAt);
        let at_once = |PieceAt(a): PieceAt, PieceAt(b): PieceAt| at_once(&pieces[a], &pieces[b]);
        let waits = |a: PieceAt| {
            let others = all().filter(|b| *b != a);
            others.filter(|b| !at_once(a, *b) && clash(a, *b)).collect()
        };
        let mut in_time: Vec<PieceAt> = all().collect();
        in_time.sort_by_key(|k| (pieces[k.0].days, *k));
        let stands = |p: &Piece| position(p.days.0)..position(p.days.1 + 1);
        let waits_for: Vec<Vec<PieceAt>> = all().map(waits).collect();
        Self {
            nothing_waits: waits_for.iter().all(Vec::is_empty),
            waits_for,
            stands: pieces.iter().map(stands).collect(),
            days: days.len(),
            in_time,
            pieces,
            plots,
        }
    }

    /// Chosen plantings on the plots of their candidates.
    #[must_use]
    pub fn of(garden: &Garden, candidates: &Candidates, chosen: &[Chosen]) -> Self {
        let piece = |c: &Chosen| Piece {
            blocks: c.blocks,
            strips: candidates[c.candidate].amounts.block.strips,
            plots: candidates[c.candidate].plots,
            days: candidates[c.candidate].bed_days,
        };
        let of = |PieceAt(k): PieceAt| &candidates[chosen[k].candidate];
        Self::new(
            chosen.iter().map(piece).collect(),
            candidates.plots.iter().map(|p| p.strips.count).collect(),
            |a, b| clash(garden, of(a), of(b)),
        )
    }

    /// True if no strip can carry both pieces.
    #[must_use]
    pub fn clash(&self, a: PieceAt, b: PieceAt) -> bool {
        at_once(&self[a], &self[b]) || self.waits_for[a.0].contains(&b)
    }

    /// The positions of all pieces.
    pub fn positions(&self) -> impl Iterator<Item = PieceAt> + Clone + use<> {
        (0..self.pieces.len()).map(PieceAt)
    }

    /// A plot with nothing on it.
    #[must_use]
    pub fn empty(&self, PlotAt(plot): PlotAt) -> Load {
        Load {
            strips: self.plots[plot],
            free: vec![self.plots[plot]; self.days],
            blocks: vec![0; self.pieces.len()],
        }
    }

    /// Sets of pieces of which no two can have the same strip, each with all plots of its pieces:
    /// those that stand there on one of the fullest days, and those that wait for each other.
    #[must_use]
    pub fn crowds(&self) -> Vec<(Vec<PieceAt>, PlotSet)> {
        let on_day = |day: usize| -> Vec<PieceAt> {
            let all = self.positions();
            all.filter(|k| self.stands[k.0].contains(&day)).collect()
        };
        // Taken one by one, not the greatest such set: any of them holds, and a larger only says more.
        let family = |first: PieceAt| {
            let mut crowd = vec![first];
            for k in &self.waits_for[first.0] {
                if crowd.iter().all(|other| self.clash(*other, *k)) {
                    crowd.push(*k);
                }
            }
            crowd
        };
        let all = self.positions();
        let waiting = all.filter(|k| !self.waits_for[k.0].is_empty());
        let crowds = (0..self.days).map(on_day).chain(waiting.map(family));
        let plots = |crowd: &[PieceAt]| {
            let sets = crowd.iter().map(|k| self[*k].plots);
            sets.fold(PlotSet::default(), PlotSet::or)
        };
        crowds
            .map(|crowd| (plots(&crowd), crowd))
            .map(|(set, crowd)| (crowd, set))
            .collect()
    }

    /// The strips of so many blocks of a piece.
    #[must_use]
    pub fn strips_of(&self, piece: PieceAt, blocks: u32) -> u32 {
        blocks * self[piece].strips
    }

    /// True if a plot of so many strips, which suffice day by day, holds so many blocks of each
    /// piece.
    fn holds(&self, strips: u32, blocks: &[u32]) -> Result<bool, GaveUp> {
        let here = |k: &PieceAt| blocks[k.0] > 0;
        let (waiting, others): (Vec<PieceAt>, Vec<PieceAt>) = self
            .positions()
            .filter(here)
            .partition(|k| self.waits_for[k.0].iter().any(here));
        let strips_of = |k: &PieceAt| self.strips_of(*k, blocks[k.0]);
        // It does if those that wait had strips of their own all the time.
        let apart: u32 = waiting.iter().map(strips_of).sum();
        let on_day = |day: usize| {
            let standing = others.iter().filter(|k| self.stands[k.0].contains(&day));
            standing.map(strips_of).sum::<u32>()
        };
        // The most stand there on a day on which one of them comes.
        let comes = others.iter().map(|k| self.stands[k.0].start);
        let beside = comes.map(on_day).max().unwrap_or(0);
        if apart + beside <= strips {
            return Ok(true);
        }
        let found = chains(&self.uses(blocks), strips, |a, b| self.clash(a, b))?;
        Ok(found.is_some())
    }

    /// What stands on a plot, in order of time, if there is so much of each piece.
    #[must_use]
    pub fn uses(&self, blocks: &[u32]) -> Vec<Use> {
        let here = self.in_time.iter().filter(|k| blocks[k.0] > 0);
        here.map(|k| Use {
            piece: *k,
            strips: self.strips_of(*k, blocks[k.0]),
        })
        .collect()
    }
}

impl Index<PieceAt> for Ground {
    type Output = Piece;

    fn index(&self, PieceAt(piece): PieceAt) -> &Piece {
        &self.pieces[piece]
    }
}

/// True if there is a day on which both are in the bed.
fn at_once(a: &Piece, b: &Piece) -> bool {
    a.days.0 <= b.days.1 && b.days.0 <= a.days.1
}

/// What stands on one plot.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    strips: u32,
    /// Strips that are free on each of the fullest days.
    free: Vec<u32>,
    /// Blocks of each piece.
    pub blocks: Vec<u32>,
}

/// How many more blocks of a piece a plot holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Room {
    /// So many.
    pub blocks: u32,
    /// False if it may be more: the search for it was given up.
    pub sure: bool,
}

impl Load {
    /// How many more blocks of a piece the plot holds.
    #[must_use]
    pub fn room(&self, ground: &Ground, piece: PieceAt) -> Room {
        let strips = ground[piece].strips.max(1);
        let free = &self.free[ground.stands[piece.0].clone()];
        let by_day = free.iter().min().copied().unwrap_or(0);
        let waits = ground.waits_for[piece.0].iter();
        let beside = waits.map(|k| ground.strips_of(*k, self.blocks[k.0])).max();
        let most = by_day.min(self.strips.saturating_sub(beside.unwrap_or(0)));
        let mut room = Room {
            blocks: most / strips,
            sure: true,
        };
        if ground.nothing_waits {
            return room;
        }
        let mut with = self.blocks.clone();
        while room.blocks > 0 {
            with[piece.0] = self.blocks[piece.0] + room.blocks;
            match ground.holds(self.strips, &with) {
                Ok(true) => break,
                Ok(false) => {}
                Err(GaveUp) => room.sure = false,
            }
            room.blocks -= 1;
        }
        room
    }

    /// Puts blocks of a piece on the plot; the caller has seen that there is room.
    pub fn put(&mut self, ground: &Ground, piece: PieceAt, blocks: u32) {
        self.blocks[piece.0] += blocks;
        for free in &mut self.free[ground.stands[piece.0].clone()] {
            *free -= blocks * ground[piece].strips;
        }
    }

    /// Takes blocks of a piece off the plot again.
    pub fn take_off(&mut self, ground: &Ground, piece: PieceAt, blocks: u32) {
        self.blocks[piece.0] -= blocks;
        for free in &mut self.free[ground.stands[piece.0].clone()] {
            *free += blocks * ground[piece].strips;
        }
    }
}
