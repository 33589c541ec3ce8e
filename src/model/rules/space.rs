//! Space, projected: for every day and every union of the plot sets that candidates allow,
//! the strips of the plantings that stand only there are at most its strips. Which strip goes to
//! which planting is settled after the solve.

use crate::candidates::{CandidateAt, PlotAt, families, fullest};
use crate::model::program::{Col, Program, Section};
use crate::model::setting::Setting;
use crate::plan::Rule;

use super::capacity::Capacities;
use super::crowds::{self, Crowd, Who, confined, plot_sets};
use super::needs;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    let short = short_of_strips(setting);
    crowds::add_rows(program, setting, &short);
    needs::add_least(program, setting, &short);
}

/// The plantings within a set of plots on a day, where strips can run short.
#[must_use]
pub fn short_of_strips(setting: &Setting<'_>) -> Vec<Crowd> {
    let all = &setting.candidates.all;
    let mut short = Vec::new();
    for set in plot_sets(setting) {
        let within = all.iter().filter(|c| confined(c, set));
        let days = fullest(within.map(|c| c.bed_days)).into_iter();
        short.extend(days.filter_map(|day| Crowd::new(setting, set, Who::On(day))));
    }
    short
}

/// Adds the blocks of every candidate on every plot as columns, and the strips of every plot
/// and day, and of every plot and family, as rows: closer than the projected rows, but larger.
/// Gives back the columns, each with its candidate and plot.
pub fn name_plots(program: &mut Program, setting: &Setting<'_>) -> Vec<(CandidateAt, PlotAt, Col)> {
    program.begin(Section::Rule(Rule::Space));
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let mut on_plot = Vec::new();
    for (k, c) in candidates.numbered().filter(|(_, c)| !c.plots.is_empty()) {
        let mut placed = vec![columns.blocks_of(candidates, k, 1.0)];
        for plot in c.plots.iter() {
            let fit = candidates[plot].strips.count / c.amounts.block.strips.max(1);
            let col = program.whole(0, fit.min(c.amounts.blocks.1));
            placed.push((col, -1.0));
            on_plot.push((k, plot, col));
        }
        program.at_most(placed, 0.0);
    }
    let mut rows = Capacities::default();
    for (plot, place) in candidates.numbered_plots() {
        let here = || on_plot.iter().filter(|(_, on, _)| *on == plot);
        let spans = here().map(|(k, ..)| candidates[*k].bed_days);
        for day in fullest(spans) {
            let standing = here().filter(|(k, ..)| {
                let (from, to) = candidates[*k].bed_days;
                from <= day && day <= to
            });
            let terms = standing
                .map(|(k, _, col)| (*col, candidates[*k].amounts.block.strips))
                .collect();
            rows.push(terms, place.strips.count);
        }
        for family in families(setting.garden, &candidates.all).values() {
            let own = here().filter(|(k, ..)| family.contains(&candidates[*k].ingredient));
            let terms = own.map(|(k, _, col)| (*col, candidates[*k].amounts.block.strips));
            rows.push(terms.collect(), place.strips.count);
        }
    }
    rows.add_rows(program);
    on_plot
}
