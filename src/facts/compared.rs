//! Plans side by side: what moves between two of them, and which of several days does best.

use std::cmp::Reverse;

use crate::calendar::Date;
use crate::checker::{CheckedPlan, Harvest};
use crate::explain::{Trial, YearsBack, promise};
use crate::garden::Team;
use crate::plan::{Aim, Planting, StepKind};

use super::Facts;
use super::spans::span_of;

/// The days of a kind of step, from first to last, of every planting that has it.
pub type Spans = Vec<(Date, Date)>;

/// What is otherwise about an ingredient in another plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Moved {
    /// The kinds of steps that have other days, with those days before and after.
    pub steps: Vec<(StepKind, Spans, Spans)>,
    /// Who grows it before and after, if these differ by name.
    pub teams: Option<(Team, Team)>,
}

/// What moves of an ingredient from one plan to another, of steps those of some kinds; `None` if
/// nothing does.
#[must_use]
pub fn moved(
    before: &Facts<'_>,
    after: &Facts<'_>,
    ingredient: &str,
    kinds: &[StepKind],
) -> Option<Moved> {
    let spans = |facts: &Facts<'_>, kind| -> Spans {
        let plantings = facts.plantings_named(ingredient);
        plantings.filter_map(|p| span_of(p, kind)).collect()
    };
    let kinds = kinds.iter().copied();
    let both = kinds.map(|kind| (kind, spans(before, kind), spans(after, kind)));
    let moved = both.filter(|(_, old, new)| old != new);
    let moved = Moved {
        steps: moved.collect(),
        teams: other_team(before, after, ingredient),
    };
    (!moved.steps.is_empty() || moved.teams.is_some()).then_some(moved)
}

fn other_team(before: &Facts<'_>, after: &Facts<'_>, ingredient: &str) -> Option<(Team, Team)> {
    let first = |planting: Option<&Planting>, facts: &Facts<'_>| Some(facts.team_of(planting?));
    let old = first(before.plantings_named(ingredient).next(), before)?;
    let new = first(after.plantings_named(ingredient).next(), after)?;
    (before.names_of(old) != after.names_of(new)).then_some((old, new))
}

/// The facts of the plan that came of a trial, if one did.
#[must_use]
pub fn of_trial(trial: &Trial) -> Option<Facts<'_>> {
    let checked = trial.outcome.as_ref().ok()?;
    Some(Facts::new(&trial.garden, checked))
}

/// How well a plan does, to be compared: the whole dish ready most often; of equals the better worst ingredient.
#[must_use]
pub fn does(facts: &Facts<'_>) -> (usize, Option<usize>) {
    let ready = facts.ingredients();
    let ready = ready.map(|(at, ..)| facts.promised_of(at).of_hundred());
    let dish = facts.promised();
    // Where the span of a plan has another length, its record may hold a year more or less.
    (dish.ready * 1000 / dish.years.max(1), ready.min())
}

/// Of plans for other days, the position of that which does best; of equals the one nearest to `day`.
#[must_use]
pub fn best_day(plans: &[(Date, &Facts<'_>)], day: Date) -> Option<usize> {
    let key = |(at, facts): &(Date, &Facts<'_>)| {
        let away = (*at - day).num_days().abs();
        (does(facts), Reverse(away))
    };
    let all = plans.iter().enumerate();
    all.max_by_key(|(_, plan)| key(plan)).map(|(at, _)| at)
}

/// In what a plan is better than another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gain {
    /// The aim.
    pub aim: Aim,
    /// What the plan has.
    pub with: f64,
    /// What the other has.
    pub without: f64,
}

/// The aims after the first of which something was given back in which a plan is better than the one
/// that gives nothing back, in order.
#[must_use]
pub fn gains(checked: &CheckedPlan, without: &CheckedPlan, back: &[YearsBack]) -> Vec<Gain> {
    let first = back.iter().map(|b| b.aim).min();
    let first = first.unwrap_or(Aim::WholeDish);
    // Of years and amounts what the plan has counts, not what was reached before something was
    // given back.
    let value = |of: &CheckedPlan, aim: Aim| {
        let has = promise(of).into_iter().chain(of.plan().aims.clone());
        has.into_iter().find(|r| r.aim == aim).map(|r| r.value)
    };
    let gain = |aim: Aim| {
        let (with, without) = (value(checked, aim)?, value(without, aim)?);
        let better = match aim.more_is_better() {
            true => with > without + 1e-6,
            false => with < without - 1e-6,
        };
        better.then_some(Gain { aim, with, without })
    };
    let later = checked
        .plan()
        .aims
        .iter()
        .map(|result| result.aim)
        .filter(|aim| *aim > first);
    later.filter_map(gain).collect()
}

/// Ready years of an ingredient and of the whole dish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ready {
    /// Of the ingredient.
    pub ingredient: usize,
    /// Of the whole dish.
    pub dish: usize,
}

impl Facts<'_> {
    /// The ready years of a planting's ingredient in the plan.
    #[must_use]
    pub fn ready_now(&self, planting: &Planting) -> Ready {
        let seen = self.seen(&planting.ingredient);
        Ready {
            ingredient: seen.map_or(0, |seen| seen.ready_years()),
            dish: self.replay.whole_dish_years(),
        }
    }

    /// The same in a harvest of the garden that differs from the plan's.
    #[must_use]
    pub fn ready_in(&self, planting: &Planting, harvest: &Harvest) -> Ready {
        let at = self.garden.ingredient_named(&planting.ingredient);
        let seen = at.and_then(|at| harvest.ingredients.get(at.0));
        Ready {
            ingredient: seen.map_or(0, |seen| seen.ready_years()),
            dish: harvest.whole_dish_years(),
        }
    }
}
