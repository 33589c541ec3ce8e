//! The first search for a layout: each planting in one piece where that can be, on beds that suit
//! the wished rotation. It looks at the likely ways only, so what it does not find may still be.

use crate::candidates::{Candidate, Candidates, PlotAt, breaks_wish};
use crate::garden::Garden;
use crate::model::rules::wish_broken;

use super::chosen::{Chosen, Part, Parts, PieceAt};
use super::ground::{Ground, Load, Piece};

/// Splitting a planting costs as much as this many broken rotation wishes.
const SPLIT_PRICE: u32 = 10;
/// The search looks at this many placings at the most; then it takes the best it has.
const MOST_NODES: u32 = 20_000;

/// The cheapest of the likely layouts, if one holds all plantings.
#[must_use]
pub fn neat(garden: &Garden, candidates: &Candidates, chosen: &[Chosen]) -> Option<Parts> {
    let ground = Ground::of(garden, candidates, chosen);
    let mut order: Vec<PieceAt> = ground.positions().collect();
    order.sort_by_key(|k| {
        let Piece { plots, blocks, .. } = &ground[*k];
        let strips = ground.strips_of(*k, *blocks);
        (plots.iter().count(), std::cmp::Reverse(strips))
    });
    let of = |PieceAt(k): PieceAt| &candidates[chosen[k].candidate];
    let wishes = |k: PieceAt| {
        let others = ground.positions().filter(|other| *other != k);
        others
            .filter(|other| breaks_wish(garden, of(k), of(*other)))
            .collect()
    };
    let mut search = Search {
        wishes: ground.positions().map(wishes).collect(),
        garden,
        candidates,
        chosen,
        order,
        loads: (0..ground.plots.len())
            .map(|p| ground.empty(PlotAt(p)))
            .collect(),
        ground: &ground,
        parts: vec![Vec::new(); chosen.len()],
        best: None,
        nodes: 0,
    };
    search.place(0, 0);
    search.best.map(|(_, parts)| parts)
}

/// Depth first over the plantings, the cheapest placings first.
struct Search<'a> {
    garden: &'a Garden,
    candidates: &'a Candidates,
    chosen: &'a [Chosen],
    ground: &'a Ground,
    /// Per planting: those that had better not have its strips before or after it.
    wishes: Vec<Vec<PieceAt>>,
    order: Vec<PieceAt>,
    /// What stands on each plot.
    loads: Vec<Load>,
    parts: Parts,
    best: Option<(u32, Parts)>,
    nodes: u32,
}

impl Search<'_> {
    fn place(&mut self, depth: usize, price: u32) {
        if self.best.as_ref().is_some_and(|(best, _)| *best <= price) || self.nodes > MOST_NODES {
            return;
        }
        self.nodes += 1;
        let Some(&which) = self.order.get(depth) else {
            self.best = Some((price, self.parts.clone()));
            return;
        };
        let candidates = self.candidates;
        let c = &candidates[self.chosen[which.0].candidate];
        for parts in self.placings(c, which) {
            let wishes = parts.iter().filter(|p| self.breaks_wish(c, which, p));
            let more = wishes.count() as u32 + (parts.len().max(1) as u32 - 1) * SPLIT_PRICE;
            for part in &parts {
                self.loads[part.plot.0].put(self.ground, which, part.blocks);
            }
            self.parts[which.0].clone_from(&parts);
            self.place(depth + 1, price + more);
            for part in &parts {
                self.loads[part.plot.0].take_off(self.ground, which, part.blocks);
            }
        }
    }

    /// True if the family was on the plot before the plan within its wished years, or the plot is
    /// too short to keep it off what the plan has there of it.
    fn breaks_wish(&self, c: &Candidate, which: PieceAt, part: &Part) -> bool {
        let load = &self.loads[part.plot.0];
        let others = self.wishes[which.0].iter().map(|k| (*k, load.blocks[k.0]));
        let apart: u32 = others.map(|(k, n)| self.ground.strips_of(k, n)).sum();
        let own = self.ground.strips_of(which, part.blocks);
        wish_broken(self.garden, c, &self.candidates[part.plot])
            || apart > 0 && apart + own > self.ground.plots[part.plot.0]
    }

    /// Ways to place a planting: whole on each plot that holds it (those without a broken
    /// wish first, then those it fills best), else shared out over the roomiest.
    fn placings(&self, c: &Candidate, which: PieceAt) -> Vec<Vec<Part>> {
        if c.plots.is_empty() {
            return vec![Vec::new()];
        }
        let blocks = self.ground[which].blocks;
        let room = |plot: PlotAt| self.loads[plot.0].room(self.ground, which).blocks;
        let mut room: Vec<(PlotAt, u32)> = c.plots.iter().map(|p| (p, room(p))).collect();
        let wish = |plot: PlotAt| self.breaks_wish(c, which, &Part { plot, blocks });
        let mut whole: Vec<(PlotAt, u32)> =
            room.iter().copied().filter(|(_, r)| *r >= blocks).collect();
        whole.sort_by_key(|(plot, room)| (wish(*plot), *room, *plot));
        let mut placings: Vec<Vec<Part>> = whole
            .into_iter()
            .map(|(plot, _)| vec![Part { plot, blocks }])
            .collect();
        room.sort_by_key(|(plot, room)| (std::cmp::Reverse(*room), *plot));
        let mut left = blocks;
        let mut shared = Vec::new();
        for (plot, room) in room {
            let blocks = room.min(left);
            if blocks > 0 {
                shared.push(Part { plot, blocks });
                left -= blocks;
            }
        }
        if left == 0 && shared.len() > 1 {
            placings.push(shared);
        }
        placings
    }
}
