//! Space, projected: for every day and every union of the plot sets that candidates allow,
//! the strips of the plantings that stand only there are at most its strips (Hall's condition
//! for sharing plots out). Which strip goes to which bed is settled after the solve.

use crate::candidates::{Candidate, PlotSet, fullest, greatest_use, unions, usable_strips};
use crate::model::program::{Col, Program, Section};
use crate::plan::Rule;

use super::capacity::{Capacities, rounded};
use crate::model::setting::Setting;

/// More unions of plot sets than this are not looked at one by one.
const MOST_UNIONS: usize = 512;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let mut rows = Capacities::default();
    let mut companions = Capacities::default();
    for (set, strips, day) in short_of_strips(setting) {
        let used = strips_used(setting, set, day);
        for (row, rhs) in rounded(&used, strips) {
            companions.push(row, rhs);
        }
        rows.push(used, strips);
    }
    rows.add_rows(program);
    companions.add_rows(program);
    let fewest: Vec<u32> = setting
        .candidates
        .all
        .iter()
        .map(|c| c.amounts.blocks.0)
        .collect();
    add_rounded(program, setting, &fewest);
}

/// Adds rounded rows, given the fewest blocks of each candidate that is made.
pub fn add_rounded(program: &mut Program, setting: &Setting<'_>, fewest: &[u32]) {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let mut companions = Capacities::default();
    for (set, strips, day) in short_of_strips(setting) {
        let standing = candidates
            .all
            .iter()
            .enumerate()
            .filter(|(_, c)| stands(c, set, day));
        let least: Vec<(Col, u32)> = standing
            .map(|(k, c)| (columns.made[k], fewest[k] * c.amounts.block.strips))
            .collect();
        for (row, rhs) in rounded(&least, strips) {
            companions.push(row, rhs);
        }
    }
    companions.add_rows(program);
}

/// Unions of plot sets with their strips, and days, on which strips can run short.
fn short_of_strips(setting: &Setting<'_>) -> Vec<(PlotSet, u32, usize)> {
    let Setting {
        garden, candidates, ..
    } = setting;
    let mut short = Vec::new();
    for set in unions(candidates.all.iter().map(|c| c.plots), MOST_UNIONS) {
        let within = candidates.all.iter().filter(|c| confined(c, set));
        for day in fullest(within.map(|c| c.bed_days)) {
            let standing = candidates.all.iter().filter(|c| stands(c, set, day));
            let blocks = standing.map(|c| c.amounts.block.strips);
            let strips = usable_strips(&candidates.plots, set, blocks);
            let most = |c: &Candidate| {
                let blocks = c.amounts.blocks.1;
                if stands(c, set, day) {
                    blocks * c.amounts.block.strips
                } else {
                    0
                }
            };
            if greatest_use(garden, &candidates.all, most) > strips {
                short.push((set, strips, day));
            }
        }
    }
    short
}

/// True if a candidate may stand only within a set of plots.
fn confined(candidate: &Candidate, set: PlotSet) -> bool {
    !candidate.plots.is_empty() && set.covers(candidate.plots)
}

/// True if a candidate stands in the beds on a day and only within a set of plots.
fn stands(candidate: &Candidate, set: PlotSet, day: usize) -> bool {
    let (from, to) = candidate.bed_days;
    from <= day && day <= to && confined(candidate, set)
}

/// The strips that plantings use.
fn strips_used(setting: &Setting<'_>, set: PlotSet, day: usize) -> Vec<(Col, u32)> {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let standing = candidates
        .all
        .iter()
        .enumerate()
        .filter(|(_, c)| stands(c, set, day));
    standing
        .map(|(k, c)| match columns.blocks[k] {
            Some(blocks) => (blocks, c.amounts.block.strips),
            None => (columns.made[k], c.amounts.least_strips()),
        })
        .collect()
}

/// Adds the blocks of every candidate on every plot as columns, and the strips of every plot
/// and day as rows: exact, but larger than the projected rows. Gives back the columns, each
/// with its candidate and plot.
pub fn name_plots(program: &mut Program, setting: &Setting<'_>) -> Vec<(usize, usize, Col)> {
    program.begin(Section::Rule(Rule::Space));
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let mut on_plot = Vec::new();
    for (k, c) in candidates
        .all
        .iter()
        .enumerate()
        .filter(|(_, c)| !c.plots.is_empty())
    {
        let mut placed = vec![columns.blocks_of(candidates, k, 1.0)];
        for plot in c.plots.iter() {
            let fit = candidates.plots[plot].strips / c.amounts.block.strips.max(1);
            let col = program.whole(0, fit.min(c.amounts.blocks.1));
            placed.push((col, -1.0));
            on_plot.push((k, plot, col));
        }
        program.at_most(placed, 0.0);
    }
    let mut rows = Capacities::default();
    for (plot, place) in candidates.plots.iter().enumerate() {
        let here = || on_plot.iter().filter(|(_, on, _)| *on == plot);
        let spans = here().map(|(k, ..)| candidates.all[*k].bed_days);
        for day in fullest(spans) {
            let standing = here().filter(|(k, ..)| {
                let (from, to) = candidates.all[*k].bed_days;
                from <= day && day <= to
            });
            let terms = standing
                .map(|(k, _, col)| (*col, candidates.all[*k].amounts.block.strips))
                .collect();
            rows.push(terms, place.strips);
        }
    }
    rows.add_rows(program);
    on_plot
}
