//! Puts plantings on the strips of their plots: one piece where a free run is long enough.

use crate::candidates::{Candidates, breaks_wish};
use crate::garden::{Garden, Strips};
use crate::plan::Place;

use super::chains::{Chain, Use, chains};
use super::chosen::{Chosen, Part, PieceAt};
use super::ground::Ground;

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
    let of = |PieceAt(k): PieceAt| &candidates[chosen[k].candidate];
    let unwished = |a: PieceAt, b: PieceAt| breaks_wish(garden, of(a), of(b));
    let mut places = vec![Vec::new(); chosen.len()];
    for (at, plot) in candidates.numbered_plots() {
        let blocks = parts.iter().map(|parts| {
            let here = parts.iter().filter(|part| part.plot == at);
            here.map(|part| part.blocks).sum()
        });
        let blocks: Vec<u32> = blocks.collect();
        let uses = ground.uses(&blocks);
        let runs = in_time(&ground, &uses, plot.strips, unwished);
        for (planting, runs) in runs.or_else(|| by_chains(&ground, &uses, plot.strips))? {
            let places: &mut Vec<Place> = &mut places[planting.0];
            let bed = &garden[plot.bed].id;
            places.extend(runs.into_iter().map(|run| Place::of(bed, run)));
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
    strips: Strips,
    unwished: impl Fn(PieceAt, PieceAt) -> bool,
) -> Option<Vec<(PieceAt, Vec<Strips>)>> {
    let mut carried: Vec<Chain> = vec![Vec::new(); strips.count as usize];
    let mut placed = Vec::new();
    for planting in uses {
        let is_free = |before: &[PieceAt]| {
            let mut before = before.iter();
            before.all(|other| !ground.clash(*other, planting.piece))
        };
        let is_wished = |before: &[PieceAt]| {
            let mut others = before.iter();
            is_free(before) && others.all(|other| !unwished(*other, planting.piece))
        };
        let block = ground[planting.piece].strips;
        let wished = whole(&runs(strips, &carried, is_wished), planting.strips);
        let chosen = wished.map(|run| vec![run]);
        let free = || runs(strips, &carried, is_free);
        let chosen = chosen.or_else(|| choose(&free(), planting.strips, block))?;
        let taken = strips.iter().zip(&mut carried);
        for (_, carries) in taken.filter(|(strip, _)| chosen.iter().any(|run| run.has(*strip))) {
            carries.push(planting.piece);
        }
        placed.push((planting.piece, chosen));
    }
    Some(placed)
}

/// The same by trying everything. Strips that carry the same lie side by side.
fn by_chains(ground: &Ground, uses: &[Use], strips: Strips) -> Option<Vec<(PieceAt, Vec<Strips>)>> {
    let mut carried = chains(uses, strips.count, |a, b| ground.clash(a, b)).ok()??;
    carried.sort();
    let placed = |planting: &Use| {
        let carries = |carried: &[PieceAt]| carried.contains(&planting.piece);
        (planting.piece, runs(strips, &carried, carries))
    };
    Some(uses.iter().map(placed).collect())
}

/// The longest runs of strips of which something holds of what each carries.
fn runs(strips: Strips, carried: &[Chain], holds: impl Fn(&[PieceAt]) -> bool) -> Vec<Strips> {
    let each = strips.iter().zip(carried);
    let own = each.filter(|(_, carries)| holds(carries));
    Strips::runs(own.map(|(strip, _)| strip))
}

/// The first of the shortest runs that hold so many strips.
fn whole(runs: &[Strips], strips: u32) -> Option<Strips> {
    let long = runs.iter().filter(|run| run.count >= strips);
    let shortest = long.min_by_key(|run| (run.count, run.first))?;
    Some(Strips {
        count: strips,
        ..*shortest
    })
}

/// Takes `strips` from the runs: from the shortest run that holds all, else whole blocks from
/// the longest runs, else whatever is free.
fn choose(runs: &[Strips], strips: u32, block: u32) -> Option<Vec<Strips>> {
    if let Some(run) = whole(runs, strips) {
        return Some(vec![run]);
    }
    // Whole blocks keep their rows in one piece; single strips only where there is no other way.
    for unit in [block.max(1), 1] {
        let mut longest = runs.to_vec();
        longest.sort_by_key(|run| (std::cmp::Reverse(run.count), run.first));
        let mut left = strips;
        let mut taken = Vec::new();
        for run in longest {
            let count = (run.count / unit * unit).min(left);
            if count > 0 {
                taken.push(Strips { count, ..run });
                left -= count;
            }
        }
        if left == 0 {
            return Some(taken);
        }
    }
    None
}
