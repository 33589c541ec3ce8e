//! Which plots the chosen plantings stand on, and on which strips: each in one piece where
//! that can be, on beds that suit the wished rotation, next to nothing of its own elsewhere.

use crate::candidates::{Candidate, Candidates, fullest};
use crate::garden::Garden;

use super::program::{Col, Program, Terms};
use super::rules::wish_broken;
use super::solver::{Deadline, Objective, Unsolved, solve};

/// A planting to be placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chosen {
    /// Position of the candidate.
    pub candidate: usize,
    /// How many blocks.
    pub blocks: u32,
}

/// Blocks of a planting on a plot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// Position of the plot.
    pub plot: usize,
    /// How many blocks.
    pub blocks: u32,
}

/// The parts of each planting, in order.
pub type Parts = Vec<Vec<Part>>;

/// Splitting a planting costs as much as this many broken rotation wishes.
const SPLIT_PRICE: u32 = 10;
/// The search looks at this many placings at the most; then it takes the best it has.
const MOST_NODES: u32 = 20_000;

/// The parts of each chosen planting, in order; `None` if there is no way to place them all.
///
/// # Errors
/// Neither a layout nor a proof that there is none was found.
pub fn lay_out(
    garden: &Garden,
    candidates: &Candidates,
    chosen: &[Chosen],
    deadline: &Deadline,
) -> Result<Option<Parts>, Unsolved> {
    let days = fullest(chosen.iter().map(|c| candidates.all[c.candidate].bed_days));
    let free = candidates
        .plots
        .iter()
        .map(|p| vec![p.strips; days.len()])
        .collect();
    let mut order: Vec<usize> = (0..chosen.len()).collect();
    order.sort_by_key(|k| {
        let c = &candidates.all[chosen[*k].candidate];
        (
            c.plots.iter().count(),
            std::cmp::Reverse(chosen[*k].blocks * c.amounts.block.strips),
        )
    });
    let parts = vec![Vec::new(); chosen.len()];
    let mut search = Search {
        garden,
        candidates,
        chosen,
        order,
        days,
        free,
        parts,
        best: None,
        nodes: 0,
    };
    search.place(0, 0);
    match search.best {
        Some((_, parts)) => Ok(Some(parts)),
        None => any_layout(candidates, chosen, &search.days, deadline),
    }
}

/// Depth first over the plantings, the cheapest placings first.
struct Search<'a> {
    garden: &'a Garden,
    candidates: &'a Candidates,
    chosen: &'a [Chosen],
    order: Vec<usize>,
    /// The days on which beds are fullest.
    days: Vec<usize>,
    /// Per plot and such day: strips that are free.
    free: Vec<Vec<u32>>,
    parts: Vec<Vec<Part>>,
    best: Option<(u32, Vec<Vec<Part>>)>,
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
        let Chosen { candidate, blocks } = self.chosen[which];
        let candidates = self.candidates;
        let c = &candidates.all[candidate];
        for parts in self.placings(c, blocks) {
            let wishes = parts
                .iter()
                .filter(|p| wish_broken(self.garden, c, &candidates.plots[p.plot]));
            let more = wishes.count() as u32 + (parts.len().max(1) as u32 - 1) * SPLIT_PRICE;
            self.take(c, &parts);
            self.parts[which].clone_from(&parts);
            self.place(depth + 1, price + more);
            self.give_back(c, &parts);
        }
    }

    /// Ways to place a planting: whole on each plot that holds it (those without a broken
    /// wish first, then those it fills best), else shared out over the roomiest.
    fn placings(&self, c: &Candidate, blocks: u32) -> Vec<Vec<Part>> {
        if c.plots.is_empty() {
            return vec![Vec::new()];
        }
        let mut room: Vec<(usize, u32)> = c
            .plots
            .iter()
            .map(|p| (p, self.blocks_free(c, p)))
            .collect();
        let wish = |plot: usize| wish_broken(self.garden, c, &self.candidates.plots[plot]);
        let mut whole: Vec<(usize, u32)> =
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

    /// Positions of the days on which a planting stands.
    fn stands(&self, c: &Candidate) -> std::ops::Range<usize> {
        let (from, to) = c.bed_days;
        self.days.partition_point(|day| *day < from)..self.days.partition_point(|day| *day <= to)
    }

    /// Whole blocks that fit on a plot for as long as a planting stands.
    fn blocks_free(&self, c: &Candidate, plot: usize) -> u32 {
        let free = &self.free[plot][self.stands(c)];
        free.iter().min().copied().unwrap_or(0) / c.amounts.block.strips.max(1)
    }

    fn take(&mut self, c: &Candidate, parts: &[Part]) {
        let days = self.stands(c);
        for part in parts {
            for free in &mut self.free[part.plot][days.clone()] {
                *free -= part.blocks * c.amounts.block.strips;
            }
        }
    }

    fn give_back(&mut self, c: &Candidate, parts: &[Part]) {
        let days = self.stands(c);
        for part in parts {
            for free in &mut self.free[part.plot][days.clone()] {
                *free += part.blocks * c.amounts.block.strips;
            }
        }
    }
}

/// Any way to share the plantings out over their plots, exactly, as a small program.
fn any_layout(
    candidates: &Candidates,
    chosen: &[Chosen],
    days: &[usize],
    deadline: &Deadline,
) -> Result<Option<Parts>, Unsolved> {
    let mut program = Program::default();
    let mut on_plots: Vec<Vec<(usize, Col)>> = Vec::new();
    for c in chosen {
        let plots = candidates.all[c.candidate].plots.iter();
        let blocks: Vec<_> = plots.map(|p| (p, program.whole(0, c.blocks))).collect();
        if !blocks.is_empty() {
            let all = blocks.iter().map(|(_, col)| (*col, 1.0)).collect();
            program.at_least(all, f64::from(c.blocks));
        }
        on_plots.push(blocks);
    }
    for (plot, place) in candidates.plots.iter().enumerate() {
        for day in days {
            let mut used = Terms::new();
            for (c, blocks) in chosen.iter().zip(&on_plots) {
                let candidate = &candidates.all[c.candidate];
                if (candidate.bed_days.0..=candidate.bed_days.1).contains(day) {
                    let strips = f64::from(candidate.amounts.block.strips);
                    let here = blocks.iter().filter(|(p, _)| *p == plot);
                    used.extend(here.map(|(_, col)| (*col, strips)));
                }
            }
            program.at_most(used, f64::from(place.strips));
        }
    }
    let none = Objective::none();
    let solved = match solve(&program, &none, None, deadline.left_for_small()) {
        Ok(solved) => solved,
        Err(Unsolved::Infeasible) => return Ok(None),
        Err(other) => return Err(other),
    };
    let parts = |blocks: &Vec<(usize, Col)>| {
        let parts = blocks.iter().map(|(plot, col)| Part {
            plot: *plot,
            blocks: solved.values[col.0] as u32,
        });
        parts.filter(|part| part.blocks > 0).collect()
    };
    Ok(Some(on_plots.iter().map(parts).collect()))
}
