//! Whether plantings can really be shared out over the plots: every way of putting whole
//! blocks on plots is tried, day by day; and where a family comes twice, strip by strip.

use chrono::Datelike;
use tureen::candidates::{Candidate, PlotAt};
use tureen::garden::Garden;

use super::takes::{Choice, School};

/// True if all plantings have a place.
pub fn hold(school: &School<'_>, choices: &[Choice<'_>]) -> bool {
    // Where several stand at once, they do so on a day on which one of them comes: no other day need be looked at.
    let mut days: Vec<usize> = choices.iter().map(|c| c.candidate.bed_days.0).collect();
    days.sort_unstable();
    days.dedup();
    let plots = &school.candidates.plots;
    let mut beds = Beds {
        school,
        choices,
        free: plots
            .iter()
            .map(|p| vec![p.strips.count; days.len()])
            .collect(),
        days,
        blocks: vec![vec![0; choices.len()]; plots.len()],
    };
    let blocks = choices.first().map_or(0, |c| c.blocks);
    beds.share_out(0, 0, blocks)
}

struct Beds<'a> {
    school: &'a School<'a>,
    choices: &'a [Choice<'a>],
    /// The days on which a planting comes into a bed, in order.
    days: Vec<usize>,
    /// Per plot and such day: strips that are free.
    free: Vec<Vec<u32>>,
    /// Per plot: blocks of each planting.
    blocks: Vec<Vec<u32>>,
}

impl Beds<'_> {
    /// Puts the `left` blocks of a planting on the plots from `plot` on, then all others.
    fn share_out(&mut self, which: usize, plot: usize, left: u32) -> bool {
        let Some(choice) = self.choices.get(which) else {
            return (0..self.free.len()).all(|plot| self.strips_suffice(plot));
        };
        let candidate = choice.candidate;
        if left == 0 || candidate.plots.is_empty() {
            let blocks = self.choices.get(which + 1).map_or(0, |c| c.blocks);
            return self.share_out(which + 1, 0, blocks);
        }
        if plot == self.free.len() {
            return false;
        }
        let until = |last: usize| self.days.partition_point(|day| *day <= last);
        let first = self.days.partition_point(|day| *day < candidate.bed_days.0);
        let days = first..until(candidate.bed_days.1);
        let block = candidate.amounts.block.strips;
        let free = self.free[plot][days.clone()].iter().min();
        let room = free.map_or(0, |strips| strips / block);
        let most = if candidate.plots.has(PlotAt(plot)) {
            room.min(left)
        } else {
            0
        };
        for blocks in (0..=most).rev() {
            let take = |strips: &mut u32| *strips -= blocks * block;
            self.free[plot][days.clone()].iter_mut().for_each(take);
            self.blocks[plot][which] = blocks;
            let done = self.share_out(which, plot + 1, left - blocks);
            self.blocks[plot][which] = 0;
            let give_back = |strips: &mut u32| *strips += blocks * block;
            self.free[plot][days.clone()].iter_mut().for_each(give_back);
            if done {
                return true;
            }
        }
        false
    }

    /// True if the plantings of a plot find strips there. Where no family comes twice, the
    /// strips of every day do; else every way of giving them out is tried.
    fn strips_suffice(&self, plot: usize) -> bool {
        let garden = self.school.garden;
        let blocks = self.blocks[plot].iter().zip(self.choices);
        let mut here: Vec<(&Candidate, u32)> = blocks
            .filter(|(blocks, _)| **blocks > 0)
            .map(|(blocks, c)| (c.candidate, blocks * c.candidate.amounts.block.strips))
            .collect();
        here.sort_by_key(|(c, _)| c.bed_days);
        let family = |c: &Candidate| &garden[c.ingredient].crop.rotation.family;
        let twice = |(k, (c, _)): (usize, &(&Candidate, u32))| {
            here[..k]
                .iter()
                .any(|(other, _)| family(other) == family(c))
        };
        if !here.iter().enumerate().any(twice) {
            return true;
        }
        let strips = self.school.candidates.plots[plot].strips.count as usize;
        let left = here.first().map_or(0, |(_, strips)| *strips);
        one_by_one(garden, &here, left, 0, &mut vec![Vec::new(); strips])
    }
}

/// Gives the `left` strips of the first planting out among those from `from` on, then all others.
fn one_by_one<'a>(
    garden: &Garden,
    plantings: &[(&'a Candidate, u32)],
    left: u32,
    from: usize,
    strips: &mut [Vec<&'a Candidate>],
) -> bool {
    let Some(((planting, _), others)) = plantings.split_first() else {
        return true;
    };
    if left == 0 {
        let left = others.first().map_or(0, |(_, strips)| *strips);
        return one_by_one(garden, others, left, 0, strips);
    }
    let mut tried: Vec<Vec<&Candidate>> = Vec::new();
    for k in from..strips.len() {
        // Of strips that carried the same one is as good as the other.
        if tried.contains(&strips[k]) || !strips[k].iter().all(|b| may_follow(garden, b, planting))
        {
            continue;
        }
        tried.push(strips[k].clone());
        strips[k].push(planting);
        let done = one_by_one(garden, plantings, left - 1, k + 1, strips);
        strips[k].pop();
        if done {
            return true;
        }
    }
    false
}

/// True if a strip may carry `later` after `before`, which came into the bed no later.
fn may_follow(garden: &Garden, before: &Candidate, later: &Candidate) -> bool {
    let year = |day: usize| garden.horizon().date(day).year() as u32;
    let [old, new] = [before, later].map(|c| &garden[c.ingredient].crop.rotation);
    before.bed_days.1 < later.bed_days.0
        && (old.family != new.family
            || new.years_hard == 0
            || year(later.bed_days.0) - year(before.bed_days.1) > new.years_hard)
}
