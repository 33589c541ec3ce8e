//! What a plan reaches of every aim, counted in the finished plan alone: by day, step and session.

use std::collections::BTreeMap;

use crate::plan::Aim;

use super::harvest::Harvest;
use super::planting::{Planting, Step, When};
use super::replay::unattended;
use super::run::Run;
use super::seedlings::weeks_old;

/// The aims in order, each with what the plan reaches. `fragile` are its steps without slack.
pub fn counted(run: &Run<'_>, harvest: &Harvest, fragile: usize) -> Vec<(Aim, f64)> {
    let count = |aim: Aim| match aim {
        Aim::Slack => fragile as f64,
        Aim::Children => f64::from(run.plantings.iter().map(|p| by_others(run, p)).sum::<u32>()),
        Aim::UnattendedDays => f64::from(days_alone(run)),
        Aim::Evenness => second_steps(run) as f64,
        Aim::Tidiness => run.plantings.iter().map(|p| 1.0 + waiting(run, p)).sum(),
        _ => of_harvest(run, harvest, aim).unwrap_or_default(),
    };
    let aims = Aim::of(run.garden);
    aims.map(|aim| (aim, count(aim))).collect()
}

/// Days without anyone on which something needs care.
fn days_alone(run: &Run<'_>) -> u32 {
    let gaps = unattended(run).into_iter();
    gaps.map(|seen| seen.gap.unattended_days()).sum()
}

/// What the plan reaches of an aim about years or amounts; `None` for the others.
pub fn of_harvest(run: &Run<'_>, harvest: &Harvest, aim: Aim) -> Option<f64> {
    let ingredients = &harvest.ingredients;
    let years = || ingredients.iter().map(|i| i.ready_years());
    match aim {
        Aim::InThePot => Some(run.garden.ingredients.len() as f64),
        Aim::WorstIngredient => years().min().map(|n| n as f64),
        Aim::AllIngredients => Some(years().sum::<usize>() as f64),
        Aim::WholeDish => Some(harvest.whole_dish_years() as f64),
        Aim::LeastGrownShare => {
            let shares = ingredients.iter().map(|i| i.low_share.0.min(1.0));
            shares.reduce(f64::min)
        }
        Aim::ExpectedAmounts => Some(
            ingredients
                .iter()
                .map(|i| i.expected_share.0.min(1.0))
                .sum(),
        ),
        Aim::MovedDates => Some(run.moved().dates as f64),
        Aim::MovedDays => Some(run.moved().days as f64),
        Aim::Slack | Aim::Children | Aim::UnattendedDays | Aim::Evenness | Aim::Tidiness => None,
    }
}

/// Steps of a planting that others do than the children who began it; all its picks are one.
fn by_others(run: &Run<'_>, planting: &Planting<'_>) -> u32 {
    let others = |step: &Step<'_>| match step.when {
        When::Sessions(_) => {
            let day = run.horizon.date(step.first);
            !run.garden.same_children(planting.team, day)
        }
        When::Families(_) | When::Adult(_) => true,
        When::Daily => false,
    };
    let begun = planting.steps.iter().filter(|s| !s.plan.kind.is_harvest());
    let begun: u32 = begun.map(|step| u32::from(others(step))).sum();
    begun + u32::from(planting.picks().any(others))
}

/// Steps beyond the first in the sessions of all classes.
fn second_steps(run: &Run<'_>) -> usize {
    let mut sessions = BTreeMap::new();
    for step in run.plantings.iter().flat_map(|p| &p.steps) {
        if let When::Sessions(visits) = &step.when {
            for visit in visits {
                *sessions.entry(*visit).or_insert(0_usize) += 1;
            }
        }
    }
    sessions.values().map(|steps| steps - 1).sum()
}

/// Weeks that seedlings are older than they need be, and whole weeks that the harvest waits; for what is put by, that one
/// waits for it.
fn waiting(run: &Run<'_>, planting: &Planting<'_>) -> f64 {
    let age = weeks_old(run, planting).unwrap_or(0);
    let least = planting.ingredient.crop.indoor.map_or(0, |i| i.weeks_lo);
    let picked = planting.picks().map(|pick| pick.last).max();
    let (from, to) = match planting.ingredient.crop.is_put_by() {
        true => (run.horizon.day_number(run.garden.start()), picked),
        false => (picked, run.horizon.day_number(run.garden.feast.day)),
    };
    let kept = from
        .zip(to)
        .map_or(0, |(from, to)| to.saturating_sub(from) / 7);
    (age.saturating_sub(least) as usize + kept) as f64
}
