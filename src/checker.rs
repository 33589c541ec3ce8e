//! Replays a plan day by day, without the model and without its candidates. It is the only
//! maker of a `CheckedPlan`, and every report takes one.

mod fault;

pub use fault::{
    AimFault, DayLimit, Fault, Named, PlaceFault, PlantingRef, Quantity, StepRef, Subject,
    Violation,
};

use crate::garden::{Gap, Garden};
use crate::growth::Unready;
use crate::plan::{Plan, StepKind};
use crate::units::{Kilograms, Share};

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
}

/// What the replay of a plan saw, for reports.
#[derive(Debug, Clone, PartialEq)]
pub struct Replay {
    /// Labels of the weather years.
    pub years: Vec<i32>,
    /// Per ingredient, in the order of the project file.
    pub ingredients: Vec<IngredientReplay>,
    /// Per weather year: the whole dish is ready for the feast.
    pub dish_ready: Vec<bool>,
    /// Per weather year: the whole dish is ready for the rain date, if there is one.
    pub dish_ready_on_rain_date: Option<Vec<bool>>,
    /// Per week of the span: most flats on the shelf on one day.
    pub flats_by_week: Vec<u32>,
    /// Per week of the span: most flats on the heat mat on one day.
    pub warm_flats_by_week: Vec<u32>,
    /// Per bed, then per week: most strips in use on one day.
    pub strips_by_week: Vec<Vec<u32>>,
    /// Gaps in which something needs daily care, and what.
    pub unattended: Vec<Unattended>,
    /// Bed and family pairs that keep the hard years of rotation, but not the wished ones.
    pub rotation_wishes_missed: Vec<RotationMiss>,
}

/// What became of one ingredient.
#[derive(Debug, Clone, PartialEq)]
pub struct IngredientReplay {
    /// Per weather year: at least the least share is in the pot, or why not (the reason of the
    /// planting that came nearest).
    pub ready: Vec<Result<(), Unready>>,
    /// The same for the rain date.
    pub ready_on_rain_date: Option<Vec<Result<(), Unready>>>,
    /// Usable harvest of all its plantings in a poor year.
    pub low: Kilograms,
    /// Usable harvest of all its plantings in an ordinary year.
    pub expected: Kilograms,
    /// `low` against the target, at most 1.
    pub low_share: Share,
    /// `expected` against the target; may pass 1.
    pub expected_share: Share,
}

/// A gap in which plantings need daily care.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unattended {
    /// The gap.
    pub gap: Gap,
    /// Ingredients that need care, and the step whose result needs it (`Sow`: a seedbed or
    /// seedlings, `PotUp`: potted seedlings).
    pub needs: Vec<(String, StepKind)>,
}

/// A rotation wish that the plan does not keep.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RotationMiss {
    /// The bed's id.
    pub bed: String,
    /// The ingredient.
    pub ingredient: String,
    /// The crop family.
    pub family: String,
    /// The year in which the bed carried the family.
    pub grew_in: i32,
}

/// Checks a plan against a garden.
///
/// # Errors
/// All violations, in the order of the rules.
pub fn check(garden: &Garden, plan: Plan) -> Result<CheckedPlan, Vec<Violation>> {
    todo!("{garden:?} {plan:?}")
}
