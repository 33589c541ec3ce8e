//! A checked plan of which one planting at a time is changed and replayed; what stays as it is
//! is grown only once.

use crate::garden::{ClassAt, Garden};
use crate::growth::ThinningDays;
use crate::plan::{Plan, Planting, PlantingAt, Rule, StepAt, TiedTo, When};

use super::edit::{moved, without};
use super::fault::{DayLimit, Fault, Quantity, Subject, Violation};
use super::harvest::{Harvest, Ready, Seasons, grown_all, grown_without, seasons_of};
use super::rules;
use super::run::Run;
use super::slack::alone;
use super::thinned::{Grown, thinning_days};

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
    /// A step that a class, or all who do it, make up for later; of a sowing the thinning may move
    /// with it. The rest is as planned: seedlings are hardened off when they were to be, and
    /// that a step takes longer than a round is forgiven.
    MadeUp(Vec<(StepAt, When)>),
    /// Steps that fall out, and the plantings that are lost with them.
    Lost(Vec<StepAt>),
    /// Picks to which a class, or (`None`) none of those who pick, comes; all else as planned.
    Missed(Vec<(StepAt, Option<ClassAt>)>),
}

/// The rules in an order in which those that cost least to look at come first.
const CHEAP_FIRST: [Rule; 9] = [
    Rule::Happened,
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
        let grown = self.grown(edit);
        for rule in Rule::ALL {
            let faults = rules::faults(rule, &run, &harvest, &grown).into_iter();
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
        let forgiven = |fault: &Fault| matches!(edit, Edit::MadeUp(..)) && about_lateness(fault);
        let kept = violations.is_empty() && keeps(&run, &self.grown(edit), forgiven);
        kept.then(|| self.harvest_of(&run, edit))
    }

    /// In how many weather years in which one planting of the plan is ready by itself, it no longer
    /// is in the changed plan.
    #[must_use]
    pub fn years_lost(&self, planting: PlantingAt, edit: &Edit) -> usize {
        let plan = self.edited(edit);
        let (run, _) = Run::new(self.garden, &plan);
        let mut changed = self.ready_of(&run, edit).into_iter();
        let then = changed.find(|(at, _)| *at == planting);
        let then = then.map_or_else(Vec::new, |(_, ready)| ready);
        let now = self.ready.get(planting.0).into_iter().flatten();
        now.enumerate()
            .filter(|(year, now)| now.is_ok() && !then.get(*year).is_some_and(Result::is_ok))
            .count()
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
            if let Some(planting) = plan.plantings.get_mut(at.planting.0) {
                *planting = moved(self.garden, planting, at.step, when.clone());
            }
        };
        match edit {
            Edit::Moved(at, when) => put((at, when)),
            Edit::MadeUp(steps) => {
                steps.iter().for_each(|(at, when)| put((at, when)));
                for (at, _) in steps {
                    self.hardened_as_planned(at.planting, &mut plan);
                }
            }
            Edit::MovedBoth(both) => both.iter().for_each(|(at, when)| put((at, when))),
            Edit::Lost(lost) => {
                let left = self.left(lost);
                plan.plantings = left.into_iter().map(|(_, planting)| planting).collect();
            }
            Edit::Missed(_) => {}
        }
        plan
    }

    /// Puts the hardening of a planting back on its days.
    fn hardened_as_planned(&self, planting: PlantingAt, plan: &mut Plan) {
        let planned = self.plan.planting(planting).into_iter();
        let changed = plan.plantings.get_mut(planting.0).into_iter();
        let steps = changed.flat_map(|p| &mut p.steps);
        for (step, planned) in steps.zip(planned.flat_map(|p| &p.steps)) {
            match step.kind.facts().tied_to {
                Some(TiedTo::Before(_)) => step.when = planned.when.clone(),
                Some(TiedTo::After(_)) | None => {}
            }
        }
    }

    /// The plantings that are left without some steps, each with its position before that.
    fn left(&self, lost: &[StepAt]) -> Vec<(PlantingAt, Planting)> {
        let left = |(at, planting): (PlantingAt, &Planting)| {
            let own = lost.iter().filter(|step| step.planting == at);
            let steps: Vec<usize> = own.map(|step| step.step).collect();
            match steps.is_empty() {
                true => Some((at, planting.clone())),
                false => Some((at, without(self.garden, planting, &steps)?)),
            }
        };
        self.plan.numbered().filter_map(left).collect()
    }

    /// The positions that the plantings of the changed plan had before, in their order.
    fn before(&self, edit: &Edit) -> Vec<PlantingAt> {
        match edit {
            Edit::Lost(lost) => self.left(lost).into_iter().map(|(at, _)| at).collect(),
            Edit::Moved(..) | Edit::MovedBoth(_) | Edit::MadeUp(_) | Edit::Missed(_) => {
                (0..self.ready.len()).map(PlantingAt).collect()
            }
        }
    }

    /// The seasons of the plantings of the changed plan.
    fn grown(&self, edit: &Edit) -> Grown<'_> {
        let before = self.before(edit).into_iter();
        Grown::Before(before.map(|at| &self.seasons[at.0]).collect())
    }

    /// The days on which a planting may be thinned whose steps are as given, in the place of one of the
    /// plan; `None` for what is never thinned.
    #[must_use]
    pub fn thinning_days(&self, at: PlantingAt, planting: &Planting) -> Option<ThinningDays> {
        let plan = alone(planting.clone());
        let run = Run::new(self.garden, &plan).0;
        thinning_days(&run, run.plantings.first()?, self.seasons.get(at.0)?)
    }

    fn harvest_of(&self, run: &Run<'_>, edit: &Edit) -> Harvest {
        let ready = self.ready_of(run, edit).into_iter();
        let ready: Vec<Vec<Ready>> = ready.map(|(_, ready)| ready).collect();
        Harvest::put_together(run, &ready, None)
    }

    /// Grows the plantings that were changed, the others as before; each with the position that
    /// it had.
    fn ready_of(&self, run: &Run<'_>, edit: &Edit) -> Vec<(PlantingAt, Vec<Ready>)> {
        let feast = self.garden.feast.day;
        let missed: &[(StepAt, Option<ClassAt>)] = match edit {
            Edit::Missed(missed) => missed,
            _ => &[],
        };
        let changed: Vec<PlantingAt> = match edit {
            Edit::Lost(lost) => lost.iter().map(|at| at.planting).collect(),
            Edit::Moved(at, _) | Edit::MovedBoth([(at, _), _]) => vec![at.planting],
            Edit::MadeUp(steps) => steps.iter().map(|(at, _)| at.planting).collect(),
            Edit::Missed(missed) => missed.iter().map(|(at, _)| at.planting).collect(),
        };
        let own = |at: PlantingAt| -> Vec<(usize, Option<ClassAt>)> {
            let own = missed.iter().filter(|(step, _)| step.planting == at);
            own.map(|(at, class)| (at.step, *class)).collect()
        };
        let grow = |(planting, at): (_, PlantingAt)| match changed.contains(&at) {
            true => grown_without(run, planting, &self.seasons[at.0], feast, &own(at)),
            false => self.ready[at.0].clone(),
        };
        let plantings = run.plantings.iter().zip(self.before(edit));
        plantings.map(|pair| (pair.1, grow(pair))).collect()
    }
}

/// True if a plan keeps every rule, apart from what it promises, how often that is ready, and what
/// it aims at.
#[must_use]
pub fn keeps_rules(garden: &Garden, plan: &Plan) -> bool {
    let (run, violations) = Run::new(garden, plan);
    violations.is_empty() && keeps(&run, &Grown::WhenAsked, |_| false)
}

/// The rules ask nothing of the harvest that is no promise, so nothing is harvested for them.
fn keeps(run: &Run<'_>, grown: &Grown<'_>, forgiven: impl Fn(&Fault) -> bool) -> bool {
    let harvest = Harvest::put_together(run, &[], None);
    let breaks = |rule: &Rule| {
        let faults = rules::faults(*rule, run, &harvest, grown);
        let counts = |fault: &Fault| !about_promise(fault) && !forgiven(fault);
        faults.iter().any(counts)
    };
    !CHEAP_FIRST.iter().any(breaks)
}

/// True where a step takes longer than a round, or begins later than hardening off ends.
fn about_lateness(fault: &Fault) -> bool {
    matches!(
        fault,
        Fault::Day {
            limit: DayLimit::Round | DayLimit::Harden,
            ..
        }
    )
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
