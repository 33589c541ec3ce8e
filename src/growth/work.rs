//! Minutes that a step takes of a class's session. All figures are common practice, from
//! memory; a school's own watch is better.

use crate::garden::{Ingredient, Method, SeedSize};
use crate::plan::StepKind;
use crate::units::Minutes;

use super::amount::CHILD_LOSS;

/// Getting out, being told, putting away and washing hands.
const AROUND: Minutes = Minutes(10.0);

/// The minutes of a step as a function of the plants that the grade keeps: the time around
/// the work plus the items that fall to each child, never fewer than what every child sows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Effort {
    /// Minutes around the work.
    pub around: Minutes,
    /// Minutes of work at the least.
    pub least: Minutes,
    /// Minutes of work per kept plant of the grade.
    pub per_plant: Minutes,
}

impl Effort {
    /// No minutes at all: what goes on beside the sessions.
    const NONE: Self = Self {
        around: Minutes(0.0),
        least: Minutes(0.0),
        per_plant: Minutes(0.0),
    };

    /// True if it never takes more minutes than another, whatever the number of plants.
    #[must_use]
    pub fn is_within(&self, other: &Self) -> bool {
        self.around <= other.around
            && self.least <= other.least
            && self.per_plant <= other.per_plant
    }

    /// The same where the number of kept plants is given.
    #[must_use]
    pub fn of(&self, plants: u32) -> Self {
        Self {
            around: self.minutes(plants),
            ..Self::NONE
        }
    }

    /// Minutes for a number of kept plants.
    #[must_use]
    pub fn minutes(&self, plants: u32) -> Minutes {
        self.around + self.least.max(self.per_plant * f64::from(plants))
    }
}

/// The effort of a step for each class when a grade's `children` share the work evenly.
#[must_use]
pub fn effort(step: StepKind, ingredient: &Ingredient, method: Method, children: u32) -> Effort {
    let crop = &ingredient.crop;
    let children = f64::from(children.max(1));
    let seeds_per_plant = match method {
        Method::Direct | Method::Indoor => 1.0 / (crop.germinates.0 * (1.0 - CHILD_LOSS.0)),
        _ => 1.0,
    };
    let per_seed = match (method, crop.seed_size) {
        (Method::Indoor, _) => 0.4,
        (Method::Pieces, _) => 1.0,
        (_, SeedSize::Large) => 0.2,
        (_, SeedSize::Medium) => 0.1,
        (_, SeedSize::Tiny) => 0.05,
    };
    let (per_item, items_per_plant, least_items) = match step {
        StepKind::Sow => (
            per_seed,
            seeds_per_plant,
            f64::from(ingredient.each_child_sows),
        ),
        StepKind::PotUp => (1.5, 1.1, 0.0),
        StepKind::PlantOut => (1.5, 1.0, 0.0),
        StepKind::Thin => (0.2, 1.0, 0.0),
        StepKind::Pick => (0.5, 1.0, 0.0),
        StepKind::Harden | StepKind::Cure => return Effort::NONE,
    };
    Effort {
        around: AROUND,
        least: Minutes(per_item * least_items),
        per_plant: Minutes(per_item * items_per_plant / children),
    }
}
