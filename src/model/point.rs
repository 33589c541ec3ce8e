//! Points of a program as plantings and back: which plantings with how many blocks, and the
//! values of all columns that follow from them.

use crate::candidates::{Candidate, CandidateAt, Candidates};
use crate::garden::IngredientAt;

use super::board::Board;
use super::columns::{Columns, Ready};
use super::layout::Chosen;
use super::program::{Section, value};
use super::setting::Setting;

/// The plantings that are made, by ingredient and first day.
#[must_use]
pub fn chosen(candidates: &Candidates, columns: &Columns, values: &[f64]) -> Vec<Chosen> {
    let mut chosen: Vec<Chosen> = candidates
        .numbered()
        .filter(|(k, _)| values[columns.made[k.0].0] > 0.5)
        .map(|(k, c)| Chosen {
            candidate: k,
            blocks: match columns.blocks[k.0] {
                Some(col) => values[col.0].round() as u32,
                None => c.amounts.blocks.0,
            },
        })
        .collect();
    chosen.sort_by_key(|c| {
        let candidate = &candidates[c.candidate];
        (candidate.ingredient, candidate.bed_days, c.candidate)
    });
    chosen
}

/// The values of all columns for chosen plantings. Only for programs whose beds are not named.
#[must_use]
pub fn values(board: &Board<'_>, chosen: &[Chosen]) -> Vec<f64> {
    let Board {
        candidates,
        columns,
        program,
        ..
    } = board;
    let mut values = vec![0.0; program.columns().len()];
    for Chosen { candidate, blocks } in chosen {
        let of_it = &candidates[*candidate];
        values[columns.made[candidate.0].0] = 1.0;
        values[columns.in_pot[of_it.ingredient.0].0] = 1.0;
        if let Some(col) = columns.blocks[candidate.0] {
            values[col.0] = f64::from(*blocks);
        }
        // Rows hold the levels in order, so those that the blocks have passed are the first ones.
        let passed = of_it
            .amounts
            .levels
            .iter()
            .take_while(|level| level.up_to < *blocks)
            .count();
        for up in columns.level_up[candidate.0].iter().take(passed) {
            values[up.0] = 1.0;
        }
    }
    settle_grades(board, chosen, &mut values);
    settle(board, &mut values);
    values
}

/// Who grows what, of the plantings and of what is not planted.
fn settle_grades(board: &Board<'_>, chosen: &[Chosen], values: &mut [f64]) {
    let Board {
        garden,
        candidates,
        columns,
        ..
    } = board;
    if !garden.has_open_grades() {
        return;
    }
    let made = chosen.iter().map(|c| &candidates[c.candidate]);
    let given: Vec<_> = made.map(|c| (c.ingredient, c.team)).collect();
    let teams = garden.share_out(&given);
    for (choice, own) in columns.grown_by.iter().zip(teams) {
        for (_, col) in choice.iter().filter(|(team, _)| *team == own) {
            values[col.0] = 1.0;
        }
    }
}

/// True if a point keeps the bounds of all columns and all rows but those about what is forbidden:
/// these follow from its layout.
#[must_use]
pub fn keeps_rows(board: &Board<'_>, values: &[f64]) -> bool {
    let sections = board.program.sections();
    let mut rows = sections
        .filter(|(section, _)| *section != Section::Forbidden)
        .flat_map(|(_, rows)| rows);
    let held = rows.all(|row| value(&row.terms, values) <= row.rhs + 1e-6);
    let mut columns = board.program.columns().iter().zip(values);
    held && columns.all(|(c, v)| c.lo - 1e-6 <= *v && *v <= c.hi + 1e-6)
}

/// Sets the columns that follow from plantings and blocks as good as these allow.
pub fn settle(board: &Board<'_>, values: &mut [f64]) {
    let setting = &board.setting();
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    // Few of many are made, and all follows from these.
    let made = candidates.numbered();
    let made: Vec<Made<'_>> = made
        .filter(|(k, _)| values[columns.made[k.0].0] > 0.5)
        .collect();
    for at in garden.ingredient_positions() {
        settle_readiness(setting, at, values);
    }
    for (grade, takes_part) in &columns.takes_part {
        let grows = columns.grown_by.iter().flatten();
        let mut grows = grows.filter(|(team, _)| team.has(*grade));
        // As great as its row allows: 1 where the grade grows something.
        let one = grows.any(|(_, col)| values[col.0] > 0.5);
        values[takes_part.0] = f64::from(u8::from(one));
    }
    let all = || garden.ingredient_positions();
    let least = |sums: &mut dyn Iterator<Item = f64>| sums.fold(f64::INFINITY, f64::min);
    let years = least(&mut all().map(|at| value(&columns.ready_years(candidates, at), values)));
    // A garden of no ingredients has none that is worst.
    values[columns.worst_years.0] = years.min(candidates.years as f64).round();
    values[columns.dish_years.0] = 0.0;
    for (years, dish) in &columns.dish {
        let ready = |at| is_ready(columns, &made, (at, years.year), values);
        values[dish.0] = least(&mut all().map(ready)).min(1.0);
        values[columns.dish_years.0] += years.count * values[dish.0];
    }
    let low = least(&mut all().map(|at| value(&setting.low_share(at), values)));
    values[columns.least_share.0] = low.min(1.0);
    for at in all() {
        let expected = value(&setting.expected_share(at), values);
        values[columns.expected_share[at.0].0] = expected.min(1.0);
    }
    for (gap, used) in columns.gap_used.iter().enumerate() {
        let touched = made.iter().any(|(_, c)| c.gaps.contains(&gap));
        values[used.0] = f64::from(u8::from(touched));
    }
    for ((class, date), second) in &columns.second_steps {
        let tasks = made.iter().flat_map(|(_, c)| &c.tasks);
        let here = tasks.filter(|t| (t.class, t.date) == (*class, *date));
        values[second.0] = (here.count() as f64 - 1.0).max(0.0);
    }
    settle_reached(board, values);
    // Last, for the two sums are of columns that are settled by now.
    for (col, [a, b]) in board.program.greater() {
        values[col.0] = value(a, values).max(value(b, values));
    }
}

/// A candidate that is made.
type Made<'a> = (CandidateAt, &'a Candidate);

/// One where an ingredient is ready in a year, else nought.
fn is_ready(
    columns: &Columns,
    made: &[Made<'_>],
    (at, year): (IngredientAt, usize),
    values: &[f64],
) -> f64 {
    match columns.decided_in(at, year) {
        Some(col) => col.map_or(0.0, |col| values[col.0]),
        None => {
            let mut own = made.iter().filter(|(_, c)| c.ingredient == at);
            f64::from(u8::from(own.any(|(_, c)| c.ready.has(year))))
        }
    }
}

/// In which years an ingredient of several sowings is ready.
fn settle_readiness(setting: &Setting<'_>, at: IngredientAt, values: &mut [f64]) {
    let Ready::Decided { each, years: sum } = &setting.columns.ready[at.0] else {
        return;
    };
    values[sum.0] = 0.0;
    for (years, col) in each {
        let Some(col) = col else { continue };
        // A sum of kilograms that is just enough can miss 1 by rounding.
        let low = setting.least_share_ready(at, years.year);
        let ready = value(&low, values) >= 1.0 - 1e-9;
        values[col.0] = f64::from(u8::from(ready));
        values[sum.0] += years.count * values[col.0];
    }
}

/// Which plantings of sets that do not go together reach their blocks.
fn settle_reached(board: &Board<'_>, values: &mut [f64]) {
    let Board {
        candidates,
        columns,
        ..
    } = board;
    for reached in &board.reached {
        let reaches = |(k, blocks): &(CandidateAt, u32)| {
            let of_it = match columns.blocks[k.0] {
                Some(col) => values[col.0].round() as u32,
                None => candidates[*k].amounts.blocks.0,
            };
            values[columns.made[k.0].0] > 0.5 && of_it >= *blocks
        };
        values[reached.col.0] = f64::from(u8::from(reached.by.iter().any(reaches)));
    }
}
