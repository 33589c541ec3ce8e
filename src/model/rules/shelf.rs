//! Shelf: on every day the flats of all plantings fit on the shelf, and warm ones on the
//! mat; only the days on which it can be fullest need a row. Flats grow with the blocks in levels, each level a step up from the one before.

use crate::candidates::{Candidate, ShelfDays, fullest_days, greatest_use};
use crate::model::program::{Col, Program};

use super::capacity::{Capacities, rounded};
use crate::model::setting::Setting;

/// Adds the rows of the rule.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    levels(program, setting);
    let Setting {
        garden, candidates, ..
    } = setting;
    let mut rows = Capacities::default();
    let mut companions = Capacities::default();
    for day in fullest_days(&candidates.all) {
        let cold = |c: &Candidate| c.greatest_flats(day);
        let warm = |c: &Candidate| c.greatest_warm_flats(day);
        let in_all = |days: &ShelfDays, sown, kept| days.flats_on(day, sown, kept);
        let on_mat = |days: &ShelfDays, sown, _| if days.warm_on(day) { sown } else { 0 };
        if greatest_use(garden, &candidates.all, cold) > garden.shelf.flats {
            collect(
                &mut rows,
                &mut companions,
                flats(setting, in_all),
                garden.shelf.flats,
            );
        }
        if greatest_use(garden, &candidates.all, warm) > garden.shelf.warm_flats {
            collect(
                &mut rows,
                &mut companions,
                flats(setting, on_mat),
                garden.shelf.warm_flats,
            );
        }
    }
    rows.add_rows(program);
    companions.add_rows(program);
}

fn collect(rows: &mut Capacities, companions: &mut Capacities, terms: Vec<(Col, u32)>, flats: u32) {
    for (row, rhs) in rounded(&terms, flats) {
        companions.push(row, rhs);
    }
    rows.push(terms, flats);
}

/// Blocks of a candidate need its levels in order: none without the one before.
fn levels(program: &mut Program, setting: &Setting<'_>) {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    for (k, c) in candidates.numbered() {
        let (Some(first), Some(blocks)) = (c.amounts.levels.first(), columns.blocks[k.0]) else {
            continue;
        };
        let mut row = vec![(blocks, 1.0), (columns.made[k.0], -f64::from(first.up_to))];
        let mut below = columns.made[k.0];
        for (step, up) in c.amounts.levels.windows(2).zip(&columns.level_up[k.0]) {
            program.at_most(vec![(*up, 1.0), (below, -1.0)], 0.0);
            row.push((*up, -f64::from(step[1].up_to - step[0].up_to)));
            below = *up;
        }
        program.at_most(row, 0.0);
    }
}

/// The flats of all candidates by a measure of one level's flats.
fn flats(setting: &Setting<'_>, measure: impl Fn(&ShelfDays, u32, u32) -> u32) -> Vec<(Col, u32)> {
    let Setting {
        candidates,
        columns,
        ..
    } = setting;
    let mut terms = Vec::new();
    for (k, c) in candidates.numbered() {
        let Some(days) = &c.shelf else { continue };
        let mut below = 0;
        let steps = std::iter::once(&columns.made[k.0]).chain(&columns.level_up[k.0]);
        for (level, col) in c.amounts.levels.iter().zip(steps) {
            let flats = measure(days, level.sown, level.kept);
            // A level's column is 1 only with all below it, so it stands for what the level adds to them.
            terms.push((*col, flats - below));
            below = flats;
        }
    }
    terms
}
