//! A planting of the plan with its names looked up and its dates as day numbers.

use crate::garden::{BedAt, ClassAt, Garden, GradeAt, Ingredient, IngredientAt};
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
    /// The grade that grows it: as the plan says, or, where it names none that the project
    /// knows, the first that may.
    pub grade: GradeAt,
    /// The steps that have a day.
    pub steps: Vec<Step<'a>>,
    /// The places in known beds.
    pub places: Vec<Place>,
    /// Day number from which something that already stood there has been growing.
    pub grows_since: Option<usize>,
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

/// Neighbouring strips of a known bed, as the plan gives them.
pub struct Place {
    /// The bed.
    pub bed: BedAt,
    /// First strip, from 1; may be out of the bed.
    pub first_strip: u32,
    /// How many strips; may run out of the bed.
    pub strips: u32,
}

impl Place {
    /// The last strip, from 1; the one before the first if there are no strips.
    pub fn last_strip(&self) -> u32 {
        self.first_strip
            .saturating_add(self.strips)
            .saturating_sub(1)
    }

    /// The strips that the bed really has, from 0.
    pub fn within(&self, garden: &Garden) -> std::ops::Range<usize> {
        let first = self.first_strip.max(1) - 1;
        let end = self.last_strip().min(garden[self.bed].strips());
        first as usize..end.max(first) as usize
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
