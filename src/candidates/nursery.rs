//! Raising plants on the shelf for a planting-out round: when to sow, when to pot up, what
//! care it takes; of seedlings that stand there already, what is still to be done.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::{
    Garden, IndoorStart, Ingredient, IngredientAt, MAT, Printed, Seedlings, Turns,
};
use crate::growth::germination::days_to_emerge;

use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::going_on::GoingOn;
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
    /// Sowing on the shelf; `None` if that was before the plan.
    pub sow: Option<Round>,
    /// The first day of sowing.
    pub sown: Date,
    /// The day from which on the plan cares for the seedlings.
    pub from: Date,
    /// Potting up, if the crop is potted up.
    pub pot_up: Option<Round>,
    /// Days from the last sowing until the seed is up; 0 where seedlings stand already.
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
    at: IngredientAt,
    rounds: &[Round],
    plant_out: &Round,
    dropped: &mut Dropped,
) -> Vec<Nursery> {
    let ingredient = &context.garden[at];
    let Some(indoor) = ingredient.crop.indoor else {
        return Vec::new();
    };
    let found = match context.garden.seedlings_of(at) {
        Some(seedlings) => of_seedlings(context, (at, &indoor), seedlings, rounds, plant_out),
        None => of_seed(context, (ingredient, &indoor), rounds, plant_out, dropped),
    };
    match found {
        Ok(found) => {
            if found.is_empty() {
                *dropped.entry(DropReason::NoSession).or_insert(0) += 1;
            }
            found
        }
        Err(reason) => {
            *dropped.entry(reason).or_insert(0) += 1;
            Vec::new()
        }
    }
}

/// The ways to go on with plants of which the sowing has begun; what else has begun is given as well.
pub fn nurseries_after(
    context: &Context<'_>,
    (at, going_on): (IngredientAt, &GoingOn<'_>),
    rounds: &[Round],
    plant_out: &Round,
) -> Vec<Nursery> {
    let garden = context.garden;
    let ingredient = &garden[at];
    let (Some(indoor), seedlings) = (ingredient.crop.indoor, garden.seedlings_of(at)) else {
        return Vec::new();
    };
    let sow = going_on.sow();
    let Some(sown) = sow.as_ref().map(Round::first).or(seedlings.map(|s| s.sown)) else {
        return Vec::new();
    };
    let from = seedlings.map_or(sown, |s| s.since().max(garden.start()));
    let on_mat = going_on.printed.on_mat;
    let mut ways = ways_up(garden, ingredient, &indoor).into_iter();
    let way = ways.find(|way| way.on_mat == on_mat);
    let days_up = sow.as_ref().and(way).map_or(0, |way| way.days);
    let last = sow.as_ref().map_or(sown, Round::last);
    let up = plus_days(last, days_up).max(from);
    let is_out = plant_out.first() < garden.as_of();
    let in_time = is_out
        || hardens(context, [going_on.printed], plant_out).is_ok()
            && right_age(&indoor, sown, plant_out.first())
            && garden.shelf.open_on(plant_out.last());
    if !in_time {
        return Vec::new();
    }
    let potted = going_on.pot_up();
    let pot_ups = match (&potted, seedlings.and_then(|s| s.potted_up)) {
        (Some(potted), _) if is_out || rooted(potted.last(), plant_out) => {
            vec![potted.clone().into()]
        }
        (None, Some(potted)) if is_out || rooted(potted, plant_out) => vec![None],
        (None, None) if indoor.pots_per_flat.is_none() || is_out => vec![None],
        (None, None) => pot_up_rounds(rounds, (last, up), plant_out),
        (Some(_), _) | (None, Some(_)) => Vec::new(),
    };
    let nursery = |pot_up: Option<Round>| Nursery {
        sown,
        from,
        shelf: shelf_days(
            context,
            from.max(garden.as_of()),
            pot_up.as_ref(),
            plant_out,
            on_mat.then_some(plus_days(up, -1)),
        ),
        sow: sow.clone(),
        pot_up,
        days_up,
        late_weeks: late_weeks(&indoor, sown, plant_out),
    };
    pot_ups.into_iter().map(nursery).collect()
}

/// True if plants that were potted up by a day are rooted again when they are planted out.
fn rooted(potted: Date, plant_out: &Round) -> bool {
    plus_days(potted, POT_TO_OUT_DAYS) <= plant_out.first()
}

/// The plants harden off on days that are still to come, while somebody is there. What has begun of it for one of some
/// printed plantings is given.
fn hardens<'p>(
    context: &Context<'_>,
    printed: impl IntoIterator<Item = &'p Printed>,
    plant_out: &Round,
) -> Result<(), DropReason> {
    if hardening(plant_out).0 >= context.garden.as_of() {
        return hardens_watched(context, plant_out);
    }
    let first = Some(plant_out.first());
    let as_printed = |p: &Printed| p.plant_out.as_ref().and_then(Turns::first) == first;
    match printed.into_iter().any(as_printed) {
        true => Ok(()),
        false => Err(DropReason::NoSession),
    }
}

/// Somebody is there while the plants harden off.
fn hardens_watched(context: &Context<'_>, plant_out: &Round) -> Result<(), DropReason> {
    let (from, to) = hardening(plant_out);
    match context.gaps_touching(from, to).is_empty() {
        true => Ok(()),
        false => Err(DropReason::HardensUnattended),
    }
}

/// The ways to raise plants from seed.
fn of_seed(
    context: &Context<'_>,
    (ingredient, indoor): (&Ingredient, &IndoorStart),
    rounds: &[Round],
    plant_out: &Round,
    dropped: &mut Dropped,
) -> Result<Vec<Nursery>, DropReason> {
    let garden = context.garden;
    let mut refuse = |reason| *dropped.entry(reason).or_insert(0) += 1;
    let ways = ways_up(garden, ingredient, indoor);
    if ways.is_empty() {
        return Err(DropReason::TooColdIndoors);
    }
    hardens_watched(context, plant_out)?;
    let mut found = Vec::new();
    for sow in rounds
        .iter()
        .filter(|sow| right_age(indoor, sow.first(), plant_out.first()))
    {
        if !garden.shelf.open_on(sow.first()) || !garden.shelf.open_on(plant_out.last()) {
            refuse(DropReason::ShelfTooSmall);
            continue;
        }
        for way in &ways {
            let up = plus_days(sow.last(), way.days);
            let pot_ups = match indoor.pots_per_flat {
                None if up < plant_out.first() => vec![None],
                None => Vec::new(),
                Some(_) => pot_up_rounds(rounds, (sow.last(), up), plant_out),
            };
            if pot_ups.is_empty() {
                refuse(DropReason::NoSession);
            }
            found.extend(pot_ups.into_iter().map(|pot_up| {
                let warm_until = way.on_mat.then_some(plus_days(up, -1));
                Nursery {
                    sow: Some(sow.clone()),
                    sown: sow.first(),
                    from: sow.first(),
                    shelf: shelf_days(context, sow.first(), pot_up.as_ref(), plant_out, warm_until),
                    pot_up,
                    days_up: way.days,
                    late_weeks: late_weeks(indoor, sow.first(), plant_out),
                }
            }));
        }
    }
    Ok(found)
}

/// True if seedlings sown on one day have the right age for planting out on another.
#[must_use]
pub fn right_age(indoor: &IndoorStart, sown: Date, out: Date) -> bool {
    let weeks = weeks_apart(sown, out);
    (i64::from(indoor.weeks_lo)..=i64::from(indoor.weeks_hi)).contains(&weeks)
}

/// The ways to go on with seedlings that stand on the shelf. That they are up is given.
fn of_seedlings(
    context: &Context<'_>,
    (at, indoor): (IngredientAt, &IndoorStart),
    seedlings: Seedlings,
    rounds: &[Round],
    plant_out: &Round,
) -> Result<Vec<Nursery>, DropReason> {
    let Seedlings {
        sown, potted_up, ..
    } = seedlings;
    let garden = context.garden;
    let printed = garden
        .season
        .iter()
        .flat_map(|season| season.printed_of(at));
    hardens(context, printed.map(|(_, printed)| printed), plant_out)?;
    let from = seedlings.since().max(garden.as_of());
    if !garden.shelf.open_on(from) || !garden.shelf.open_on(plant_out.last()) {
        return Err(DropReason::ShelfTooSmall);
    }
    let out = plant_out.first();
    if hardening(plant_out).0 < seedlings.since() || !right_age(indoor, sown, out) {
        return Ok(Vec::new());
    }
    let pot_ups = match (indoor.pots_per_flat, potted_up) {
        (Some(_), None) => pot_up_rounds(rounds, (sown, from), plant_out),
        (Some(_), Some(potted)) if out < plus_days(potted, POT_TO_OUT_DAYS) => Vec::new(),
        (Some(_), Some(_)) | (None, _) => vec![None],
    };
    let nursery = |pot_up: Option<Round>| Nursery {
        sow: None,
        sown,
        from,
        shelf: shelf_days(context, from, pot_up.as_ref(), plant_out, None),
        pot_up,
        days_up: 0,
        late_weeks: late_weeks(indoor, sown, plant_out),
    };
    Ok(pot_ups.into_iter().map(nursery).collect())
}

/// Weeks beyond the least age at planting out.
fn late_weeks(indoor: &IndoorStart, sown: Date, plant_out: &Round) -> u32 {
    let late = weeks_apart(sown, plant_out.first()) - i64::from(indoor.weeks_lo);
    late.max(0) as u32
}

/// The rounds in which seedlings may be potted up that were all sown by a day and are up on another.
fn pot_up_rounds(
    rounds: &[Round],
    (sown, up): (Date, Date),
    plant_out: &Round,
) -> Vec<Option<Round>> {
    let earliest = plus_days(sown, SOW_TO_POT_DAYS).max(up);
    let latest = plus_days(plant_out.first(), -POT_TO_OUT_DAYS);
    rounds
        .iter()
        .filter(|r| earliest <= r.first() && r.last() <= latest)
        .cloned()
        .map(Some)
        .collect()
}

/// Days on the shelf, from a day on.
fn shelf_days(
    context: &Context<'_>,
    from: Date,
    pot_up: Option<&Round>,
    plant_out: &Round,
    warm_until: Option<Date>,
) -> ShelfDays {
    let horizon = context.horizon;
    let out = horizon.day(plant_out.last());
    ShelfDays {
        sown: horizon.day(from),
        potted: pot_up.map_or((out + 1, out + 1), |p| {
            (horizon.day(p.first()), horizon.day(p.last()))
        }),
        out,
        warm_until: warm_until.map(|day| horizon.day(day)),
    }
}
