//! The least garden-grown share, found by halving: whole blocks allow only certain shares, and
//! for a given share every planting has its fewest blocks, which makes the program easy.

use std::collections::BTreeSet;

use crate::garden::IngredientAt;
use crate::plan::{Aim, AimResult};

use super::board::Board;
use super::columns::of;
use super::engine::best;
use super::fit::{Fit, fit};
use super::layout::Chosen;
use super::point::{self, chosen};
use super::program::value;
use super::setting::Setting;
use super::solver::{Deadline, Objective, Unsolved, relaxed_bound};

/// Shares are told apart by a billionth.
const FINE: f64 = 1e9;
/// Of programs with more terms than this no bound is sought first: that takes longer than some trials more.
const MOST_TERMS: usize = 250_000;
/// More sums of plantings than this are not listed one by one.
const MOST_SUMS: usize = 5_000;

/// Raises the least garden-grown share as far as it goes, from the point `values`. The caller
/// holds it.
///
/// # Errors
/// A failure of the solver.
pub fn raise(
    board: &mut Board<'_>,
    values: &mut Vec<f64>,
    deadline: &Deadline,
) -> Result<AimResult, Unsolved> {
    let setting = board.setting();
    let reached = share_of(&setting, values);
    let objective = Objective {
        terms: vec![(board.columns.least_share, 1.0)],
        maximise: true,
    };
    let terms = board.program.rows().iter().map(|row| row.terms.len());
    let bound = match terms.sum::<usize>() > MOST_TERMS {
        true => None,
        false => relaxed_bound(&board.program, &objective, deadline.left()),
    };
    let bound = bound.unwrap_or(1.0);
    let Shares {
        each: mut shares,
        complete,
    } = possible_shares(&setting);
    shares.retain(|s| *s > reached + 1e-9 && *s <= bound + 1e-7);
    let mut open = &shares[..];
    let mut less_than = bound;
    let mut result = AimResult {
        aim: Aim::LeastGrownShare,
        value: reached,
        bound: reached,
    };
    while !open.is_empty() {
        // A plan that has a share has every lesser one too, so the answer parts the list in two.
        let middle = open.len() / 2;
        match with_share(board, open[middle], deadline)? {
            Tried::Had(found) => {
                *values = point::values(board, &found);
                result.value = share_of(&board.setting(), values).max(open[middle]);
                // What was found may give more than was asked for, which settles further shares.
                open = &open[open.partition_point(|s| *s <= result.value + 1e-9)..];
            }
            Tried::RuledOut => {
                less_than = open[middle];
                open = &open[..middle];
            }
            Tried::Unknown => {
                // Nothing is ruled out above, so the bound is as great as any; below, a share may still be had.
                result.bound = result.bound.max(open[open.len() - 1]);
                open = &open[..middle];
            }
        }
    }
    // A share that is not listed may lie between the one reached and the next one listed.
    let unlisted = if complete { 0.0 } else { less_than };
    result.bound = result.bound.max(result.value).max(unlisted);
    Ok(result)
}

/// What came of trying a share.
enum Tried {
    /// Plantings that have it and can be laid out.
    Had(Vec<Chosen>),
    /// No point has it.
    RuledOut,
    /// Neither is known.
    Unknown,
}

/// So many sets of plantings are forbidden for one share before it is given up.
const MOST_FORBIDDEN: usize = 40;

/// Tries to hold every ingredient to a share. What is found not to go together at this share does
/// so nowhere, and is forbidden on the board as well.
fn with_share(board: &mut Board<'_>, share: f64, deadline: &Deadline) -> Result<Tried, Unsolved> {
    let mut trial = board.clone();
    trial.hold_share(share);
    let mut tried = Tried::Unknown;
    for _ in 0..MOST_FORBIDDEN {
        let point = match best(&mut trial, (&Objective::none(), true), None, deadline) {
            Ok(found) => found.values,
            Err(Unsolved::Infeasible) => {
                tried = Tried::RuledOut;
                break;
            }
            Err(Unsolved::OutOfTime) => break,
            Err(failed) => return Err(failed),
        };
        // No more than the share asks for is needed, and that is the likeliest to fit.
        let least = lean(&trial, &point, share);
        if let Some(found) = least.into_iter().find(|p| fit(&trial, p) == Fit::LaidOut) {
            tried = Tried::Had(chosen(&trial.candidates, &trial.columns, &found));
            break;
        }
        match fit(&trial, &point) {
            Fit::Never(set) => trial.forbid(set),
            Fit::LaidOut | Fit::NotKnown => break,
        }
    }
    board.steps = trial.steps;
    let learned = trial.forbidden.drain(board.forbidden.len()..);
    learned.for_each(|set| board.forbid(set));
    Ok(tried)
}

/// A point with no more blocks than a share asks for, if that reaches it, and the point itself.
fn lean(trial: &Board<'_>, point: &[f64], share: f64) -> Vec<Vec<f64>> {
    let made = chosen(&trial.candidates, &trial.columns, point);
    let fewest = made.iter().map(|c| Chosen {
        blocks: trial.fewest[c.candidate.0],
        ..*c
    });
    let lean = point::values(trial, &fewest.collect::<Vec<Chosen>>());
    let enough = share_of(&trial.setting(), &lean) >= share - 1e-9;
    let lean = enough.then_some(lean);
    lean.into_iter().chain([point.to_vec()]).collect()
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

/// Shares that ingredients can have.
struct Shares {
    /// In order, 1 among them.
    each: Vec<f64>,
    /// True if no share is missing.
    complete: bool,
}

/// The shares that some ingredient can have.
fn possible_shares(setting: &Setting<'_>) -> Shares {
    // Billionths are whole numbers, so shares that differ by rounding alone are one.
    let mut shares: BTreeSet<u64> = BTreeSet::from([FINE as u64]);
    let mut complete = true;
    for at in setting.garden.ingredient_positions() {
        let (own, all) = shares_of(setting, at);
        shares.extend(own);
        complete &= all;
    }
    Shares {
        each: shares.into_iter().map(|s| s as f64 / FINE).collect(),
        complete,
    }
}

/// The shares, in billionths, that sums of an ingredient's plantings can have, at most 1; and
/// whether these are all of them.
fn shares_of(setting: &Setting<'_>, at: IngredientAt) -> (BTreeSet<u64>, bool) {
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
    let mut all = true;
    for _ in 1..garden[at].most_plantings() {
        if sums.len() * one.len() > MOST_SUMS {
            all = false;
            break;
        }
        let more: Vec<u64> = sums
            .iter()
            .flat_map(|a| one.iter().map(move |b| a + b))
            .collect();
        sums.extend(more);
    }
    let shares = sums.into_iter().map(|s| s.min(FINE as u64)).collect();
    (shares, all)
}
