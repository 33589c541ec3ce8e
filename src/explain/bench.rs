//! A checked plan whose steps are moved on trial: on which days else they could be, what the plan
//! then breaks and brings, and whether that is borne.

use crate::calendar::days_between;
use crate::candidates::{Context, family_days, rounds};
use crate::checker::{CheckedPlan, Edit, Harvest, Replayer, Violation, bears};
use crate::garden::Garden;
use crate::growth::thinning_days;
use crate::plan::{Planting, Step, StepKind, When};

/// A plan whose steps are moved on trial.
pub struct Bench<'a> {
    /// The garden, with what is looked up in it again and again.
    pub context: Context<'a>,
    /// The plan.
    pub checked: &'a CheckedPlan,
    /// The plan, ready for changes on trial.
    pub replayer: Replayer<'a>,
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

    /// All days on which the same hands could do a step.
    pub fn choices(&self, planting: &Planting, step: &Step) -> Option<Vec<When>> {
        let garden = self.context.garden;
        let span = (garden.as_of(), garden.last_day());
        let within = |when: &When| when.first() >= Some(span.0) && when.last() <= Some(span.1);
        let in_time = |when: &When| {
            step.kind.facts().counted_from.is_none() || thinned_in_time(planting, step, when)
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
    pub fn bears(&self, edit: &Edit) -> bool {
        self.borne(edit).is_some()
    }

    /// What the changed plan brings, if it keeps every rule and nearly all ready years.
    pub fn borne(&self, edit: &Edit) -> Option<Harvest> {
        let kept = self.replayer.kept(edit);
        kept.filter(|harvest| keeps_promise(self.checked, harvest))
    }
}

/// True if all is thinned in time where a step, the sowing or the thinning itself, is moved.
pub fn thinned_in_time(planting: &Planting, step: &Step, moved: &When) -> bool {
    let other = |kind| planting.steps_of(kind).next();
    match step.kind {
        StepKind::Sow => other(StepKind::Thin).is_none_or(|thin| thinned_within(moved, &thin.when)),
        StepKind::Thin => other(StepKind::Sow).is_none_or(|sow| thinned_within(&sow.when, moved)),
        StepKind::PotUp | StepKind::Harden | StepKind::PlantOut => true,
        StepKind::Pick | StepKind::Cure => true,
    }
}

/// True if what was sown is thinned in time.
fn thinned_within(sown: &When, thinned: &When) -> bool {
    let within = || {
        let (from, to) = thinning_days(sown.first()?, sown.last()?);
        Some(from <= thinned.first()? && thinned.last()? <= to)
    };
    within().unwrap_or(false)
}

/// True if neither an ingredient nor the whole dish loses more than one of its ready years in ten,
/// and all stays ready often enough to be sown at all.
pub fn keeps_promise(checked: &CheckedPlan, harvest: &Harvest) -> bool {
    harvest.is_hopeful() && feeds_as_often(checked, harvest)
}

/// True if neither an ingredient nor the whole dish loses more than one of its ready years in ten, and
/// each ingredient stays ready often enough. What is sown already may come to nothing where another
/// sowing makes up for it.
pub fn feeds_as_often(checked: &CheckedPlan, harvest: &Harvest) -> bool {
    let replay = checked.replay();
    let mut ingredients = replay.ingredients.iter().zip(&harvest.ingredients);
    harvest.ingredients_are_hopeful()
        && bears(replay.whole_dish_years(), harvest.whole_dish_years())
        && ingredients.all(|(now, then)| bears(now.ready_years(), then.ready_years()))
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
