//! Slack: to which days one step alone can be moved while all others stay, and what is lost if
//! it does not happen. The plan with the step moved is replayed, so the checker is the judge.

use rayon::prelude::*;

use crate::candidates::{Round, next_round};
use crate::checker::{CheckedPlan, Edit};
use crate::deadline::Deadline;
use crate::garden::Garden;
use crate::plan::{Needed, Planting, PlantingAt, Step, StepAt, Visit, When};
use crate::units::Kilograms;

use super::bench::{Bench, keeps_promise, same_days};
use super::if_missed::IfMissed;

/// What one step of a plan bears.
#[derive(Debug, Clone, PartialEq)]
pub struct StepSlack {
    /// Which step.
    pub at: StepAt,
    /// The days on which it may be, in order, the planned ones among them: every rule holds, and
    /// no ingredient nor the whole dish loses more than one of its ready years in ten.
    pub days: Vec<When>,
    /// Ready years of its ingredient on each of these.
    pub ready_years: Vec<usize>,
    /// Further days, for a sowing, that would do if its thinning moves too.
    pub with_thinning: Vec<When>,
    /// Position of the planned days among `days`.
    pub planned: usize,
    /// Days between the first and the last of these on which it may not be.
    pub not_between: Vec<When>,
    /// True if it fails in the next round whatever other plantings do: the aim counts it.
    pub fragile: bool,
    /// True if the plan as it stands bears it in the next round. Of what no children do, of
    /// thinning and of picks this is not asked.
    pub bears_next: Option<bool>,
    /// True if the next round (of a sowing, with its thinning) keeps every rule, but costs too many
    /// ready years.
    pub next_costs: bool,
    /// What is left if it does not happen at all.
    pub missed: Missed,
    /// What becomes of it if one class cannot come, in the order of the visits; of families or an
    /// adult there is one.
    pub if_missed: Vec<IfMissed>,
}

/// What is left if a step does not happen, nor what the same people would do for other sowings
/// of the ingredient on the same days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Missed {
    /// How many sowings lose a step by it.
    pub sowings: usize,
    /// Ready years of its ingredient.
    pub ready_years: usize,
    /// Ready years of the whole dish.
    pub whole_dish_years: usize,
    /// Usable kilograms of the ingredient in a poor year.
    pub low: Kilograms,
    /// Usable kilograms of the ingredient in an ordinary year.
    pub expected: Kilograms,
    /// True if no sowing is lost in any year in which it would be ready.
    pub nothing: bool,
}

/// The slack of every step that people do, in the order of the plan. Hardening off and curing
/// go with the steps that they hang on; thinning is left out where its sowing is moved.
#[must_use]
pub fn slack(garden: &Garden, checked: &CheckedPlan) -> Vec<StepSlack> {
    slack_within(garden, checked, &Deadline::never())
}

/// The same without the steps that are not looked at in time.
#[must_use]
pub fn slack_within(garden: &Garden, checked: &CheckedPlan, deadline: &Deadline) -> Vec<StepSlack> {
    let bench = Bench::new(garden, checked);
    let plantings = checked.plan().numbered();
    let steps: Vec<StepAt> = plantings
        .flat_map(|(planting, planned)| {
            let steps = planned.steps.iter().enumerate();
            let by_people = |s: &Step| !s.kind.is_span();
            let at = move |step| StepAt { planting, step };
            steps
                .filter(move |(_, s)| by_people(s))
                .map(move |(step, _)| at(step))
        })
        .collect();
    steps
        .into_par_iter()
        .filter(|at| !deadline.is_over() && bench.is_open(*at))
        .filter_map(|at| bench.slack_of(at))
        .collect()
}

impl<'a> Bench<'a> {
    /// True if a step has not begun: what has cannot be moved.
    fn is_open(&self, at: StepAt) -> bool {
        let step = self.checked.plan().step(at);
        let first = step.and_then(|(_, step)| step.when.first());
        first.is_some_and(|first| first >= self.context.garden.as_of())
    }

    /// A step's slack; `None` for what goes with other steps.
    pub fn slack_of(&self, at: StepAt) -> Option<StepSlack> {
        let (planting, step) = self.checked.plan().step(at)?;
        let mut choices = self.choices(at.planting, planting, step)?;
        choices.retain(|when| !same_days(when, &step.when));
        let own = self
            .context
            .garden
            .ingredient_named(&planting.ingredient)?
            .0;
        let (mut days, mut ready_years) = (Vec::new(), Vec::new());
        let (mut with_thinning, mut not_between) = (Vec::new(), Vec::new());
        for when in choices {
            match self.borne(&Edit::Moved(at, when.clone())) {
                Some(harvest) => {
                    ready_years.push(harvest.ingredients.get(own)?.ready_years());
                    days.push(when);
                }
                None if self.bears_with_thinning(at, &when) => with_thinning.push(when),
                None => not_between.push(when),
            }
        }
        let planned = days.partition_point(|when| when.first() < step.when.first());
        days.insert(planned, step.when.clone());
        let seen = self.checked.replay().ingredients.get(own)?;
        ready_years.insert(planned, seen.ready_years());
        let next = self.next(planting, step);
        let (first, last) = (days.first()?.first(), days.last()?.first());
        not_between.retain(|when| first < when.first() && when.first() < last);
        Some(StepSlack {
            at,
            days,
            ready_years,
            with_thinning,
            planned,
            not_between,
            fragile: self.checked.replay().fragile.contains(&at),
            bears_next: next.as_ref().map(|when| self.bears_next(at, when)),
            next_costs: next.flatten().is_some_and(|when| self.costs(at, when)),
            missed: self.missed(at, own)?,
            if_missed: self.if_missed(at)?,
        })
    }

    /// True if the plan bears a sowing on other days with its thinning on some other days.
    fn bears_with_thinning(&self, at: StepAt, when: &When) -> bool {
        self.with_thinning(at, when)
            .iter()
            .any(|edit| self.bears(edit))
    }

    /// A sowing moved together with its thinning, in every way; none for what is not thinned.
    fn with_thinning(&self, at: StepAt, when: &When) -> Vec<Edit> {
        let Some((planting, sowing)) = self.checked.plan().step(at) else {
            return Vec::new();
        };
        let thinning = |s: &Step| s.kind.is_counted_from(sowing.kind);
        let Some(thin) = planting.steps.iter().position(thinning) else {
            return Vec::new();
        };
        let mut sown = planting.clone();
        if let Some(step) = sown.steps.get_mut(at.step) {
            step.when = when.clone();
        }
        let thinned = sown.steps.get(thin);
        let choices = thinned.and_then(|step| self.choices(at.planting, &sown, step));
        let both = |thinned: When| {
            let thin = StepAt { step: thin, ..at };
            Edit::MovedBoth([(at, when.clone()), (thin, thinned)])
        };
        choices.into_iter().flatten().map(both).collect()
    }

    /// The next round for a step, if that is asked of it; none is left at the end of the year.
    fn next(&self, planting: &Planting, step: &Step) -> Option<Option<When>> {
        let When::Sessions(visits) = &step.when else {
            return None;
        };
        if step.kind.facts().needed != Needed::Always {
            return None;
        }
        let garden = self.context.garden;
        let visit = |v: &Visit| Some((garden.class_named(&v.class)?, v.date));
        let visits = visits.iter().map(visit).collect::<Option<_>>()?;
        let team = garden.team_with_ids(&planting.grades)?;
        let late = next_round(&self.context, team, &Round { visits });
        Some(late.map(|round| round.when(garden)))
    }

    /// Whether the plan bears a step in the next round; a sowing, with its thinning if need be.
    fn bears_next(&self, at: StepAt, next: &Option<When>) -> bool {
        next.as_ref().is_some_and(|when| {
            self.bears(&Edit::Moved(at, when.clone())) || self.bears_with_thinning(at, when)
        })
    }

    /// True if a step on other days, a sowing with or without its thinning, keeps every rule, but costs
    /// too many ready years.
    fn costs(&self, at: StepAt, when: When) -> bool {
        let mut edits = self.with_thinning(at, &when);
        edits.push(Edit::Moved(at, when));
        let mut kept = edits.iter().filter_map(|edit| self.replayer.kept(edit));
        kept.any(|harvest| !keeps_promise(self.checked, &harvest))
    }

    /// A step and all that falls out with its sessions of the same ingredient; what is thinned
    /// asks for nothing more.
    fn lost_with(&self, at: StepAt) -> Option<Vec<StepAt>> {
        let plan = self.checked.plan();
        let (planting, step) = plan.step(at)?;
        if step.kind.facts().needed == Needed::Never {
            return Some(vec![at]);
        }
        let same = |(_, p): &(PlantingAt, &Planting)| p.ingredient == planting.ingredient;
        let of_planting = |(planting, p): (PlantingAt, &'a Planting)| {
            let steps = p.steps.iter().enumerate();
            let then = steps.filter(|(_, s)| same_days(&s.when, &step.when));
            then.map(move |(step, _)| StepAt { planting, step })
                .collect::<Vec<_>>()
        };
        let sowings = plan.numbered().filter(same);
        Some(sowings.flat_map(of_planting).collect())
    }

    fn missed(&self, at: StepAt, ingredient: usize) -> Option<Missed> {
        let lost = self.lost_with(at)?;
        let mut sowings: Vec<PlantingAt> = lost.iter().map(|at| at.planting).collect();
        sowings.sort_unstable();
        sowings.dedup();
        let edit = Edit::Lost(lost);
        let harvest = self.replayer.harvest(&edit);
        let mut losses = sowings
            .iter()
            .map(|at| self.replayer.years_lost(*at, &edit));
        let seen = harvest.ingredients.get(ingredient)?;
        Some(Missed {
            sowings: sowings.len(),
            ready_years: seen.ready_years(),
            whole_dish_years: harvest.whole_dish_years(),
            low: seen.low,
            expected: seen.expected,
            nothing: losses.all(|years| years == 0),
        })
    }
}
