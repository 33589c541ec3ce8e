//! Slack: to which days one step alone can be moved while all others stay, and what is lost if
//! it does not happen. The plan with the step moved is replayed, so the checker is the judge.

use rayon::prelude::*;

use crate::calendar::{Date, days_between};
use crate::candidates::{Context, Round, family_days, next_round, rounds, thinning_days};
use crate::checker::{CheckedPlan, Edit, Harvest, Replayer, StepAt, Violation, bearable};
use crate::deadline::Deadline;
use crate::garden::Garden;
use crate::plan::{Planting, Step, StepKind, Visit, When};
use crate::units::Kilograms;

/// What one step of a plan bears.
#[derive(Debug, Clone, PartialEq)]
pub struct StepSlack {
    /// Which step.
    pub at: StepAt,
    /// The days on which it may be, in order, the planned ones among them: every rule holds, and
    /// no ingredient nor the whole dish loses more than one ready year in ten.
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
    /// True if the next round keeps every rule, but costs too many ready years.
    pub next_costs: bool,
    /// What is left if it does not happen at all.
    pub missed: Missed,
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
}

/// A plan whose steps are moved on trial.
pub struct Bench<'a> {
    context: Context<'a>,
    checked: &'a CheckedPlan,
    replayer: Replayer<'a>,
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
    let plantings = checked.plan().plantings.iter().enumerate();
    let steps: Vec<StepAt> = plantings
        .flat_map(|(planting, planned)| {
            let steps = planned.steps.iter().enumerate();
            let by_people = |s: &Step| !matches!(s.kind, StepKind::Harden | StepKind::Cure);
            let at = move |step| StepAt { planting, step };
            steps
                .filter(move |(_, s)| by_people(s))
                .map(move |(step, _)| at(step))
        })
        .collect();
    steps
        .into_par_iter()
        .filter(|_| !deadline.is_over())
        .filter_map(|at| bench.slack_of(at))
        .collect()
}

impl<'a> Bench<'a> {
    /// Grows the plan once.
    pub fn new(garden: &'a Garden, checked: &'a CheckedPlan) -> Self {
        Self {
            context: Context::new(garden),
            replayer: checked.replayer(garden),
            checked,
        }
    }

    /// A step's slack; `None` for what goes with other steps.
    pub fn slack_of(&self, at: StepAt) -> Option<StepSlack> {
        let planting = self.checked.plan().plantings.get(at.planting)?;
        let step = planting.steps.get(at.step)?;
        let mut choices = self.choices(planting, step)?;
        choices.retain(|when| !same_days(when, &step.when));
        let own = self
            .context
            .garden
            .ingredient_named(&planting.ingredient)?
            .0;
        let (mut days, mut ready_years) = (Vec::new(), Vec::new());
        let (mut with_thinning, mut not_between) = (Vec::new(), Vec::new());
        for when in choices {
            let borne = match thinned_in_time(planting, step, &when) {
                true => self.borne(&Edit::Moved(at, when.clone())),
                false => None,
            };
            match borne {
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
        })
    }

    /// All days on which the same hands could do a step.
    pub fn choices(&self, planting: &Planting, step: &Step) -> Option<Vec<When>> {
        let garden = self.context.garden;
        let span = (garden.school_year.start, garden.last_day());
        let within = |when: &When| when.first() >= Some(span.0) && when.last() <= Some(span.1);
        let sow = planting.steps.iter().find(|s| s.kind == StepKind::Sow);
        let in_time = |when: &When| match (step.kind, sow) {
            (StepKind::Thin, Some(sow)) => thinned_within(&sow.when, when),
            _ => true,
        };
        let mut days: Vec<When> = match step.when {
            When::Sessions(_) => rounds(&self.context, garden.grade_with_id(&planting.grade)?)
                .iter()
                .map(|round| round.when(garden))
                .collect(),
            When::Families(_) => family_days(garden).map(When::Families).collect(),
            When::Adult(_) => days_between(span.0, span.1)
                .filter(|day| garden.school_year.school_is_in(*day))
                .map(When::Adult)
                .collect(),
            When::Daily { .. } => Vec::new(),
        };
        days.retain(|when| within(when) && in_time(when));
        Some(days)
    }

    /// What the changed plan breaks, what it brings, and whether it is borne: every rule holds,
    /// and nearly all ready years are kept.
    pub fn replay(&self, edit: &Edit) -> (Vec<Violation>, Harvest, bool) {
        let (violations, harvest) = self.replayer.replay(edit);
        let borne = violations.is_empty() && keeps_promise(self.checked, &harvest);
        (violations, harvest, borne)
    }

    /// True if the changed plan keeps every rule and nearly all ready years.
    fn bears(&self, edit: &Edit) -> bool {
        self.borne(edit).is_some()
    }

    /// What the changed plan brings, if it keeps every rule and nearly all ready years.
    fn borne(&self, edit: &Edit) -> Option<Harvest> {
        let kept = self.replayer.kept(edit);
        kept.filter(|harvest| keeps_promise(self.checked, harvest))
    }

    /// True if the plan bears a sowing on other days with its thinning on some other days.
    fn bears_with_thinning(&self, at: StepAt, when: &When) -> bool {
        self.with_thinning(at, when)
            .iter()
            .any(|edit| self.bears(edit))
    }

    /// A sowing moved together with its thinning, in every way; none for what is not thinned.
    fn with_thinning(&self, at: StepAt, when: &When) -> Vec<Edit> {
        let Some(planting) = self.checked.plan().plantings.get(at.planting) else {
            return Vec::new();
        };
        let is_sowing = planting.steps.get(at.step).map(|s| s.kind) == Some(StepKind::Sow);
        let thin = planting.steps.iter().position(|s| s.kind == StepKind::Thin);
        let (true, Some(thin)) = (is_sowing, thin) else {
            return Vec::new();
        };
        let mut sown = planting.clone();
        if let Some(step) = sown.steps.get_mut(at.step) {
            step.when = when.clone();
        }
        let thinned = sown.steps.get(thin);
        let choices = thinned.and_then(|step| self.choices(&sown, step));
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
        if matches!(step.kind, StepKind::Pick | StepKind::Thin) {
            return None;
        }
        let garden = self.context.garden;
        let visit = |v: &Visit| Some((garden.class_named(&v.class)?, v.date));
        let visits = visits.iter().map(visit).collect::<Option<_>>()?;
        let grade = garden.grade_with_id(&planting.grade)?;
        let late = next_round(&self.context, grade, &Round { visits });
        Some(late.map(|round| round.when(garden)))
    }

    /// Whether the plan bears a step in the next round; a sowing, with its thinning if need be.
    fn bears_next(&self, at: StepAt, next: &Option<When>) -> bool {
        next.as_ref().is_some_and(|when| {
            self.bears(&Edit::Moved(at, when.clone())) || self.bears_with_thinning(at, when)
        })
    }

    /// True if a step on other days keeps every rule, but costs too many ready years.
    fn costs(&self, at: StepAt, when: When) -> bool {
        let kept = self.replayer.kept(&Edit::Moved(at, when));
        kept.is_some_and(|harvest| !keeps_promise(self.checked, &harvest))
    }

    /// A step and all that falls out with its sessions of the same ingredient; what is thinned
    /// asks for nothing more.
    fn lost_with(&self, at: StepAt) -> Option<Vec<StepAt>> {
        let plantings = &self.checked.plan().plantings;
        let planting = plantings.get(at.planting)?;
        let step = planting.steps.get(at.step)?;
        if step.kind == StepKind::Thin {
            return Some(vec![at]);
        }
        let same = |(_, p): &(usize, &Planting)| p.ingredient == planting.ingredient;
        let of_planting = |(planting, p): (usize, &'a Planting)| {
            let steps = p.steps.iter().enumerate();
            let then = steps.filter(|(_, s)| same_days(&s.when, &step.when));
            then.map(move |(step, _)| StepAt { planting, step })
                .collect::<Vec<_>>()
        };
        let sowings = plantings.iter().enumerate().filter(same);
        Some(sowings.flat_map(of_planting).collect())
    }

    fn missed(&self, at: StepAt, ingredient: usize) -> Option<Missed> {
        let lost = self.lost_with(at)?;
        let mut sowings: Vec<usize> = lost.iter().map(|at| at.planting).collect();
        sowings.sort_unstable();
        sowings.dedup();
        let harvest = self.replayer.harvest(&Edit::Lost(lost));
        let seen = harvest.ingredients.get(ingredient)?;
        Some(Missed {
            sowings: sowings.len(),
            ready_years: seen.ready_years(),
            whole_dish_years: harvest.whole_dish_years(),
            low: seen.low,
            expected: seen.expected,
        })
    }
}

/// True if a step leaves a thinning, as it stands, in time where it is the sowing and is moved.
fn thinned_in_time(planting: &Planting, step: &Step, moved: &When) -> bool {
    let thin = planting.steps.iter().find(|s| s.kind == StepKind::Thin);
    match (step.kind, thin) {
        (StepKind::Sow, Some(thin)) => thinned_within(moved, &thin.when),
        _ => true,
    }
}

/// True if all that was sown is thinned in time: by each class what it sowed, by others all.
fn thinned_within(sown: &When, thinned: &When) -> bool {
    let within = |sown: (Option<Date>, Option<Date>), first, last| {
        let (Some(from), Some(to)) = sown else {
            return false;
        };
        let (from, to) = thinning_days(from, to);
        first >= Some(from) && last <= Some(to)
    };
    let all = (sown.first(), sown.last());
    let When::Sessions(visits) = thinned else {
        return within(all, thinned.first(), thinned.last());
    };
    let own = |class: &str| {
        let day = match sown {
            When::Sessions(sown) => sown.iter().find(|v| v.class == class).map(|v| v.date),
            _ => None,
        };
        day.map_or(all, |day| (Some(day), Some(day)))
    };
    visits
        .iter()
        .all(|v| within(own(&v.class), Some(v.date), Some(v.date)))
}

/// True if neither an ingredient nor the whole dish loses more ready years than one in ten.
fn keeps_promise(checked: &CheckedPlan, harvest: &Harvest) -> bool {
    let replay = checked.replay();
    let bearable = bearable(replay.years.len());
    let whole = replay.whole_dish_years();
    let mut ingredients = replay.ingredients.iter().zip(&harvest.ingredients);
    harvest.whole_dish_years() + bearable >= whole
        && ingredients.all(|(now, then)| then.ready_years() + bearable >= now.ready_years())
}

/// True if both are the same days of the same hands, in whatever order.
pub fn same_days(a: &When, b: &When) -> bool {
    match (a, b) {
        (When::Sessions(a), When::Sessions(b)) => {
            a.len() == b.len() && a.iter().all(|visit| b.contains(visit))
        }
        _ => a == b,
    }
}
