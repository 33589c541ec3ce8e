//! Raising plants on the shelf for a planting-out round: when to sow, when to pot up, what
//! care it takes.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::{Garden, IndoorStart, Ingredient, MAT};
use crate::growth::germination::days_to_emerge;

use super::candidate::ShelfWeeks;
use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::rounds::Round;

/// Days that seedlings get used to the outdoors before planting out (common practice: 7 to 14).
pub const HARDEN_DAYS: i64 = 7;
/// Least days from sowing to potting up: the first true leaves (common practice).
pub const SOW_TO_POT_DAYS: i64 = 14;
/// Least days from potting up to planting out: new roots (common practice).
pub const POT_TO_OUT_DAYS: i64 = 10;

/// One way to raise the plants for a planting-out round.
#[derive(Debug, Clone)]
pub struct Nursery {
    /// Sowing on the shelf.
    pub sow: Round,
    /// Potting up, if the crop is potted up.
    pub pot_up: Option<Round>,
    /// Weeks on the shelf.
    pub shelf: ShelfWeeks,
    /// Weeks beyond the least age at planting out.
    pub late_weeks: u32,
}

/// The span of hardening off before a planting-out round.
#[must_use]
pub fn hardening(plant_out: &Round) -> (Date, Date) {
    let first = plant_out.first();
    (plus_days(first, -HARDEN_DAYS), plus_days(first, -1))
}

/// Whole weeks from one day's week to another's.
#[must_use]
pub fn weeks_apart(from: Date, to: Date) -> i64 {
    (monday_of(to) - monday_of(from)).num_days() / 7
}

/// Days until the seed is up on the shelf, and whether it stands on the heat mat for it.
/// `None` if it does not come up there.
#[must_use]
pub fn days_on_shelf_until_up(garden: &Garden, ingredient: &Ingredient) -> Option<(i64, bool)> {
    let indoor = ingredient.crop.indoor?;
    let on_mat = garden.shelf.warm_flats > 0 && garden.shelf.room < indoor.warm_below;
    let warmth = if on_mat { MAT } else { garden.shelf.room };
    let days = days_to_emerge(&ingredient.crop.germination, warmth)?;
    Some((days.ceil() as i64, on_mat))
}

/// All ways to raise plants for a planting-out round.
pub fn nurseries(
    context: &Context<'_>,
    ingredient: &Ingredient,
    rounds: &[Round],
    plant_out: &Round,
    dropped: &mut Dropped,
) -> Vec<Nursery> {
    let garden = context.garden;
    let Some(indoor) = ingredient.crop.indoor else {
        return Vec::new();
    };
    let mut refuse = |reason| *dropped.entry(reason).or_insert(0) += 1;
    let Some((days_until_up, on_mat)) = days_on_shelf_until_up(garden, ingredient) else {
        refuse(DropReason::TooColdIndoors);
        return Vec::new();
    };
    let (from, to) = hardening(plant_out);
    if !context.gaps_touching(from, to).is_empty() {
        refuse(DropReason::HardensUnattended);
        return Vec::new();
    }
    let mut found = Vec::new();
    for sow in rounds
        .iter()
        .filter(|sow| right_age(&indoor, sow.first(), plant_out.first()))
    {
        if !garden.shelf.open_on(sow.first()) || !garden.shelf.open_on(plant_out.last()) {
            refuse(DropReason::ShelfTooSmall);
            continue;
        }
        let up = plus_days(sow.last(), days_until_up);
        let warm_until = on_mat.then_some(up);
        let pot_ups = pot_up_rounds(&indoor, rounds, sow, plant_out, up);
        if pot_ups.is_empty() {
            refuse(DropReason::NoSession);
        }
        found.extend(pot_ups.into_iter().map(|pot_up| {
            let shelf = shelf_weeks(context, sow, pot_up.as_ref(), plant_out, warm_until);
            let late = weeks_apart(sow.first(), plant_out.first()) - i64::from(indoor.weeks_lo);
            Nursery {
                sow: sow.clone(),
                pot_up,
                shelf,
                late_weeks: late.max(0) as u32,
            }
        }));
    }
    if found.is_empty() {
        refuse(DropReason::NoSession);
    }
    found
}

/// True if seedlings sown on one day have the right age for planting out on another.
#[must_use]
pub fn right_age(indoor: &IndoorStart, sown: Date, out: Date) -> bool {
    let weeks = weeks_apart(sown, out);
    (i64::from(indoor.weeks_lo)..=i64::from(indoor.weeks_hi)).contains(&weeks)
}

/// The rounds in which seedlings may be potted up: a single `None` for crops that are not,
/// nothing if no round fits.
fn pot_up_rounds(
    indoor: &IndoorStart,
    rounds: &[Round],
    sow: &Round,
    plant_out: &Round,
    up: Date,
) -> Vec<Option<Round>> {
    if indoor.pots_per_flat.is_none() {
        return if up < plant_out.first() && sow.last() < plant_out.first() {
            vec![None]
        } else {
            Vec::new()
        };
    }
    let earliest = plus_days(sow.last(), SOW_TO_POT_DAYS).max(up);
    let latest = plus_days(plant_out.first(), -POT_TO_OUT_DAYS);
    rounds
        .iter()
        .filter(|r| earliest <= r.first() && r.last() <= latest)
        .cloned()
        .map(Some)
        .collect()
}

/// Weeks on the shelf.
fn shelf_weeks(
    context: &Context<'_>,
    sow: &Round,
    pot_up: Option<&Round>,
    plant_out: &Round,
    warm_until: Option<Date>,
) -> ShelfWeeks {
    let horizon = context.horizon;
    let out = horizon.week(plant_out.last());
    ShelfWeeks {
        sown: horizon.week(sow.first()),
        potted: pot_up.map_or((out + 1, out + 1), |p| {
            (horizon.week(p.first()), horizon.week(p.last()))
        }),
        out,
        warm_until: warm_until.map(|day| horizon.week(day)),
    }
}
