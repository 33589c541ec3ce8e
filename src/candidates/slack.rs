//! Steps that one cancelled session would lose: there is no next session that still serves.

use crate::calendar::{Date, plus_days};
use crate::garden::Ingredient;
use crate::growth::Fate;

use super::context::Context;
use super::nursery::{Nursery, POT_TO_OUT_DAYS, SOW_TO_POT_DAYS, right_age, weeks_apart};
use super::rounds::Round;
use super::windows::{Seasons, Window};
use super::years::HOPE;

/// The round with every class one session later; `None` if a class has no later session.
fn one_session_later(context: &Context<'_>, round: &Round) -> Option<Round> {
    let later = |(class, day): &(_, Date)| Some((*class, context.next_session(*class, *day)?));
    Some(Round {
        visits: round.visits.iter().map(later).collect::<Option<_>>()?,
    })
}

/// Fates of the parts of a planting that starts in the bed one session late.
#[must_use]
pub fn late_fates(
    context: &Context<'_>,
    seasons: &Seasons,
    start: &Round,
) -> Option<(Round, Vec<Vec<Fate>>)> {
    let late = one_session_later(context, start)?;
    let fates = (0..late.visits.len())
        .map(|j| seasons.fates(late.day_of_part(j)))
        .collect();
    Some((late, fates))
}

/// True if starting in the bed one session late costs more ready years than one in ten.
#[must_use]
pub fn late_start_fails(
    seasons: &Seasons,
    late: Option<&(Round, Vec<Vec<Fate>>)>,
    window: &Window,
) -> bool {
    let Some((_, fates)) = late else { return true };
    let bearable = seasons.years() as u32 / HOPE;
    seasons.ready(fates, &window.picks).len() + bearable < window.ready.len()
}

/// How many of the steps on the shelf, and of planting out as far as age goes, have no
/// session to spare.
#[must_use]
pub fn fragile_on_shelf(
    context: &Context<'_>,
    ingredient: &Ingredient,
    nursery: &Nursery,
    plant_out: &Round,
) -> (u32, bool) {
    let Some(indoor) = ingredient.crop.indoor else {
        return (0, false);
    };
    let out = plant_out.first();
    let sow_late = one_session_later(context, &nursery.sow).is_some_and(|late| {
        let young_enough = weeks_apart(late.first(), out) >= i64::from(indoor.weeks_lo);
        let up = plus_days(late.last(), nursery.days_up);
        let in_time = match &nursery.pot_up {
            Some(pot) => plus_days(late.last(), SOW_TO_POT_DAYS).max(up) <= pot.first(),
            None => up < out,
        };
        young_enough && in_time
    });
    let pot_late = nursery.pot_up.as_ref().is_none_or(|pot| {
        one_session_later(context, pot)
            .is_some_and(|late| plus_days(late.last(), POT_TO_OUT_DAYS) <= out)
    });
    let out_late = one_session_later(context, plant_out)
        .is_some_and(|late| right_age(&indoor, nursery.sow.first(), late.first()));
    (u32::from(!sow_late) + u32::from(!pot_late), !out_late)
}
