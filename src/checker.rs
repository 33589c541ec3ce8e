//! Replays a plan day by day, without the model and without its candidates. It is the only
//! maker of a `CheckedPlan`, and every report takes one.

mod aims;
mod days;
mod fault;
mod harvest;
mod needs;
mod packet_days;
mod planting;
mod replay;
mod rules;
mod run;
mod seedlings;
mod water;

pub use fault::{
    AimFault, DayLimit, Fault, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject,
    Violation,
};
pub use harvest::{Harvest, IngredientReplay};
pub use packet_days::{DaysOut, OUT_BY, PacketDays};
pub use replay::{Replay, RotationMiss, Unattended};
pub use water::{Seedbed, WaterNeed, Watering};

use crate::garden::Garden;
use crate::plan::{Plan, Rule};

use run::Run;

/// A plan that keeps every rule, with what the replay saw.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckedPlan {
    plan: Plan,
    replay: Replay,
}

impl CheckedPlan {
    /// The plan.
    #[must_use]
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// What the replay saw.
    #[must_use]
    pub fn replay(&self) -> &Replay {
        &self.replay
    }

    /// The plan grown again, as it stands, in a garden that differs from its own in nothing
    /// but its weather or its crops' figures. Rules are not looked at.
    #[must_use]
    pub fn grown_in(&self, garden: &Garden) -> Harvest {
        Harvest::of(&Run::new(garden, &self.plan).0)
    }

    /// The water that the plan's beds need beside the rain, in its own garden or in one that
    /// differs from it in nothing but its weather, its crops' figures and the sizes of its beds.
    #[must_use]
    pub fn watering(&self, garden: &Garden) -> Watering {
        Watering::of(&Run::new(garden, &self.plan).0)
    }
}

/// Checks a plan against a garden.
///
/// # Errors
/// All violations, in the order of the rules.
pub fn check(garden: &Garden, plan: Plan) -> Result<CheckedPlan, Vec<Violation>> {
    let (run, mut violations) = Run::new(garden, &plan);
    let harvest = Harvest::of(&run);
    for rule in Rule::ALL {
        let faults = rules::faults(rule, &run, &harvest).into_iter();
        violations.extend(faults.map(|fault| Violation { rule, fault }));
    }
    violations.extend(aims::violations(&run, &harvest));
    violations.sort_by_key(|v| v.rule);
    if violations.is_empty() {
        let replay = Replay::new(&run, harvest);
        Ok(CheckedPlan { plan, replay })
    } else {
        Err(violations)
    }
}
