//! What the steps of a planting take: days in the bed, minutes of sessions, other people.

use crate::calendar::{Date, plus_days};
use crate::garden::{CLEARING_DAYS, Garden, Ingredient, IngredientAt, Method, Team};
use crate::growth::effort;
use crate::plan::StepKind;

use super::amounts::Amounts;
use super::candidate::{Steps, Task, Thinning};
use super::context::Context;
use super::rounds::{PickDay, Round};

/// First and last day number in the bed, until it is cleared or the span ends.
#[must_use]
pub fn bed_days(context: &Context<'_>, from: Date, picks: &[PickDay]) -> (usize, usize) {
    let last_pick = picks.iter().map(PickDay::last).max().unwrap_or(from);
    let cleared = plus_days(last_pick, CLEARING_DAYS);
    (context.horizon.day(from), context.horizon.day(cleared))
}

/// Whole weeks from the last pick to the feast, for which the harvest is kept. What is put by keeps as well early as
/// late, and early leaves time to begin again: it counts the weeks from the first day to its last pick.
#[must_use]
pub fn waiting_weeks(garden: &Garden, at: IngredientAt, picks: &[PickDay]) -> u32 {
    let last = picks
        .iter()
        .map(PickDay::last)
        .max()
        .unwrap_or(garden.feast.day);
    let waits = match garden[at].crop.is_put_by() {
        true => last - garden.start(),
        false => garden.feast.day - last,
    };
    u32::try_from(waits.num_days() / 7).unwrap_or(0)
}

/// The work of all steps in sessions that are still open.
#[must_use]
pub fn tasks(garden: &Garden, ingredient: &Ingredient, method: Method, steps: &Steps) -> Vec<Task> {
    steps
        .rounds()
        .flat_map(|(kind, round)| {
            let open = |(_, date): &&(_, Date)| *date >= garden.as_of();
            let children = garden.children_who_share(round.classes());
            let effort = effort(kind, ingredient, method, children);
            round
                .visits
                .iter()
                .filter(open)
                .map(move |(class, date)| Task {
                    kind,
                    class: *class,
                    date: *date,
                    effort,
                })
        })
        .collect()
}

/// The most blocks whose every step fits into its session by itself.
#[must_use]
pub fn most_blocks_in_lessons(garden: &Garden, tasks: &[Task], amounts: &Amounts) -> u32 {
    let (least, most) = amounts.blocks;
    let fits = |blocks: u32| {
        tasks.iter().all(|t| {
            t.effort.minutes(blocks * amounts.block.plants)
                <= garden.session_minutes(t.class, t.date)
        })
    };
    (least..=most).take_while(|b| fits(*b)).last().unwrap_or(0)
}

/// Steps that others do than the children who sowed; a pick window counts once.
#[must_use]
pub fn by_others(garden: &Garden, team: Team, steps: &Steps) -> u32 {
    let strangers = |round: &Round| !garden.same_children(team, round.first());
    let strange = |(kind, round): &(StepKind, &Round)| !kind.is_harvest() && strangers(round);
    let steps_of_rounds = steps.rounds().filter(strange).count();
    let thinned_by_others = matches!(steps.thin, Some(Thinning::Adult(_) | Thinning::Families(_)));
    let picked_by_others = steps.picks.iter().any(|p| match p {
        PickDay::Round(round) => strangers(round),
        PickDay::Families(_) => true,
    });
    steps_of_rounds as u32 + u32::from(thinned_by_others) + u32::from(picked_by_others)
}
