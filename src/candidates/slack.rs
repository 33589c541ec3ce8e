//! Steps that one cancelled session would lose: if every class does them one round later, a
//! rule about days is broken, or too many ready years are lost. The checker counts them as well.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::{ClassAt, Ingredient, Team};
use crate::growth::{Fate, least_ready_years};

use super::candidate::Steps;
use super::context::Context;
use super::nursery::{Nursery, POT_TO_OUT_DAYS, SOW_TO_POT_DAYS, hardening, right_age};
use super::rounds::{PickDay, Round};
use super::windows::{Seasons, Window};

/// One ready year in so many may be lost: that is bearable.
const BEARABLE: usize = 10;

/// The next round after another: every class comes later than in that one, as soon as all of
/// them meet close together. `None` if they no longer do, or if it is then the turn of others.
#[must_use]
pub fn next_round(context: &Context<'_>, team: Team, round: &Round) -> Option<Round> {
    let garden = context.garden;
    let weeks = i64::from(garden.round_weeks(garden.tending(team, round.first())));
    let later = |(class, day): &(_, Date)| Some((*class, context.next_session(*class, *day)?));
    let mut late = Round {
        visits: round.visits.iter().map(later).collect::<Option<_>>()?,
    };
    loop {
        // A round that ends then begins in this week at the earliest.
        let from = plus_days(monday_of(late.last()), -7 * (weeks - 1));
        if late.first() >= from {
            break;
        }
        for (class, day) in late.visits.iter_mut().filter(|(_, day)| *day < from) {
            *day = context.next_session(*class, plus_days(from, -1))?;
        }
    }
    let in_turn = |(class, day): &(ClassAt, Date)| garden.tending(team, *day).has(class.grade);
    (late.visits.iter().all(in_turn) && late.last() <= garden.last_day()).then_some(late)
}

/// A planting that starts in the bed one round late, with the fates of its parts.
#[must_use]
pub fn late_start(
    context: &Context<'_>,
    team: Team,
    seasons: &Seasons,
    start: &Round,
) -> Option<(Round, Vec<Vec<Fate>>)> {
    let late = next_round(context, team, start)?;
    let fates = (0..late.visits.len())
        .map(|j| seasons.fates(late.day_of_part(j)))
        .collect();
    Some((late, fates))
}

/// The start in the bed one round late, unless it costs more of the window's ready years than one
/// in ten, or leaves fewer than a planting must have.
#[must_use]
pub fn bearable_start<'l>(
    seasons: &Seasons,
    late: Option<&'l (Round, Vec<Vec<Fate>>)>,
    window: &Window,
) -> Option<&'l Round> {
    let (late, fates) = late?;
    let ready = window.ready.len() as usize;
    let kept = seasons.ready(fates, &window.picks).len() as usize;
    let borne = kept + ready / BEARABLE >= ready;
    (borne && kept >= least_ready_years(seasons.years())).then_some(late)
}

/// How many steps of a planting have no round to spare. `late_start` is its start in the bed
/// one round late, if its years bear that.
#[must_use]
pub fn fragile(
    context: &Context<'_>,
    (ingredient, team): (&Ingredient, Team),
    steps: &Steps,
    nursery: Option<&Nursery>,
    late_start: Option<&Round>,
) -> u32 {
    let later = |round: &Round| next_round(context, team, round);
    // What has begun cannot fall out any more.
    let open = |round: &Round| round.first() >= context.garden.as_of();
    let in_bed = match &steps.plant_out {
        Some(_) => {
            late_start.is_some_and(|late| planted_late(context, ingredient, (steps, nursery), late))
        }
        None => late_start.is_some_and(|late| late.last() < first_pick(steps)),
    };
    let on_shelf = steps.plant_out.as_ref().zip(nursery).map(|(out, nursery)| {
        let sown = nursery.sow.as_ref().filter(|r| open(r)).is_none_or(|sow| {
            later(sow).is_some_and(|late| sown_late(ingredient, nursery, out, &late))
        });
        let potted = steps.pot_up.as_ref().filter(|r| open(r)).is_none_or(|pot| {
            later(pot).is_some_and(|late| plus_days(late.last(), POT_TO_OUT_DAYS) <= out.first())
        });
        u32::from(!sown) + u32::from(!potted)
    });
    let started = steps.plant_out.as_ref().or(steps.sow.as_ref());
    let in_bed = in_bed || !started.is_some_and(open);
    on_shelf.unwrap_or(0) + u32::from(!in_bed) + only_pick(context, steps)
}

/// True if seed sown late on the shelf still makes seedlings of the right age.
fn sown_late(ingredient: &Ingredient, nursery: &Nursery, out: &Round, late: &Round) -> bool {
    let up = plus_days(late.last(), nursery.days_up);
    let of_age = |indoor| right_age(&indoor, late.first(), out.first());
    ingredient.crop.indoor.is_some_and(of_age)
        && late.last() < hardening(out).0
        && match &nursery.pot_up {
            Some(pot) => plus_days(late.last(), SOW_TO_POT_DAYS).max(up) <= pot.first(),
            None => up <= out.first(),
        }
}

/// True if the plants may be planted out late.
fn planted_late(
    context: &Context<'_>,
    ingredient: &Ingredient,
    (steps, nursery): (&Steps, Option<&Nursery>),
    late: &Round,
) -> bool {
    let raised = nursery.is_none_or(|nursery| {
        let of_age = |indoor| right_age(&indoor, nursery.sown, late.first());
        let (from, to) = hardening(late);
        ingredient.crop.indoor.is_some_and(of_age)
            && context.gaps_touching(from, to).is_empty()
            && context.garden.shelf.open_on(late.last())
    });
    raised && late.last() < first_pick(steps)
}

/// One if there is a single pick, and it is still to come.
pub fn only_pick(context: &Context<'_>, steps: &Steps) -> u32 {
    let only = steps.picks.len() == 1 && first_pick(steps) >= context.garden.as_of();
    u32::from(only)
}

fn first_pick(steps: &Steps) -> Date {
    steps.picks.first().map_or(Date::MAX, PickDay::first)
}
