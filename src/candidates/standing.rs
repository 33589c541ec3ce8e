//! Candidates of ingredients that stand already: growing in a bed until they are cleared off it, or in a
//! perennial patch.

use crate::calendar::plus_days;
use crate::garden::{
    BedAt, Begun, BegunAt, Garden, Ingredient, IngredientAt, Method, PatchAt, Plot, Printed,
    Source, Strips, Team,
};
use crate::growth::{Block, least_ready_years};
use crate::units::Kilograms;

use super::amounts::Amounts;
use super::candidate::{Candidate, Steps};
use super::context::Context;
use super::dropped::{DropReason, Dropped};
use super::going_on::PrintedPicks;
use super::moves::Open;
use super::places::{PlotSet, plot_of};
use super::rounds::{PickDay, rounds};
use super::slack::only_pick;
use super::takes::{bed_days, by_others, most_blocks_in_lessons, tasks, waiting_weeks};
use super::windows::{Beginning, Seasons, Window, pick_days, serves_feast, windows};
use super::years::YearSet;

/// All candidates of an ingredient that stands already; none for one that is sown, or planted out from the shelf.
pub fn candidates(
    context: &Context<'_>,
    plots: &[Plot],
    at: IngredientAt,
    dropped: &mut Dropped,
) -> Vec<Candidate> {
    let ingredient = &context.garden[at];
    let mut all = Vec::new();
    for team in &ingredient.teams {
        let found = match ingredient.source {
            Source::Sown => return Vec::new(),
            Source::Begun(which) => match context.garden[which].in_bed() {
                Some(place) => begun(context, plots, (at, *team), (which, place)),
                None => return Vec::new(),
            },
            Source::Patch(which) => patch(context, at, *team, which),
        };
        match found {
            Ok(found) => all.extend(found),
            Err(reason) => *dropped.entry(reason).or_insert(0) += 1,
        }
    }
    all
}

/// Keeps every plot on which something grows already until the first day after it can have been cleared off
/// there; for the whole plan where no candidate of it stands there.
pub fn keep_until_cleared(garden: &Garden, plots: &mut [Plot], standing: &[Candidate]) {
    let horizon = garden.horizon();
    for place in garden.begun.iter().filter_map(Begun::in_bed) {
        let plot = plot_of(plots, place);
        let own = standing.iter().filter(|c| c.plots == plot);
        let cleared = own.map(|c| horizon.date(c.bed_days.1)).min();
        let free = plus_days(cleared.unwrap_or(garden.last_day()), 1);
        for at in plot.iter() {
            plots[at.0].free_from = plots[at.0].free_from.max(Some(free));
        }
    }
}

/// What grows in a bed already: only the pick window is open, and with it the day from which its strips are free.
fn begun(
    context: &Context<'_>,
    plots: &[Plot],
    (at, team): (IngredientAt, Team),
    (which, (bed, strips)): (BegunAt, (BedAt, Strips)),
) -> Result<Vec<Candidate>, DropReason> {
    let garden = context.garden;
    let ingredient = &garden[at];
    let begun = &garden[which];
    let plot = plot_of(plots, (bed, strips));
    let bed = &garden[bed];
    let seasons = Seasons::new(
        garden,
        &ingredient.crop,
        bed.microclimate(),
        begun.as_plants(),
    );
    let pick_days = pick_days(garden, at, &rounds(context, team));
    let printed = printed_picks(garden, at, &pick_days);
    let beginning = Beginning::Given(begun.since);
    let mut windows = windows(&seasons, beginning, (&printed, &pick_days));
    // What somebody has picked already goes on, however seldom it is ready.
    if printed.begun.is_empty() {
        let least = least_ready_years(seasons.years());
        windows.retain(|w| w.ready.len() as usize >= least);
    }
    if windows.is_empty() {
        return Err(DropReason::RarelyReady);
    }
    let block = Block::of(&ingredient.crop, bed.rows()).ok_or(DropReason::NoBed)?;
    let yields = ingredient.crop.yields;
    let plants = block.plants_on(strips.count);
    let usable = f64::from(plants) * ingredient.crop.picking.one_pick_share.0 * yields.usable.0;
    let kilograms = (yields.low * usable, yields.expected * usable);
    let there = Block {
        strips: strips.count,
        plants,
    };
    let amounts = fixed_amount(there, kilograms);
    enough(garden, ingredient, &amounts)?;
    let found = windows.into_iter().map(|w| Candidate {
        plots: plot,
        ..standing(context, (at, team), Method::Growing, w, amounts.clone())
    });
    within_lessons(garden, found.collect())
}

/// A perennial patch: every session within its season is as good as another.
fn patch(
    context: &Context<'_>,
    at: IngredientAt,
    team: Team,
    which: PatchAt,
) -> Result<Vec<Candidate>, DropReason> {
    let garden = context.garden;
    let ingredient = &garden[at];
    let patch = &garden[which];
    let years = garden.weather.years(context.horizon).len();
    let nothing = Block {
        strips: 0,
        plants: 0,
    };
    let amounts = fixed_amount(nothing, (patch.low, patch.expected));
    enough(garden, ingredient, &amounts)?;
    let pick_days = pick_days(garden, at, &rounds(context, team));
    let picked = printed_picks(garden, at, &pick_days).begun;
    let in_season = |d: &&PickDay| patch.pick_from <= d.first() && d.last() <= patch.pick_to;
    let open = pick_days.iter().filter(in_season).cloned();
    let windows: Vec<Vec<PickDay>> = match picked.last() {
        // One pick is all that a patch bears.
        Some(last) if serves_feast(garden, at, last) => vec![picked],
        _ => open.map(|d| [&picked[..], &[d]].concat()).collect(),
    };
    let found = windows.into_iter().map(|picks| {
        let ready = YearSet::of(years, |_| true);
        let window = Window { picks, ready };
        standing(context, (at, team), Method::Patch, window, amounts.clone())
    });
    let found: Vec<Candidate> = found.collect();
    if found.is_empty() {
        return Err(DropReason::NoPickSession);
    }
    within_lessons(garden, found)
}

/// The picks of an ingredient that stands already, as they were printed.
fn printed_picks(garden: &Garden, at: IngredientAt, possible: &[PickDay]) -> PrintedPicks {
    let mut printed = garden
        .season
        .iter()
        .flat_map(|season| season.printed_of(at));
    let of = |(_, printed): (_, &Printed)| PrintedPicks::of(printed, garden.as_of(), possible);
    printed.next().map(of).unwrap_or_default()
}

/// The candidates whose every pick fits into its session by itself.
fn within_lessons(
    garden: &Garden,
    mut found: Vec<Candidate>,
) -> Result<Vec<Candidate>, DropReason> {
    found.retain(|c| most_blocks_in_lessons(garden, &c.tasks, &c.amounts) > 0);
    if found.is_empty() {
        Err(DropReason::LessonTooShort)
    } else {
        Ok(found)
    }
}

/// An amount that is there and not decided.
fn fixed_amount(block: Block, (low, expected): (Kilograms, Kilograms)) -> Amounts {
    Amounts {
        block,
        blocks: (1, 1),
        low,
        expected,
        levels: Vec::new(),
    }
}

/// What stands already is all there is: it must reach the least share by itself.
fn enough(garden: &Garden, ingredient: &Ingredient, amounts: &Amounts) -> Result<(), DropReason> {
    let least = ingredient.least(garden.feast.portions);
    if amounts.low.0 + 1e-9 < least.0 {
        Err(DropReason::BedsTooSmall)
    } else {
        Ok(())
    }
}

/// A candidate that only has a pick window, on none of the plots.
fn standing(
    context: &Context<'_>,
    (at, team): (IngredientAt, Team),
    method: Method,
    window: Window,
    amounts: Amounts,
) -> Candidate {
    let garden: &Garden = context.garden;
    let bed_days = bed_days(context, context.horizon.first(), &window.picks);
    let steps = Steps {
        sow: None,
        pot_up: None,
        plant_out: None,
        thin: None,
        picks: window.picks,
    };
    let fragile = match method {
        Method::Patch => 0,
        _ => only_pick(context, &steps),
    };
    let given = garden.begun_of(at).next().map(|(which, _)| which);
    Candidate {
        given,
        moves: Open::of(garden, at, given).moved(&steps),
        ingredient: at,
        team,
        method,
        plots: PlotSet::default(),
        bed_days,
        amounts,
        shelf: None,
        tasks: tasks(garden, &garden[at], method, &steps),
        ready: window.ready,
        gaps: Vec::new(),
        fragile,
        by_others: by_others(garden, team, &steps),
        idle_weeks: waiting_weeks(garden, at, &steps.picks),
        steps,
    }
}
