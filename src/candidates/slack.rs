//! Steps that one cancelled session would lose: if every class does them one session later, a
//! rule about days is broken, or too many ready years are lost. The checker counts them as well.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::{GradeAt, Ingredient};
use crate::growth::Fate;

use super::candidate::{Steps, Thinning};
use super::context::Context;
use super::nursery::{
    POT_TO_OUT_DAYS, SOW_TO_POT_DAYS, days_on_shelf_until_up, hardening, right_age,
};
use super::rounds::{PickDay, Round};
use super::thinning::thinning_days;
use super::windows::{Seasons, Window};
use super::years::HOPE;

/// The round with every class one session later; `None` if a class has no later session, if
/// it is then the turn of others, or if the sessions no longer lie close together.
fn one_session_later(context: &Context<'_>, grade: GradeAt, round: &Round) -> Option<Round> {
    let garden = context.garden;
    let later = |(class, day): &(_, Date)| Some((*class, context.next_session(*class, *day)?));
    let late = Round {
        visits: round.visits.iter().map(later).collect::<Option<_>>()?,
    };
    let tending = garden.tending(grade, late.first());
    let in_turn = late
        .visits
        .iter()
        .all(|(class, day)| class.grade == tending && garden.tending(grade, *day) == tending);
    let days = i64::from(garden[tending].round_weeks()) * 7;
    let end = plus_days(monday_of(late.first()), days);
    (in_turn && late.last() < end && late.last() <= garden.last_day()).then_some(late)
}

/// A planting that starts in the bed one session late, with the fates of its parts.
#[must_use]
pub fn late_start(
    context: &Context<'_>,
    grade: GradeAt,
    seasons: &Seasons,
    start: &Round,
) -> Option<(Round, Vec<Vec<Fate>>)> {
    let late = one_session_later(context, grade, start)?;
    let fates = (0..late.visits.len())
        .map(|j| seasons.fates(late.day_of_part(j)))
        .collect();
    Some((late, fates))
}

/// The start in the bed one session late, unless it costs more ready years than one in ten.
#[must_use]
pub fn bearable_start<'l>(
    seasons: &Seasons,
    late: Option<&'l (Round, Vec<Vec<Fate>>)>,
    window: &Window,
) -> Option<&'l Round> {
    let (late, fates) = late?;
    let bearable = seasons.years() as u32 / HOPE;
    let kept = seasons.ready(fates, &window.picks).len() + bearable >= window.ready.len();
    kept.then_some(late)
}

/// How many steps of a planting have no session to spare. `late_start` is its start in the bed
/// one session late, if its years bear that.
#[must_use]
pub fn fragile(
    context: &Context<'_>,
    ingredient: &Ingredient,
    steps: &Steps,
    late_start: Option<&Round>,
) -> u32 {
    let later = |round: &Round| one_session_later(context, ingredient.grade, round);
    let in_bed = match &steps.plant_out {
        Some(_) => late_start.is_some_and(|late| planted_late(context, ingredient, steps, late)),
        None => late_start.is_some_and(|late| late.last() < after_sowing(steps)),
    };
    let on_shelf = steps.plant_out.as_ref().and_then(|out| {
        let sow = steps.sow.as_ref()?;
        let sown = later(sow)
            .is_some_and(|late| sown_late(context, ingredient, steps.pot_up.as_ref(), out, &late));
        let potted = steps.pot_up.as_ref().is_none_or(|pot| {
            later(pot).is_some_and(|late| plus_days(late.last(), POT_TO_OUT_DAYS) <= out.first())
        });
        Some(u32::from(!sown) + u32::from(!potted))
    });
    let thinned = match (&steps.thin, &steps.sow) {
        (Some(Thinning::Round(thin)), Some(sow)) => later(thin).is_some_and(|late| {
            late.last() < first_pick(steps)
                && late.last() <= thinning_days(sow.first(), sow.last()).1
        }),
        _ => true,
    };
    on_shelf.unwrap_or(0)
        + u32::from(!in_bed)
        + u32::from(!thinned)
        + u32::from(steps.picks.len() == 1)
}

/// True if seed sown late on the shelf still makes seedlings of the right age.
fn sown_late(
    context: &Context<'_>,
    ingredient: &Ingredient,
    pot_up: Option<&Round>,
    out: &Round,
    late: &Round,
) -> bool {
    let days_until_up = days_on_shelf_until_up(context.garden, ingredient).map_or(0, |d| d.0);
    let up = plus_days(late.last(), days_until_up);
    let of_age = |indoor| right_age(&indoor, late.first(), out.first());
    ingredient.crop.indoor.is_some_and(of_age)
        && late.last() < hardening(out).0
        && match pot_up {
            Some(pot) => plus_days(late.last(), SOW_TO_POT_DAYS).max(up) <= pot.first(),
            None => up <= out.first(),
        }
}

/// True if the plants may be planted out late.
fn planted_late(
    context: &Context<'_>,
    ingredient: &Ingredient,
    steps: &Steps,
    late: &Round,
) -> bool {
    let raised = steps.sow.as_ref().is_none_or(|sow| {
        let of_age = |indoor| right_age(&indoor, sow.first(), late.first());
        let (from, to) = hardening(late);
        ingredient.crop.indoor.is_some_and(of_age)
            && context.gaps_touching(from, to).is_empty()
            && context.garden.shelf.open_on(late.last())
    });
    raised && late.last() < first_pick(steps)
}

fn first_pick(steps: &Steps) -> Date {
    steps.picks.first().map_or(Date::MAX, PickDay::first)
}

/// The first day of the step that follows sowing in the bed.
fn after_sowing(steps: &Steps) -> Date {
    match &steps.thin {
        Some(Thinning::Round(round)) => round.first(),
        Some(Thinning::Adult(day) | Thinning::Families(day)) => *day,
        None => first_pick(steps),
    }
}
