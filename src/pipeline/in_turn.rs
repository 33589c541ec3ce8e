//! Cross-validation: a record's years are dealt into parts, and each part in turn is withheld while the same
//! project is planned on the others in the same way. So each year is counted once, with a plan that was not
//! chosen on it.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

use crate::checker::{ENOUGH_YEARS, Harvest, LEAST_YEARS, Unseen};
use crate::garden::Garden;
use crate::model::Options;

use super::decide::{NoPlan, decide};

/// A record is dealt into five parts; of one with few years each is a part, for a fifth less would leave too
/// few to plan on. (Five or ten parts are common practice.)
const PARTS: usize = 5;

/// What came of one part: its years grown with the plan of the others.
enum Part {
    Grown(Harvest),
    /// So many years without a plan.
    Unplanned(usize),
}

/// True if what a plan of this garden promises is counted so: its weather is a record that is long enough.
pub fn is_counted_in_turn(garden: &Garden) -> bool {
    !garden.weather.is_generated() && labels(garden).len() >= LEAST_YEARS
}

/// Counts in how many years of a garden's record a plan is ready that was made with these options on other
/// years of it, with so many threads: the number is the same with any. `None` if it has no record, or too
/// short a one, or if the time does not last.
pub fn in_turn(garden: &Garden, options: &Options, threads: usize) -> Option<Unseen> {
    if !is_counted_in_turn(garden) {
        return None;
    }
    let labels = labels(garden);
    let parts = match labels.len() {
        few if few < ENOUGH_YEARS => few,
        _ => PARTS,
    };
    let next = AtomicUsize::new(0);
    // Each thread takes the next part that nobody has taken, with its share of the time that is left.
    let work = || {
        let take = || Some(next.fetch_add(1, Ordering::Relaxed)).filter(|part| *part < parts);
        let grow = |part: usize| {
            let turns = (parts - part).div_ceil(threads.max(1));
            let options = Options {
                deadline: options.deadline.shared_by(turns),
                ..*options
            };
            let (own, others) = dealt(&labels, part, parts);
            grown_unseen(garden, &options, own, others)
        };
        std::iter::from_fn(take)
            .map(grow)
            .collect::<Option<Vec<Part>>>()
    };
    let grown = thread::scope(|scope| {
        let others: Vec<_> = (1..threads).map(|_| scope.spawn(work)).collect();
        let mut all = vec![work()];
        all.extend(others.into_iter().map(|other| other.join().ok().flatten()));
        all.into_iter().collect::<Option<Vec<_>>>()
    })?;
    let mut seen = Unseen::of_record(garden);
    for part in grown.iter().flatten() {
        match part {
            Part::Grown(harvest) => seen.count(harvest),
            Part::Unplanned(years) => seen.count_unplanned(*years),
        }
    }
    Some(seen)
}

/// The labels of a garden's weather years, in order.
fn labels(garden: &Garden) -> Vec<i32> {
    let years = garden.weather.years(garden.horizon());
    years.iter().map(|year| year.label).collect()
}

/// The years of a part and all others. A part is every fifth year and no run of years: so each has its share
/// of early and late ones, and a climate that changes is not taken for a plan that suits only its own years.
fn dealt(labels: &[i32], part: usize, parts: usize) -> (Vec<i32>, Vec<i32>) {
    let numbered = labels.iter().copied().enumerate();
    let (own, others): (Vec<_>, Vec<_>) = numbered.partition(|(at, _)| at % parts == part);
    let label = |(_, label)| label;
    (
        own.into_iter().map(label).collect(),
        others.into_iter().map(label).collect(),
    )
}

/// Plans on all years but a part's own and grows the plan in these; `None` if that is not known in time.
fn grown_unseen(
    garden: &Garden,
    options: &Options,
    own: Vec<i32>,
    others: Vec<i32>,
) -> Option<Part> {
    let without = |labels: Vec<i32>| Garden {
        weather: garden.weather.clone().withholding(labels),
        ..garden.clone()
    };
    let years = own.len();
    let unseen = without(others);
    match decide(&without(own), options) {
        Ok(checked) => Some(Part::Grown(checked.grown_in(&unseen))),
        Err(NoPlan::Impossible(_)) => Some(Part::Unplanned(years)),
        Err(_) => None,
    }
}
