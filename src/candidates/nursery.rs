//! Raising plants on the shelf for a planting-out round: when to sow, when to pot up, what
//! care it takes.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::{Garden, IndoorStart, Ingredient, MAT};
use crate::growth::germination::days_to_emerge;

use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::rounds::Round;
use super::shelf::ShelfDays;

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
    /// Days from the last sowing until the seed is up.
    pub days_up: i64,
    /// Days on the shelf.
    pub shelf: ShelfDays,
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

/// A way to bring seed up on the shelf.
#[derive(Debug, Clone, Copy)]
struct ComingUp {
    days: i64,
    on_mat: bool,
}

/// The ways in which the seed comes up on the shelf: on the heat mat, if there is one and the
/// crop wants it warmer than the room, and in the room.
fn ways_up(garden: &Garden, ingredient: &Ingredient, indoor: &IndoorStart) -> Vec<ComingUp> {
    let shelf = &garden.shelf;
    let mat = (shelf.warm_flats > 0 && shelf.room < indoor.warm_below).then_some((MAT, true));
    let at = |(warmth, on_mat)| {
        let days = days_to_emerge(&ingredient.crop.germination, warmth)?.ceil() as i64;
        Some(ComingUp { days, on_mat })
    };
    mat.into_iter()
        .chain([(shelf.room, false)])
        .filter_map(at)
        .collect()
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
    let ways = ways_up(garden, ingredient, &indoor);
    if ways.is_empty() {
        refuse(DropReason::TooColdIndoors);
        return Vec::new();
    }
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
        for way in &ways {
            let up = plus_days(sow.last(), way.days);
            let pot_ups = pot_up_rounds(&indoor, rounds, sow, plant_out, up);
            if pot_ups.is_empty() {
                refuse(DropReason::NoSession);
            }
            found.extend(pot_ups.into_iter().map(|pot_up| {
                let warm_until = way.on_mat.then_some(plus_days(up, -1));
                let late = weeks_apart(sow.first(), plant_out.first()) - i64::from(indoor.weeks_lo);
                Nursery {
                    sow: sow.clone(),
                    shelf: shelf_days(context, sow, pot_up.as_ref(), plant_out, warm_until),
                    pot_up,
                    days_up: way.days,
                    late_weeks: late.max(0) as u32,
                }
            }));
        }
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

/// Days on the shelf.
fn shelf_days(
    context: &Context<'_>,
    sow: &Round,
    pot_up: Option<&Round>,
    plant_out: &Round,
    warm_until: Option<Date>,
) -> ShelfDays {
    let horizon = context.horizon;
    let out = horizon.day(plant_out.last());
    ShelfDays {
        sown: horizon.day(sow.first()),
        potted: pot_up.map_or((out + 1, out + 1), |p| {
            (horizon.day(p.first()), horizon.day(p.last()))
        }),
        out,
        warm_until: warm_until.map(|day| horizon.day(day)),
    }
}
