//! Puts plantings on the strips of their plots: one piece where a free run is long enough.

use crate::candidates::{Candidates, breaks_wish};
use crate::garden::{Garden, Plot};
use crate::plan::Place;

use super::chains::{Use, chains};
use super::chosen::{Chosen, Part};
use super::ground::Ground;

/// Neighbouring strips of a plot: the first, from 0, and how many.
type Run = (usize, usize);

/// The places of each chosen planting; `None` if some plot cannot hold its parts, or none was
/// found. A plot that holds its parts in a layout holds them here.
#[must_use]
pub fn places(
    garden: &Garden,
    candidates: &Candidates,
    chosen: &[Chosen],
    parts: &[Vec<Part>],
) -> Option<Vec<Vec<Place>>> {
    let ground = Ground::of(garden, candidates, chosen);
    let of = |k: usize| &candidates.all[chosen[k].candidate];
    let unwished = |a: usize, b: usize| breaks_wish(garden, of(a), of(b));
    let mut places = vec![Vec::new(); chosen.len()];
    for (at, plot) in candidates.plots.iter().enumerate() {
        let blocks = parts.iter().map(|parts| {
            let here = parts.iter().filter(|part| part.plot == at);
            here.map(|part| part.blocks).sum()
        });
        let blocks: Vec<u32> = blocks.collect();
        let uses = ground.uses(&blocks);
        let runs = in_time(&ground, &uses, plot.strips, &unwished);
        for (planting, runs) in runs.or_else(|| by_chains(&ground, &uses, plot.strips))? {
            let places: &mut Vec<Place> = &mut places[planting];
            places.extend(runs.into_iter().map(|run| place(garden, plot, run)));
        }
    }
    for places in &mut places {
        places.sort();
    }
    Some(places)
}

/// Plantings in order of time, each on the runs that suit it best; `None` if one of them finds no
/// room, which only happens where families must wait. Strips of which another piece is an
/// unwished forerunner are taken only if the rest does not hold a piece whole.
fn in_time(
    ground: &Ground,
    uses: &[Use],
    strips: u32,
    unwished: impl Fn(usize, usize) -> bool,
) -> Option<Vec<(usize, Vec<Run>)>> {
    let mut carried: Vec<Vec<usize>> = vec![Vec::new(); strips as usize];
    let mut placed = Vec::new();
    for planting in uses {
        let is_free = |strip: &usize| {
            let mut before = carried[*strip].iter();
            before.all(|other| !ground.clash(*other, planting.piece))
        };
        let is_wished = |strip: &usize| {
            let mut before = carried[*strip].iter();
            is_free(strip) && before.all(|other| !unwished(*other, planting.piece))
        };
        let block = ground.pieces[planting.piece].strips;
        let wished = whole(&free_runs(carried.len(), is_wished), planting.strips);
        let runs = wished.map(|run| vec![run]);
        let runs =
            runs.or_else(|| choose(&free_runs(carried.len(), is_free), planting.strips, block))?;
        for (from, n) in &runs {
            let taken = &mut carried[*from..*from + *n];
            taken
                .iter_mut()
                .for_each(|strip| strip.push(planting.piece));
        }
        placed.push((planting.piece, runs));
    }
    Some(placed)
}

/// The same by trying everything. Strips that carry the same lie side by side.
fn by_chains(ground: &Ground, uses: &[Use], strips: u32) -> Option<Vec<(usize, Vec<Run>)>> {
    let mut carried = chains(uses, strips, |a, b| ground.clash(a, b)).ok()??;
    carried.sort();
    let runs = |planting: &Use| {
        let carries = |strip: &usize| carried[*strip].contains(&planting.piece);
        (planting.piece, free_runs(carried.len(), carries))
    };
    Some(uses.iter().map(runs).collect())
}

/// The longest runs of strips for which something holds.
fn free_runs(strips: usize, holds: impl Fn(&usize) -> bool) -> Vec<Run> {
    let mut runs: Vec<Run> = Vec::new();
    for strip in (0..strips).filter(holds) {
        match runs.last_mut() {
            Some((first, n)) if *first + *n == strip => *n += 1,
            _ => runs.push((strip, 1)),
        }
    }
    runs
}

/// The first of the shortest runs that hold so many strips.
fn whole(runs: &[Run], strips: u32) -> Option<Run> {
    let strips = strips as usize;
    let long = runs.iter().filter(|r| r.1 >= strips);
    let shortest = long.min_by_key(|r| (r.1, r.0));
    shortest.map(|(first, _)| (*first, strips))
}

/// Takes `strips` from the runs: from the shortest run that holds all, else whole blocks from
/// the longest runs, else whatever is free.
fn choose(runs: &[Run], strips: u32, block: u32) -> Option<Vec<Run>> {
    if let Some(run) = whole(runs, strips) {
        return Some(vec![run]);
    }
    let strips = strips as usize;
    for unit in [block.max(1) as usize, 1] {
        let mut longest = runs.to_vec();
        longest.sort_by_key(|r| (std::cmp::Reverse(r.1), r.0));
        let mut left = strips;
        let mut taken = Vec::new();
        for (first, n) in longest {
            let n = (n / unit * unit).min(left);
            if n > 0 {
                taken.push((first, n));
                left -= n;
            }
        }
        if left == 0 {
            return Some(taken);
        }
    }
    None
}

fn place(garden: &Garden, plot: &Plot, (from, strips): Run) -> Place {
    Place {
        bed: garden[plot.bed].id.clone(),
        first_strip: plot.first_strip + from as u32 + 1,
        strips: strips as u32,
    }
}
