//! What a planting moves of the dates that were printed: how many of them, and by how many days together.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::{Garden, IngredientAt, Printed, PrintedAt, Turn, Turns};

use super::candidate::{Moves, Steps, Thinning};
use super::rounds::{PickDay, Round};

/// The days of one kind of step, each with those who do it.
type Days = Vec<(Turn, Date)>;

/// The printed days that are still to come, against which steps are held: those of the planting with which they go on, or,
/// before they have begun, of each one of their ingredient that has not begun either.
#[derive(Debug, Clone, Default)]
pub struct Open {
    as_of: Date,
    printed: Vec<[Days; 5]>,
}

impl Open {
    /// Those of an ingredient, or of what goes on; none where nothing is printed.
    pub fn of(garden: &Garden, at: IngredientAt, given: Option<PrintedAt>) -> Self {
        let Some(season) = &garden.season else {
            return Self::default();
        };
        let as_of = season.as_of;
        let is_meant = |(which, printed): &(PrintedAt, &Printed)| match given {
            Some(given) => *which == given,
            None => !printed.begun(as_of),
        };
        let meant = season.printed_of(at).filter(is_meant);
        let days = meant.map(|(_, printed)| printed_days(printed).map(|days| open(&days, as_of)));
        Self {
            as_of,
            printed: days.collect(),
        }
    }

    /// What steps move of the nearest of them. Where nothing is printed, nothing moves.
    pub fn moved(&self, steps: &Steps) -> Moves {
        if self.printed.is_empty() {
            return Moves::default();
        }
        let new = days_of(steps).map(|days| open(&days, self.as_of));
        let from = |printed: &[Days; 5]| {
            let kinds = printed.iter().zip(&new);
            kinds.fold(Moves::default(), |sum, (old, new)| {
                let one = between(old, new);
                Moves {
                    dates: sum.dates + one.dates,
                    days: sum.days + one.days,
                }
            })
        };
        self.printed.iter().map(from).min().unwrap_or_default()
    }
}

/// The steps that have not begun, all of one kind.
fn open(steps: &[Days], as_of: Date) -> Days {
    let begun = |days: &&Days| days.iter().any(|(_, day)| *day < as_of);
    steps
        .iter()
        .filter(|days| !begun(days))
        .flatten()
        .copied()
        .collect()
}

/// Sowing, potting up, planting out, thinning and picks of a candidate; of each kind all its steps.
fn days_of(steps: &Steps) -> [Vec<Days>; 5] {
    let once = |round: &Option<Round>| round.iter().map(of_round).collect();
    let thin = steps.thin.iter().map(|thin| match thin {
        Thinning::Round(round) => of_round(round),
        Thinning::Adult(day) => vec![(Turn::Adult, *day)],
        Thinning::Families(day) => vec![(Turn::Families, *day)],
    });
    let picks = steps.picks.iter().map(|pick| match pick {
        PickDay::Round(round) => of_round(round),
        PickDay::Families(day) => vec![(Turn::Families, *day)],
    });
    [
        once(&steps.sow),
        once(&steps.pot_up),
        once(&steps.plant_out),
        thin.collect(),
        picks.collect(),
    ]
}

/// The same of a printed planting.
fn printed_days(printed: &Printed) -> [Vec<Days>; 5] {
    let once = |step: &Option<Turns>| step.iter().map(|turns| turns.0.clone()).collect();
    [
        once(&printed.sow),
        once(&printed.pot_up),
        once(&printed.plant_out),
        once(&printed.thin),
        printed.picks.iter().map(|turns| turns.0.clone()).collect(),
    ]
}

fn of_round(round: &Round) -> Days {
    let visits = round.visits.iter();
    visits
        .map(|(class, day)| (Turn::Class(*class), *day))
        .collect()
}

/// Of each who comes, the days that are only in one of two lists, put side by side in order of time: a day that
/// has no other beside it falls away or is new, and is one date as well.
fn between(old: &Days, new: &Days) -> Moves {
    let mut of: BTreeMap<Turn, [Vec<Date>; 2]> = BTreeMap::new();
    for (which, days) in [old, new].into_iter().enumerate() {
        for (turn, day) in days {
            of.entry(*turn).or_default()[which].push(*day);
        }
    }
    let mut moves = Moves::default();
    for [old, new] in of.into_values() {
        let only = |these: &[Date], others: &[Date]| -> Vec<Date> {
            let mut only: Vec<Date> = these
                .iter()
                .copied()
                .filter(|day| !others.contains(day))
                .collect();
            only.sort_unstable();
            only
        };
        let (gone, come) = (only(&old, &new), only(&new, &old));
        moves.dates += u32::try_from(gone.len().max(come.len())).unwrap_or(u32::MAX);
        let apart = gone
            .iter()
            .zip(&come)
            .map(|(a, b)| (*b - *a).num_days().unsigned_abs());
        moves.days += u32::try_from(apart.sum::<u64>()).unwrap_or(u32::MAX);
    }
    moves
}
