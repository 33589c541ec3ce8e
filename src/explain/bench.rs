//! A checked plan whose steps are moved on trial: on which days else they could be, what the plan
//! then breaks and brings, and whether that is borne.

use crate::calendar::days_between;
use crate::candidates::{Context, family_days, rounds};
use crate::checker::{CheckedPlan, Edit, Harvest, Replayer, Violation, bears};
use crate::garden::Garden;
use crate::growth::ThinningDays;
use crate::plan::{Planting, PlantingAt, Step, When};

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

    /// All days on which the same hands could do a step of a planting, whose other steps are as given.
    pub fn choices(&self, at: PlantingAt, planting: &Planting, step: &Step) -> Option<Vec<When>> {
        let garden = self.context.garden;
        let span = (garden.as_of(), garden.last_day());
        let within = |when: &When| when.first() >= Some(span.0) && when.last() <= Some(span.1);
        let counted = step.kind.facts().counted_from;
        let thinning = counted.map(|_| self.replayer.thinning_days(at, planting));
        let in_time = |when: &When| {
            thinning
                .as_ref()
                .is_none_or(|days| self.in_time(days, when))
        };
        let mut days: Vec<When> = match step.when {
            When::Sessions(_) => rounds(&self.context, garden.team_with_ids(&planting.grades)?)
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

    /// True if what is thinned on some days is thinned in time.
    pub fn in_time(&self, thinning: &Option<ThinningDays>, when: &When) -> bool {
        let garden = self.context.garden;
        let mut days = match when {
            When::Sessions(visits) => visits
                .iter()
                .map(|visit| (garden.class_named(&visit.class), visit.date))
                .collect(),
            When::Families(day) | When::Adult(day) => vec![(None, *day)],
            When::Daily { .. } => Vec::new(),
        };
        days.sort_unstable();
        let numbers = days
            .iter()
            .map(|(_, day)| self.context.horizon.day_number(*day));
        let (Some(thinning), Some(days)) = (thinning, numbers.collect::<Option<Vec<_>>>()) else {
            return false;
        };
        thinning.missed_by(&days).is_none()
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
