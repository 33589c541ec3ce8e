//! A checked plan of which one planting at a time is changed and replayed; what stays as it is
//! is grown only once.

use crate::garden::Garden;
use crate::plan::{Plan, Planting, Rule, When};

use super::edit::{moved, without};
use super::fault::{Fault, Quantity, Subject, Violation};
use super::harvest::{Harvest, Ready, Seasons, grown, grown_all, seasons_of};
use super::rules;
use super::run::Run;
use super::slack::StepAt;

/// A checked plan, ready for changes on trial.
pub struct Replayer<'a> {
    garden: &'a Garden,
    plan: &'a Plan,
    seasons: Vec<Seasons>,
    /// Per planting and weather year.
    ready: Vec<Vec<Ready>>,
}

/// One change to a plan.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// A step on other days, with the spans that hang on it: hardening off and curing.
    Moved(StepAt, When),
    /// Two steps of one planting on other days.
    MovedBoth([(StepAt, When); 2]),
    /// Steps that fall out, and the plantings that are lost with them.
    Lost(Vec<StepAt>),
}

/// The rules in an order in which those that cost least to look at come first.
const CHEAP_FIRST: [Rule; 8] = [
    Rule::Readiness,
    Rule::Sessions,
    Rule::Participation,
    Rule::Care,
    Rule::Rotation,
    Rule::Amount,
    Rule::Shelf,
    Rule::Space,
];

impl<'a> Replayer<'a> {
    /// Grows the plan once.
    pub(super) fn new(garden: &'a Garden, plan: &'a Plan) -> Self {
        let run = Run::new(garden, plan).0;
        let seasons = seasons_of(&run);
        Self {
            ready: grown_all(&run, &seasons, garden.feast.day),
            garden,
            plan,
            seasons,
        }
    }

    /// Everything that the changed plan breaks, apart from what it promises and aims at; and what
    /// it brings.
    #[must_use]
    pub fn replay(&self, edit: &Edit) -> (Vec<Violation>, Harvest) {
        let plan = self.edited(edit);
        let (run, mut violations) = Run::new(self.garden, &plan);
        let harvest = self.harvest_of(&run, edit);
        for rule in Rule::ALL {
            let faults = rules::faults(rule, &run, &harvest).into_iter();
            violations.extend(faults.map(|fault| Violation { rule, fault }));
        }
        violations.retain(|v| !about_promise(&v.fault));
        violations.sort_by_key(|v| v.rule);
        (violations, harvest)
    }

    /// What the changed plan brings, if it keeps every rule apart from what it promises and how
    /// often that is ready.
    #[must_use]
    pub fn kept(&self, edit: &Edit) -> Option<Harvest> {
        let plan = self.edited(edit);
        let (run, violations) = Run::new(self.garden, &plan);
        let kept = violations.is_empty() && keeps(&run);
        kept.then(|| self.harvest_of(&run, edit))
    }

    /// What the changed plan brings, whatever rules it breaks.
    #[must_use]
    pub fn harvest(&self, edit: &Edit) -> Harvest {
        let plan = self.edited(edit);
        self.harvest_of(&Run::new(self.garden, &plan).0, edit)
    }

    /// The plan with a change made.
    fn edited(&self, edit: &Edit) -> Plan {
        let mut plan = self.plan.clone();
        let mut put = |(at, when): (&StepAt, &When)| {
            if let Some(planting) = plan.plantings.get_mut(at.planting) {
                *planting = moved(self.garden, planting, at.step, when.clone());
            }
        };
        match edit {
            Edit::Moved(at, when) => put((at, when)),
            Edit::MovedBoth(both) => both.iter().for_each(|(at, when)| put((at, when))),
            Edit::Lost(lost) => {
                let left = self.left(lost);
                plan.plantings = left.into_iter().map(|(_, planting)| planting).collect();
            }
        }
        plan
    }

    /// The plantings that are left without some steps, each with its position before that.
    fn left(&self, lost: &[StepAt]) -> Vec<(usize, Planting)> {
        let left = |(at, planting): (usize, &Planting)| {
            let own = lost.iter().filter(|step| step.planting == at);
            let steps: Vec<usize> = own.map(|step| step.step).collect();
            match steps.is_empty() {
                true => Some((at, planting.clone())),
                false => Some((at, without(self.garden, planting, &steps)?)),
            }
        };
        let plantings = self.plan.plantings.iter().enumerate();
        plantings.filter_map(left).collect()
    }

    /// Grows the plantings that were changed; the others as before.
    fn harvest_of(&self, run: &Run<'_>, edit: &Edit) -> Harvest {
        let feast = self.garden.feast.day;
        let (before, changed): (Vec<usize>, Vec<usize>) = match edit {
            Edit::Lost(lost) => (
                self.left(lost).into_iter().map(|(at, _)| at).collect(),
                lost.iter().map(|at| at.planting).collect(),
            ),
            Edit::Moved(at, _) | Edit::MovedBoth([(at, _), _]) => {
                ((0..self.ready.len()).collect(), vec![at.planting])
            }
        };
        let grow = |(planting, at): (_, usize)| match changed.contains(&at) {
            true => grown(run, planting, &self.seasons[at], feast),
            false => self.ready[at].clone(),
        };
        let ready: Vec<Vec<Ready>> = run.plantings.iter().zip(before).map(grow).collect();
        Harvest::put_together(run, &ready, None)
    }
}

/// True if a plan keeps every rule, apart from what it promises, how often that is ready, and what
/// it aims at.
#[must_use]
pub fn keeps_rules(garden: &Garden, plan: &Plan) -> bool {
    let (run, violations) = Run::new(garden, plan);
    violations.is_empty() && keeps(&run)
}

/// The rules ask nothing of what is grown that is no promise, so nothing is grown for them.
fn keeps(run: &Run<'_>) -> bool {
    let harvest = Harvest::put_together(run, &[], None);
    let breaks = |rule: &Rule| {
        let faults = rules::faults(*rule, run, &harvest);
        faults.iter().any(|fault| !about_promise(fault))
    };
    !CHEAP_FIRST.iter().any(breaks)
}

/// True for faults about what a plan says will come of it.
fn about_promise(fault: &Fault) -> bool {
    match fault {
        Fault::PromiseList { .. } => true,
        Fault::Number { of, what, .. } => {
            matches!(of, Subject::Ingredient(_) | Subject::Dish) && *what != Quantity::Plantings
        }
        _ => false,
    }
}
