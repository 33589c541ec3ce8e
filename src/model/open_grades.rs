//! Where the choice of grades makes a program too large: a smaller one that chooses them, and
//! what can still be said of all.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::candidates::{Candidate, Candidates, PickDay};
use crate::garden::{Garden, IngredientAt, Team};
use crate::plan::{Aim, AimResult};

use super::board::Board;
use super::point::chosen as made;
use super::still_possible::Years;

/// With more candidates than this and open grades, the aims about years are first followed with the
/// most promising ones: what these reach is known when all are looked at.
const MOST_AT_FIRST: usize = 3_000;
/// With more candidates than this and open grades, the small aims are followed with the grades chosen so
/// far.
pub const MOST_LATER: usize = 3_000;

/// So many candidates of an ingredient and grade are promising.
const PROMISING: usize = 8;

/// Where grades are open and there are many candidates: for every ingredient and grade those that
/// are ready most often, and of these those that stand in the bed for the shortest time.
pub fn promising(garden: &Garden, candidates: &Candidates) -> Option<Candidates> {
    if !garden.has_open_grades() || candidates.all.len() <= MOST_AT_FIRST {
        return None;
    }
    let mut of: BTreeMap<(IngredientAt, Team), Vec<usize>> = BTreeMap::new();
    for (k, c) in candidates.all.iter().enumerate() {
        of.entry((c.ingredient, c.team)).or_default().push(k);
    }
    let mut few: Vec<usize> = Vec::new();
    for mut own in of.into_values() {
        own.sort_by_key(|k| {
            let c = &candidates.all[*k];
            (Reverse(c.ready.len()), days_in_bed(c))
        });
        few.extend(own.iter().take(PROMISING));
    }
    few.sort_unstable();
    Some(Candidates {
        all: few.iter().map(|k| candidates.all[*k].clone()).collect(),
        ..candidates.only(|_| false)
    })
}

fn days_in_bed(candidate: &Candidate) -> i64 {
    let picks = candidate.steps.picks.iter();
    let last = picks.map(PickDay::last).max();
    let days = candidate.steps.into_bed().zip(last);
    days.map_or(0, |(from, to)| (to - from).num_days())
}

/// The team of each ingredient at a point that has all in the pot.
pub fn chosen(board: &Board<'_>, values: &[f64]) -> Vec<(IngredientAt, Team)> {
    let made = made(&board.candidates, &board.columns, values);
    let plantings = made.iter().map(|m| &board.candidates[m.candidate]);
    let mut teams: Vec<_> = plantings.map(|c| (c.ingredient, c.team)).collect();
    teams.dedup();
    teams
}

/// Turns the bounds of a plan with fixed grades into bounds for all grades. `known` are aims
/// that were followed with all grades; their bounds hold as long as the plan is as good as
/// they are. For the others only what holds for every plan is said.
pub fn widen(garden: &Garden, all: &Candidates, known: &[AimResult], aims: &mut [AimResult]) {
    let years = Years::of(garden, all);
    let mut as_known = true;
    for result in aims {
        let known = known.iter().find(|k| as_known && k.aim == result.aim);
        let bound = known.map_or_else(|| beyond_none(garden, &years, result.aim), |k| k.bound);
        as_known = known.is_some_and(|k| k.value == result.value);
        result.bound = if result.aim.more_is_better() {
            bound.max(result.value)
        } else {
            bound.min(result.value)
        };
    }
}

/// True if some values are better than others in the first aim in which they differ.
#[must_use]
pub fn is_better(these: &[AimResult], others: &[AimResult]) -> bool {
    let pairs = these.iter().zip(others);
    let mut each = pairs.map(|(a, b)| (a.aim, a.value - b.value));
    let first = each.find(|(_, more)| more.abs() > 2e-6);
    first.is_some_and(|(aim, more)| (more > 0.0) == aim.more_is_better())
}

/// What no plan of a garden passes.
fn beyond_none(garden: &Garden, years: &Years, aim: Aim) -> f64 {
    match aim {
        Aim::InThePot | Aim::ExpectedAmounts => garden.ingredients.len() as f64,
        Aim::WorstIngredient => years.most_of_worst().into(),
        Aim::AllIngredients => years.most_of_all().into(),
        Aim::WholeDish => years.most_of_dish().into(),
        Aim::LeastGrownShare => 1.0,
        Aim::MovedDates | Aim::MovedDays => 0.0,
        Aim::Slack | Aim::Children | Aim::UnattendedDays | Aim::Evenness | Aim::Tidiness => 0.0,
    }
}
