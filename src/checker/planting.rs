//! A planting of the plan with its names looked up and its dates as day numbers.

use crate::garden::{
    BedAt, ClassAt, Garden, Ingredient, IngredientAt, Printed, Seedlings, Strips, Team,
};
use crate::growth::Need;
use crate::plan::{self, StepKind};

use super::fault::{PlantingRef, StepRef};

/// A planting of a known ingredient.
pub struct Planting<'a> {
    /// How faults name it.
    pub name: PlantingRef,
    /// As it stands in the plan.
    pub plan: &'a plan::Planting,
    /// Its ingredient's position.
    pub at: IngredientAt,
    /// Its ingredient.
    pub ingredient: &'a Ingredient,
    /// Who grows it: as the plan says, or, where it names a grade that the project does not know, those who may
    /// first.
    pub team: Team,
    /// The steps that have a day.
    pub steps: Vec<Step<'a>>,
    /// The places in known beds.
    pub places: Vec<Place<'a>>,
    /// Day number from which something that already stood in its bed has been growing.
    pub grows_since: Option<usize>,
    /// The seedlings from which it comes, if they stood on the shelf already.
    pub seedlings: Option<Seedlings>,
    /// The printed planting with which it goes on.
    pub given: Option<&'a Printed>,
    /// What its strips take and give; `None` where method or places do not allow to tell.
    pub need: Option<Need>,
}

/// A step with at least one day within the span.
pub struct Step<'a> {
    /// How faults name it.
    pub name: StepRef,
    /// As it stands in the plan.
    pub plan: &'a plan::Step,
    /// When, in day numbers.
    pub when: When,
    /// First day number.
    pub first: usize,
    /// Last day number.
    pub last: usize,
}

/// When a step is done.
pub enum When {
    /// By children; in the order of classes.
    Sessions(Vec<Visit>),
    /// By families.
    Families(usize),
    /// By an adult.
    Adult(usize),
    /// Every day of the span.
    Daily,
}

/// One class at one of its sessions.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Visit {
    /// The class.
    pub class: ClassAt,
    /// Day number.
    pub day: usize,
}

/// Neighbouring strips of a known bed.
pub struct Place<'a> {
    /// The bed.
    pub bed: BedAt,
    /// As it stands in the plan; may run out of the bed.
    pub plan: &'a plan::Place,
}

impl Place<'_> {
    /// The strips that the bed really has.
    pub fn within(&self, garden: &Garden) -> Strips {
        self.plan.run().within(garden[self.bed].strips())
    }
}

impl Planting<'_> {
    /// The first step of a kind.
    pub fn step(&self, kind: StepKind) -> Option<&Step<'_>> {
        self.steps.iter().find(|s| s.plan.kind == kind)
    }

    /// The picks in order.
    pub fn picks(&self) -> impl Iterator<Item = &Step<'_>> {
        self.steps.iter().filter(|s| s.plan.kind.is_harvest())
    }

    /// The step that brings it into the bed, if it is not there already.
    pub fn bedding(&self) -> Option<&Step<'_>> {
        self.step(StepKind::into_bed(self.plan.method)?)
    }
}
