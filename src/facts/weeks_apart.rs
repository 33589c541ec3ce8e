//! Weeks between days: from sowing to planting out, and from the days of a step to others.

use crate::calendar::{Date, monday_of};
use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind, When};

use super::Facts;

/// Weeks from sowing to planting out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ShelfWeeks {
    /// The fewest that the crop asks for.
    pub fewest: u32,
    /// The most.
    pub most: u32,
    /// Those of the plan.
    pub planned: u32,
}

impl Facts<'_> {
    /// The weeks of a planting's seedlings on the shelf; `None` if it has none.
    #[must_use]
    pub fn shelf_weeks(&self, planting: &Planting) -> Option<ShelfWeeks> {
        let indoor = self.ingredient_of(planting)?.crop.indoor?;
        let first = |kind| {
            let of_kind = planting.steps.iter().find(|s| s.kind == kind)?;
            of_kind.when.first()
        };
        let sown = match planting.method {
            Method::Indoor => first(StepKind::Sow)?,
            Method::Seedlings => self.seedlings(planting)?.sown,
            Method::Direct | Method::Pieces | Method::Bought => return None,
            Method::Growing | Method::Patch => return None,
        };
        Some(ShelfWeeks {
            fewest: indoor.weeks_lo,
            most: indoor.weeks_hi,
            planned: weeks_apart(sown, first(StepKind::PlantOut)?),
        })
    }
}

/// How many weeks on the calendar two days lie apart: none if they are of one week.
fn weeks_apart(a: Date, b: Date) -> u32 {
    let days = (monday_of(b) - monday_of(a)).num_days().unsigned_abs();
    u32::try_from(days / 7).unwrap_or(u32::MAX)
}

/// Where other days of a step lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Away {
    /// True if they are before the planned ones.
    pub earlier: bool,
    /// So many weeks of the calendar.
    pub weeks: u32,
}

/// How far other days lie from those of a step.
#[must_use]
pub fn away(step: &Step, when: &When) -> Option<Away> {
    let (planned, other) = (step.when.first()?, when.first()?);
    Some(Away {
        earlier: other < planned,
        weeks: weeks_apart(planned, other),
    })
}
