//! Puts plantings on the strips of their plots: one piece where a free run is long enough.

use crate::candidates::Candidates;
use crate::garden::{Garden, Plot};
use crate::plan::Place;

use super::layout::{Chosen, Part};

/// The places of each chosen planting. Plantings are placed by first day, so that a strip is
/// free for one as soon as its last user is gone; the strips that a layout counts suffice.
#[must_use]
pub fn places(
    garden: &Garden,
    candidates: &Candidates,
    chosen: &[Chosen],
    parts: &[Vec<Part>],
) -> Vec<Vec<Place>> {
    let mut free_from: Vec<Vec<usize>> = candidates
        .plots
        .iter()
        .map(|p| vec![0; p.strips as usize])
        .collect();
    let mut places = vec![Vec::new(); chosen.len()];
    let mut order: Vec<usize> = (0..chosen.len()).collect();
    order.sort_by_key(|k| (candidates.all[chosen[*k].candidate].bed_days.0, *k));
    for which in order {
        let candidate = &candidates.all[chosen[which].candidate];
        for part in &parts[which] {
            let block = candidate.amounts.block.strips;
            let strips = &mut free_from[part.plot];
            let runs = free_runs(strips, candidate.bed_days.0);
            let taken = choose(&runs, part.blocks * block, block);
            for (from, n) in taken {
                strips[from..from + n].fill(candidate.bed_days.1 + 1);
                places[which].push(place(garden, &candidates.plots[part.plot], from, n));
            }
        }
        places[which].sort();
    }
    places
}

/// Runs of strips that are free from a day on: first strip and length.
fn free_runs(free_from: &[usize], day: usize) -> Vec<(usize, usize)> {
    let mut runs: Vec<(usize, usize)> = Vec::new();
    for (strip, free) in free_from.iter().enumerate() {
        if *free > day {
            continue;
        }
        match runs.last_mut() {
            Some((first, n)) if *first + *n == strip => *n += 1,
            _ => runs.push((strip, 1)),
        }
    }
    runs
}

/// Takes `strips` from the runs: from the shortest run that holds all, else whole blocks from
/// the longest runs, else whatever is free.
fn choose(runs: &[(usize, usize)], strips: u32, block: u32) -> Vec<(usize, usize)> {
    let strips = strips as usize;
    if let Some((first, _)) = runs
        .iter()
        .filter(|r| r.1 >= strips)
        .min_by_key(|r| (r.1, r.0))
    {
        return vec![(*first, strips)];
    }
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
            return taken;
        }
    }
    Vec::new()
}

fn place(garden: &Garden, plot: &Plot, from: usize, strips: usize) -> Place {
    Place {
        bed: garden[plot.bed].id.clone(),
        first_strip: plot.first_strip + from as u32 + 1,
        strips: strips as u32,
    }
}
