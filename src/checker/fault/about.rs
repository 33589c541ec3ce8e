//! What a fault is about: which planting, step, number, and why a day, place or aim is wrong.

use crate::calendar::Date;
use crate::plan::StepKind;

/// Which planting of the plan.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct PlantingRef {
    /// Its number in the plan, from 1.
    pub number: usize,
    /// Its ingredient's name.
    pub ingredient: String,
}

/// Which step of the plan.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct StepRef {
    /// The planting.
    pub planting: PlantingRef,
    /// Its number among the planting's steps, from 1.
    pub number: usize,
    /// What is done.
    pub kind: StepKind,
}

/// What kind of thing a name in the plan stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Named {
    /// A bed.
    Bed,
    /// A class.
    Class,
    /// A grade.
    Grade,
    /// An ingredient.
    Ingredient,
}

/// What a number in the plan belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Subject {
    /// A planting.
    Planting(PlantingRef),
    /// A step.
    Step(StepRef),
    /// An ingredient, by name.
    Ingredient(String),
    /// The whole dish.
    Dish,
}

/// Which number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// Plants that stand in the bed.
    Plants,
    /// Seeds, pieces or bought plants.
    Seeds,
    /// Flats until potting up.
    FlatsSown,
    /// Flats after potting up.
    FlatsKept,
    /// Minutes of a session.
    Minutes,
    /// Usable kilograms in a poor year.
    LowKilograms,
    /// Usable kilograms in an ordinary year.
    ExpectedKilograms,
    /// Plantings of an ingredient: at least 1, at most its `max_sowings`.
    Plantings,
    /// Ready weather years.
    ReadyYears,
    /// All weather years.
    WeatherYears,
}

/// Why a day is wrong for a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayLimit {
    /// Before anyone may sow, or after the feast and its rain date: the plan's span.
    Span,
    /// A step must come wholly after the one before it.
    Order,
    /// Hardening takes the seven days before planting out.
    Harden,
    /// Curing begins on the day after the last pick and takes the crop's days.
    Cure,
    /// Picked and cured by the day on which the kitchen needs it.
    Delivery,
    /// The patch's season.
    PatchSeason,
    /// What is picked must keep until the feast.
    Keeps,
    /// Seed must be up before it is potted up or planted out.
    Up,
    /// Potting up, at least two weeks after sowing.
    AfterSowing,
    /// Planting out, at least ten days after potting up.
    AfterPottingUp,
    /// Thinning, not long before the roots of neighbours are entangled.
    Thinning,
    /// All visits of one step lie within one round.
    Round,
}

/// Why a place is wrong for a planting.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PlaceFault {
    /// The planting has no place, or a place without strips.
    Nowhere,
    /// The bed has no such strip; counted from 1.
    NoStrip(u32),
    /// The strip has no trellis, and the crop climbs; counted from 1.
    NoTrellis(u32),
    /// Something else stands in the bed until this day.
    NotFreeUntil(Date),
    /// It is the ground along a trellis, and the crop does not climb.
    OnlyClimbers,
    /// It belongs to other grades.
    OfOthers,
    /// Too little sun or soil for the crop.
    Unsuitable,
    /// Too narrow for one plant.
    TooNarrow,
    /// The beds of one planting differ in width or cover.
    Differs,
    /// The strips are not whole blocks of this many strips.
    BrokenBlock(u32),
    /// What already stands does not stand there.
    NotWhereItGrows,
}

/// Why a list of aims is wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum AimFault {
    /// It stands twice, or after a later one.
    Order,
    /// The value is said to be better than its own bound.
    ValueBeyondBound {
        /// The value in the plan.
        value: f64,
        /// The bound in the plan.
        bound: f64,
    },
    /// The plan itself is better than the bound that is said to hold for all plans.
    PlanBeyondBound {
        /// What the plan reaches.
        reached: f64,
        /// The bound in the plan.
        bound: f64,
    },
    /// The plan is said to have reached something else.
    Value {
        /// What the plan reaches.
        expected: f64,
        /// The value in the plan.
        got: f64,
    },
}
