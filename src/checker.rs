//! Replays a plan day by day, without the model and without its candidates. It is the only
//! maker of a `CheckedPlan`, and every report takes one.

mod aims;
mod counted;
mod days;
mod edit;
mod fault;
mod harvest;
mod kept_picked;
mod needs;
mod packet_days;
mod planting;
mod renewed;
mod replay;
mod replayer;
mod rules;
mod run;
mod seedlings;
mod slack;
mod standing;
mod stands;
mod thinned;
mod unseen;
mod water;

pub use fault::{
    AimFault, DayLimit, Fault, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject,
    Violation,
};
pub use harvest::{Harvest, IngredientReplay};
pub use kept_picked::KeptPicked;
pub use packet_days::{DaysOut, OUT_BY, PacketDays};
pub use renewed::promise;
pub use replay::{Replay, RotationMiss, Unattended};
pub use replayer::{Edit, Replayer, keeps_rules};
pub use slack::{bearable, bears};
pub use standing::{Changed, Difference, Refused, Standing};
pub use unseen::{ENOUGH_YEARS, FRESH_YEARS, LEAST_YEARS, Unseen};
pub use water::{Seedbed, WaterNeed, Watering};

use crate::calendar::Date;
use crate::garden::Garden;
use crate::plan::saved::Since;
use crate::plan::{Plan, Rule, Stand};

use harvest::seasons_of;
use renewed::{differences, renewed, without_claims};
use run::Run;
use thinned::Grown;

/// A plan that keeps every rule, with what the replay saw.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckedPlan {
    plan: Plan,
    replay: Replay,
    standing: Standing,
    unseen: Option<Unseen>,
}

impl CheckedPlan {
    fn new(plan: Plan, replay: Replay, standing: Standing) -> Self {
        Self {
            plan,
            replay,
            standing,
            unseen: None,
        }
    }

    /// The plan.
    #[must_use]
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What it is worth: just made, saved, edited, or of a project that has changed since.
    #[must_use]
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// What the replay saw.
    #[must_use]
    pub fn replay(&self) -> &Replay {
        &self.replay
    }

    /// The same with what it promises counted on fresh years, in its own garden, or else as it says of
    /// itself. Plans that are only tried, and that nobody reads, go without.
    #[must_use]
    pub fn counted(self, garden: &Garden) -> Self {
        let fresh = Unseen::in_fresh(garden, &self.plan);
        let unseen = fresh.or_else(|| Unseen::claimed(garden, &self.plan));
        Self { unseen, ..self }
    }

    /// The same with what was counted of plans made the same way, which it then says of itself.
    #[must_use]
    pub fn saying(mut self, garden: &Garden, unseen: &Unseen) -> Self {
        self.plan.unseen = Some(unseen.claim(garden));
        self.counted(garden)
    }

    /// The plan in years that it was not chosen on, where it was counted on such.
    #[must_use]
    pub fn unseen(&self) -> Option<&Unseen> {
        self.unseen.as_ref()
    }

    /// The plan grown again, as it stands, in a garden that differs from its own in nothing
    /// but its weather or its crops' figures. Rules are not looked at.
    #[must_use]
    pub fn grown_in(&self, garden: &Garden) -> Harvest {
        let run = Run::new(garden, &self.plan).0;
        Harvest::of(&run, &seasons_of(&run))
    }

    /// The plan in its own garden, ready for changes on trial.
    #[must_use]
    pub fn replayer<'a>(&'a self, garden: &'a Garden) -> Replayer<'a> {
        Replayer::new(garden, &self.plan)
    }

    /// First and last day on which each planting takes its strips, a week to clear them included;
    /// `None` for a patch.
    #[must_use]
    pub fn in_bed(&self, garden: &Garden) -> Vec<Option<(Date, Date)>> {
        let run = Run::new(garden, &self.plan).0;
        let span = |p: &planting::Planting<'_>| {
            let (from, to) = days::in_bed(&run, p)?;
            Some((run.horizon.date(from), run.horizon.date(to)))
        };
        run.plantings.iter().map(span).collect()
    }

    /// What stands on which strips of which bed, and when, in the order of the plan.
    #[must_use]
    pub fn stands(&self, garden: &Garden) -> Vec<Stand> {
        stands::stands(&Run::new(garden, &self.plan).0)
    }

    /// The water that the plan's beds need beside the rain, in its own garden or in one that
    /// differs from it in nothing but its weather, its crops' figures and the sizes of its beds.
    #[must_use]
    pub fn watering(&self, garden: &Garden) -> Watering {
        Watering::of(&Run::new(garden, &self.plan).0)
    }
}

/// Checks a plan that was made just now against its garden.
///
/// # Errors
/// All violations, in the order of the rules.
pub fn check(garden: &Garden, plan: Plan) -> Result<CheckedPlan, Vec<Violation>> {
    let replay = replayed(garden, &plan, false)?;
    Ok(CheckedPlan::new(plan, replay, Standing::Planned))
}

/// Checks a saved plan against a garden, and counts what it promises. One that was edited is taken as it stands and claims nothing
/// of its aims; where the project has changed since, what follows from it is derived anew.
///
/// # Errors
/// All violations, in the order of the rules; where the plan names what the project does not know,
/// only that.
pub fn check_saved(garden: &Garden, plan: Plan, since: Since) -> Result<CheckedPlan, Box<Refused>> {
    let first = replayed(garden, &plan, since == Since::Edited);
    let (plan, replay, standing) = match (since, first) {
        (Since::Edited, first) => (without_claims(plan), first, Standing::Edited),
        (Since::Nothing, Ok(replay)) => (plan, Ok(replay), Standing::Saved),
        (_, first) => {
            let violations = first.err().unwrap_or_default();
            let standing = |differences| Standing::Changed(Changed { since, differences });
            let missing = missing(&violations);
            if missing.is_empty() {
                let plan = renewed(garden, plan);
                let replay = replayed(garden, &plan, false);
                (plan, replay, standing(differences(&violations)))
            } else {
                (plan, Err(missing), standing(Vec::new()))
            }
        }
    };
    match replay {
        Ok(replay) => Ok(CheckedPlan::new(plan, replay, standing).counted(garden)),
        Err(violations) => Err(Box::new(Refused {
            standing,
            violations,
        })),
    }
}

/// The names that a project does not know, each once.
fn missing(violations: &[Violation]) -> Vec<Violation> {
    let mut missing: Vec<Violation> = Vec::new();
    for violation in violations {
        let is_name = matches!(violation.fault, Fault::Unknown { .. });
        if is_name && !missing.contains(violation) {
            missing.push(violation.clone());
        }
    }
    missing
}

/// Replays a plan. One that was `edited` is held to what it says of its aims, too.
fn replayed(garden: &Garden, plan: &Plan, edited: bool) -> Result<Replay, Vec<Violation>> {
    let (run, mut violations) = Run::new(garden, plan);
    let seasons = seasons_of(&run);
    let harvest = Harvest::of(&run, &seasons);
    let grown = Grown::Before(seasons.iter().collect());
    for rule in Rule::ALL {
        let faults = rules::faults(rule, &run, &harvest, &grown).into_iter();
        violations.extend(faults.map(|fault| Violation { rule, fault }));
    }
    violations.extend(aims::violations(&run, &harvest));
    violations.sort_by_key(|v| v.rule);
    if !violations.is_empty() {
        return Err(violations);
    }
    let fragile = slack::fragile(&run, &seasons);
    let counted = counted::counted(&run, &harvest, fragile.len());
    violations.extend(aims::fewer_fragile(&run, fragile.len()));
    if edited {
        violations.extend(aims::not_counted(&run, &counted));
    }
    if violations.is_empty() {
        let kept_picked = kept_picked::kept_picked(&run, &seasons);
        Ok(Replay::new(&run, harvest, (fragile, counted), kept_picked))
    } else {
        Err(violations)
    }
}
