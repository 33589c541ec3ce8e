//! Which sowing of its ingredient each planting is.

use crate::plan::Plan;

/// One of the sowings of an ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sowing {
    /// Which, counted from 1 in the order of the plan.
    pub number: usize,
    /// How many the ingredient has.
    pub of: usize,
}

/// The sowings of a plan, in the order of its plantings.
pub(super) fn sowings(plan: &Plan) -> Vec<Sowing> {
    let plantings = plan.plantings.iter().enumerate();
    plantings
        .map(|(at, planting)| {
            let all = plan.plantings.iter().enumerate();
            let same = all.filter(|(_, p)| p.ingredient == planting.ingredient);
            same.fold(Sowing { number: 0, of: 0 }, |seen, (other, _)| Sowing {
                number: seen.number + usize::from(other <= at),
                of: seen.of + 1,
            })
        })
        .collect()
}
