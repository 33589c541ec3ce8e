//! The least garden-grown share, found by halving: whole blocks allow only certain shares, and
//! for a given share every planting has its fewest blocks, which makes the program easy.

use std::collections::BTreeSet;

use crate::garden::IngredientAt;
use crate::plan::{Aim, AimResult};

use super::board::Board;
use super::columns::of;
use super::program::{Program, value};
use super::setting::Setting;
use super::share_floor::at_least;
use super::solver::{Deadline, Objective, Unsolved, relaxed_bound, solve};

/// Shares are told apart by a billionth.
const FINE: f64 = 1e9;
/// More different shares than this are not listed one by one.
const MOST_SHARES: usize = 5_000;

/// Raises the least garden-grown share as far as it goes, from the point `values`. The caller
/// holds it.
///
/// # Errors
/// A failure of the solver.
pub fn raise(
    board: &Board<'_>,
    values: &mut Vec<f64>,
    deadline: &Deadline,
) -> Result<AimResult, Unsolved> {
    let Board {
        garden,
        candidates,
        columns,
        program,
        ..
    } = board;
    let setting = &Setting {
        garden,
        candidates,
        columns,
    };
    let reached = share_of(setting, values);
    let objective = Objective {
        terms: vec![(columns.least_share, 1.0)],
        maximise: true,
    };
    let bound = relaxed_bound(program, &objective, deadline.left()).unwrap_or(1.0);
    let mut shares = possible_shares(setting);
    shares.retain(|s| *s > reached + 1e-9 && *s <= bound + 1e-7);
    let (reached, open) = halve(program, setting, values, &shares, reached, deadline)?;
    Ok(AimResult {
        aim: Aim::LeastGrownShare,
        value: reached,
        bound: open,
    })
}

/// The greatest of some rising shares that can be had, or `reached` if none can, with its
/// point in `values`; and the greatest that is not ruled out, which is another one only if
/// time runs out.
fn halve(
    program: &Program,
    setting: &Setting<'_>,
    values: &mut Vec<f64>,
    shares: &[f64],
    mut reached: f64,
    deadline: &Deadline,
) -> Result<(f64, f64), Unsolved> {
    let mut open = shares;
    while !open.is_empty() {
        let middle = open.len() / 2;
        let mut trial = program.clone();
        at_least(&mut trial, setting, open[middle]);
        match solve(&trial, &Objective::none(), None, deadline.left()) {
            Ok(found) => {
                *values = found.values;
                reached = share_of(setting, values).max(open[middle]);
                open = &open[open.partition_point(|s| *s <= reached + 1e-9)..];
            }
            Err(Unsolved::Infeasible) => open = &open[..middle],
            Err(Unsolved::OutOfTime) => break,
            Err(failed) => return Err(failed),
        }
    }
    Ok((reached, open.last().copied().unwrap_or(reached)))
}

/// The least share of the target at low yield that a point gives, at most 1.
fn share_of(setting: &Setting<'_>, values: &[f64]) -> f64 {
    let shares = setting
        .garden
        .ingredient_positions()
        .map(|at| setting.low_share(at));
    shares
        .map(|share| value(&share, values))
        .fold(1.0, f64::min)
}

/// All shares that some ingredient can have, in order, and 1.
fn possible_shares(setting: &Setting<'_>) -> Vec<f64> {
    let mut shares: BTreeSet<u64> = BTreeSet::from([FINE as u64]);
    for at in setting.garden.ingredient_positions() {
        shares.extend(shares_of(setting, at));
    }
    shares.into_iter().map(|s| s as f64 / FINE).collect()
}

/// The shares, in billionths, that sums of an ingredient's plantings can have, at most 1.
fn shares_of(setting: &Setting<'_>, at: IngredientAt) -> BTreeSet<u64> {
    let Setting {
        garden, candidates, ..
    } = setting;
    let target = garden[at].target(garden.feast.portions);
    let one: BTreeSet<u64> = of(candidates, at)
        .flat_map(|(_, c)| {
            let (least, most) = c.amounts.blocks;
            let share = c.amounts.low / target;
            (least..=most).map(move |b| (f64::from(b) * share * FINE) as u64)
        })
        .collect();
    let mut sums = one.clone();
    for _ in 1..garden[at].most_plantings() {
        if sums.len() * one.len() > MOST_SHARES {
            break;
        }
        let more: Vec<u64> = sums
            .iter()
            .flat_map(|a| one.iter().map(move |b| a + b))
            .collect();
        sums.extend(more);
    }
    sums.into_iter().map(|s| s.min(FINE as u64)).collect()
}
