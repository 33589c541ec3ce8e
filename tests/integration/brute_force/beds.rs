//! Whether plantings can really be shared out over the plots: every way of putting whole
//! blocks on plots is tried, day by day.

use super::takes::{Choice, School};

/// True if all plantings have a place.
pub fn hold(school: &School<'_>, choices: &[Choice<'_>]) -> bool {
    let days = school.garden.horizon().days();
    let mut free: Vec<Vec<u32>> = school
        .candidates
        .plots
        .iter()
        .map(|p| vec![p.strips; days])
        .collect();
    let blocks = choices.first().map_or(0, |c| c.blocks);
    share_out(choices, 0, blocks, &mut free)
}

/// Puts the `left` blocks of the first planting on the plots from `plot` on, then all others.
fn share_out(choices: &[Choice<'_>], plot: usize, left: u32, free: &mut [Vec<u32>]) -> bool {
    let Some((first, others)) = choices.split_first() else {
        return true;
    };
    let candidate = first.candidate;
    if left == 0 || candidate.plots.is_empty() {
        let blocks = others.first().map_or(0, |c| c.blocks);
        return share_out(others, 0, blocks, free);
    }
    if plot == free.len() {
        return false;
    }
    let days = candidate.bed_days.0..=candidate.bed_days.1;
    let block = candidate.amounts.block.strips;
    let room = free[plot][days.clone()]
        .iter()
        .min()
        .map_or(0, |strips| strips / block);
    let most = if candidate.plots.has(plot) {
        room.min(left)
    } else {
        0
    };
    for blocks in (0..=most).rev() {
        free[plot][days.clone()]
            .iter_mut()
            .for_each(|strips| *strips -= blocks * block);
        let done = share_out(choices, plot + 1, left - blocks, free);
        free[plot][days.clone()]
            .iter_mut()
            .for_each(|strips| *strips += blocks * block);
        if done {
            return true;
        }
    }
    false
}
