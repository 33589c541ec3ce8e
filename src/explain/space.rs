//! The least space with which a plan still keeps its promise: solved again with fewer flats on
//! the shelf, and for the fewest strips of bed. The plan itself stays as it is.

use std::collections::BTreeSet;

use crate::checker::{CheckedPlan, check};
use crate::garden::{Garden, Shelf, StripAt};
use crate::model::{self, Options};
use crate::plan::{Aim, AimResult, Plan};

/// So many flats or strips are enough for what a plan promises.
#[derive(Debug, Clone, PartialEq)]
pub struct Enough {
    /// How many there are.
    pub there: u32,
    /// How many would do, in a plan that the checker has passed.
    pub enough: u32,
    /// It is proved that fewer than this would not do.
    pub at_least: u32,
    /// How many of them that plan uses in each week.
    pub by_week: Vec<u32>,
}

impl Enough {
    /// True if it is proved that no fewer would do.
    #[must_use]
    pub fn is_least(&self) -> bool {
        self.enough <= self.at_least
    }
}

/// The least space for what a plan promises; `None` where nothing was found in time.
#[derive(Debug, Clone, PartialEq)]
pub struct LeastSpace {
    /// Flats on the shelf, the beds as they are.
    pub flats: Enough,
    /// Strips of bed that ever carry anything, the shelf as it is.
    pub strips: Option<Enough>,
}

/// What a plan promises, as aims to hold: that all is in the pot, the aims about years, and the
/// least grown share.
#[must_use]
pub fn promise(checked: &CheckedPlan) -> Vec<AimResult> {
    let replay = checked.replay();
    let years = || replay.ingredients.iter().map(|i| i.ready_years());
    let shares = replay.ingredients.iter().map(|i| i.low_share.0.min(1.0));
    let dish = replay.whole_dish_years();
    let held = [
        (Aim::InThePot, replay.ingredients.len() as f64),
        (Aim::WorstIngredient, years().min().unwrap_or(0) as f64),
        (Aim::AllIngredients, years().sum::<usize>() as f64),
        (Aim::WholeDish, dish as f64),
        (Aim::LeastGrownShare, shares.fold(1.0, f64::min)),
    ];
    held.map(|(aim, value)| AimResult {
        aim,
        value,
        bound: value,
    })
    .to_vec()
}

/// The least space for what a plan promises. Half of the time is for the shelf.
#[must_use]
pub fn least_space(garden: &Garden, checked: &CheckedPlan, options: &Options) -> LeastSpace {
    LeastSpace {
        flats: fewest_flats(
            garden,
            checked,
            &Options {
                deadline: options.deadline.shared_by(2),
                ..*options
            },
        ),
        strips: fewest_strips(garden, checked, options),
    }
}

/// The fewest flats for what a plan promises, by halving over the numbers below those that the
/// plan uses: what works with some works with more.
#[must_use]
pub fn fewest_flats(garden: &Garden, checked: &CheckedPlan, options: &Options) -> Enough {
    let held = promise(checked);
    let by_week = checked.replay().flats_by_week.clone();
    let mut found = Enough {
        there: garden.shelf.flats,
        enough: by_week.iter().copied().max().unwrap_or(0),
        at_least: 0,
        by_week,
    };
    // The fewest that are not known to be too few, and those that are still to be tried.
    let mut open = found.enough;
    while found.at_least < open {
        let flats = u32::midpoint(found.at_least, open - 1);
        let fewer = with_flats(garden, flats);
        match model::keeping(&fewer, options, &held) {
            Ok(None) => found.at_least = flats + 1,
            Ok(Some(plan)) => match check(&fewer, plan) {
                Ok(with_fewer) => {
                    found.by_week = with_fewer.replay().flats_by_week.clone();
                    found.enough = found.by_week.iter().copied().max().unwrap_or(0);
                    open = found.enough;
                }
                Err(_) => open = flats,
            },
            // What is not known of these flats is not known of fewer.
            Err(model::NotKnown) => break,
        }
    }
    found
}

/// The garden with another number of flats.
fn with_flats(garden: &Garden, flats: u32) -> Garden {
    let shelf = Shelf {
        flats,
        warm_flats: garden.shelf.warm_flats.min(flats),
        ..garden.shelf
    };
    Garden {
        shelf,
        ..garden.clone()
    }
}

/// The fewest strips that ever carry anything, for what a plan promises; `None` if nothing was
/// found in time.
#[must_use]
pub fn fewest_strips(garden: &Garden, checked: &CheckedPlan, options: &Options) -> Option<Enough> {
    let found = model::on_fewest_strips(garden, options, &promise(checked)).ok()?;
    let with_fewer = check(garden, found.plan).ok()?;
    let own = strips_used(checked.plan());
    let fewest = strips_used(with_fewer.plan());
    let least = if fewest < own { &with_fewer } else { checked };
    Some(Enough {
        there: garden.beds.iter().map(|bed| bed.strips()).sum(),
        enough: fewest.min(own),
        at_least: found.bound,
        by_week: strips_by_week(least),
    })
}

/// Strips that ever carry anything.
fn strips_used(plan: &Plan) -> u32 {
    let places = plan.plantings.iter().flat_map(|p| &p.places);
    let strips: BTreeSet<(&str, StripAt)> = places
        .flat_map(|p| p.run().iter().map(|strip| (p.bed.as_str(), strip)))
        .collect();
    u32::try_from(strips.len()).unwrap_or(u32::MAX)
}

/// Strips in use in all beds, week by week.
fn strips_by_week(checked: &CheckedPlan) -> Vec<u32> {
    let beds = &checked.replay().strips_by_week;
    let weeks = beds.iter().map(Vec::len).max().unwrap_or(0);
    let in_week = |week: usize| beds.iter().filter_map(|bed| bed.get(week)).sum();
    (0..weeks).map(in_week).collect()
}
