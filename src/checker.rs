//! Replays a plan day by day, without the model and without its candidates. It is the only
//! maker of a `CheckedPlan`, and every report takes one.

mod aims;
mod days;
mod edit;
mod fault;
mod harvest;
mod needs;
mod packet_days;
mod planting;
mod replay;
mod replayer;
mod rules;
mod run;
mod seedlings;
mod slack;
mod water;

pub use fault::{
    AimFault, DayLimit, Fault, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject,
    Violation,
};
pub use harvest::{Harvest, IngredientReplay};
pub use packet_days::{DaysOut, OUT_BY, PacketDays};
pub use replay::{Replay, RotationMiss, Unattended};
pub use replayer::{Edit, Replayer, keeps_rules};
pub use slack::{StepAt, bearable, bears};
pub use water::{Seedbed, WaterNeed, Watering};

use crate::calendar::Date;
use crate::garden::Garden;
use crate::plan::{IngredientPromise, Plan, Promise, Rule};

use harvest::seasons_of;
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
    let seasons = seasons_of(&run);
    let harvest = Harvest::of(&run, &seasons);
    for rule in Rule::ALL {
        let faults = rules::faults(rule, &run, &harvest).into_iter();
        violations.extend(faults.map(|fault| Violation { rule, fault }));
    }
    violations.extend(aims::violations(&run, &harvest));
    violations.sort_by_key(|v| v.rule);
    let fragile = match violations.is_empty() {
        true => slack::fragile(&run, &seasons),
        false => Vec::new(),
    };
    if violations.is_empty() {
        violations.extend(aims::fewer_fragile(&run, fragile.len()));
    }
    if violations.is_empty() {
        let replay = Replay::new(&run, harvest, fragile);
        Ok(CheckedPlan { plan, replay })
    } else {
        Err(violations)
    }
}

/// What a plan can promise: what comes of it, whatever rules it breaks.
#[must_use]
pub fn promise(garden: &Garden, plan: &Plan) -> Promise {
    let harvest = Harvest::for_feast(&Run::new(garden, plan).0);
    let whole = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let ingredients = garden.ingredients.iter().zip(&harvest.ingredients);
    Promise {
        weather_years: whole(harvest.years.len()),
        whole_dish_years: whole(harvest.whole_dish_years()),
        ingredients: ingredients
            .map(|(ingredient, seen)| IngredientPromise {
                ingredient: ingredient.name.clone(),
                ready_years: whole(seen.ready_years()),
                low: seen.low,
                expected: seen.expected,
            })
            .collect(),
    }
}
