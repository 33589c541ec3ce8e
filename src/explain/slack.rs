//! Slack: to which days one step alone can be moved while all others stay, and what is lost if
//! it does not happen. The plan with the step moved is replayed, so the checker is the judge.

use rayon::prelude::*;

use crate::calendar::days_between;
use crate::candidates::{Context, Round, family_days, next_round, rounds, thinning_days};
use crate::checker::{CheckedPlan, Edit, Harvest, Replayer, StepAt, Violation, bearable};
use crate::garden::{ClassAt, Garden, GradeAt};
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
    /// Position of the planned days among them.
    pub planned: usize,
    /// Days between the first and the last of these on which it may not be.
    pub not_between: Vec<When>,
    /// True if it fails in the next round whatever other plantings do: the aim counts it.
    pub fragile: bool,
    /// True if the plan as it stands bears it in the next round. Of what no children do, of
    /// thinning and of picks this is not asked.
    pub bears_next: Option<bool>,
    /// What is left if it does not happen at all.
    pub missed: Missed,
}

/// What is left if a step does not happen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Missed {
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
        let bears = |when: &When| self.bears(&Edit::Moved(at, when.clone()));
        let (mut days, mut not_between): (Vec<When>, Vec<When>) =
            choices.into_iter().partition(bears);
        let planned = days.partition_point(|when| when.first() < step.when.first());
        days.insert(planned, step.when.clone());
        let (first, last) = (days.first()?.first(), days.last()?.first());
        not_between.retain(|when| first < when.first() && when.first() < last);
        Some(StepSlack {
            at,
            days,
            planned,
            not_between,
            fragile: self.checked.replay().fragile.contains(&at),
            bears_next: self.bears_next(at, step),
            missed: self.missed(at, planting, step)?,
        })
    }

    /// All days on which the same hands could do a step.
    pub fn choices(&self, planting: &Planting, step: &Step) -> Option<Vec<When>> {
        let garden = self.context.garden;
        let thinned = || {
            let sow = planting.steps.iter().find(|s| s.kind == StepKind::Sow)?;
            Some(thinning_days(sow.when.first()?, sow.when.last()?))
        };
        let span = match step.kind {
            StepKind::Thin => thinned()?,
            _ => (garden.school_year.start, garden.last_day()),
        };
        let within = |when: &When| when.first() >= Some(span.0) && when.last() <= Some(span.1);
        let mut days: Vec<When> = match step.when {
            When::Sessions(_) => rounds(&self.context, grade_of(garden, planting)?)
                .into_iter()
                .map(|round| self.sessions(round.visits.into_iter()))
                .collect(),
            When::Families(_) => family_days(garden).map(When::Families).collect(),
            When::Adult(_) => days_between(span.0, span.1)
                .filter(|day| garden.school_year.school_is_in(*day))
                .map(When::Adult)
                .collect(),
            When::Daily { .. } => Vec::new(),
        };
        days.retain(within);
        Some(days)
    }

    fn sessions(&self, visits: impl Iterator<Item = (ClassAt, crate::calendar::Date)>) -> When {
        let visit = |(class, date)| Visit {
            class: self.context.garden.class(class).name.clone(),
            date,
        };
        When::Sessions(visits.map(visit).collect())
    }

    /// What the changed plan breaks, and what it brings.
    pub fn faults(&self, edit: &Edit) -> (Vec<Violation>, Harvest) {
        (self.replayer.faults(edit), self.replayer.harvest(edit))
    }

    /// True if the changed plan keeps every rule and its promise.
    pub fn bears(&self, edit: &Edit) -> bool {
        let kept = self.replayer.kept(edit);
        kept.is_some_and(|harvest| keeps_promise(self.checked, &harvest))
    }

    /// Whether the plan bears a step in the next round.
    fn bears_next(&self, at: StepAt, step: &Step) -> Option<bool> {
        let When::Sessions(visits) = &step.when else {
            return None;
        };
        if matches!(step.kind, StepKind::Pick | StepKind::Thin) {
            return None;
        }
        let garden = self.context.garden;
        let visit = |v: &Visit| Some((class_named(garden, &v.class)?, v.date));
        let visits = visits.iter().map(visit).collect::<Option<_>>()?;
        let grade = grade_of(garden, self.checked.plan().plantings.get(at.planting)?)?;
        let late = next_round(&self.context, grade, &Round { visits });
        let late = late.map(|round| self.sessions(round.visits.into_iter()));
        Some(late.is_some_and(|when| self.bears(&Edit::Moved(at, when))))
    }

    fn missed(&self, at: StepAt, planting: &Planting, step: &Step) -> Option<Missed> {
        let picks = planting.steps.iter().filter(|s| s.kind == StepKind::Pick);
        let edit = match step.kind {
            StepKind::Thin => Edit::Without(at),
            StepKind::Pick if picks.count() > 1 => Edit::Without(at),
            _ => Edit::Gone(at.planting),
        };
        let harvest = self.replayer.harvest(&edit);
        let of = self.context.garden.ingredients.iter();
        let mut seen = of.zip(&harvest.ingredients);
        let (_, seen) = seen.find(|(i, _)| i.name == planting.ingredient)?;
        Some(Missed {
            ready_years: seen.ready_years(),
            whole_dish_years: harvest.whole_dish_years(),
            low: seen.low,
            expected: seen.expected,
        })
    }
}

/// True if neither an ingredient nor the whole dish loses more ready years than one in ten.
fn keeps_promise(checked: &CheckedPlan, harvest: &Harvest) -> bool {
    let replay = checked.replay();
    let bearable = bearable(replay.years.len());
    let whole = replay.dish_ready.iter().filter(|ready| **ready).count();
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

/// The grade to which a planting belongs.
fn grade_of(garden: &Garden, planting: &Planting) -> Option<GradeAt> {
    let mut ingredients = garden.ingredients.iter();
    let of = ingredients.find(|i| i.name == planting.ingredient)?;
    Some(of.grade)
}

fn class_named(garden: &Garden, name: &str) -> Option<ClassAt> {
    let mut classes = garden.grade_positions().flat_map(|g| garden.classes_of(g));
    classes.find(|class| garden.class(*class).name == name)
}
