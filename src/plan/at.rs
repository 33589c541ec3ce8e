//! Typed positions in a plan: which planting, and which step of it.

/// Which planting of a plan, in its order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlantingAt(pub usize);

impl PlantingAt {
    /// Its number, as people count: the first is 1.
    #[must_use]
    pub const fn number(self) -> usize {
        self.0 + 1
    }
}

/// Which step of which planting of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct StepAt {
    /// The planting.
    pub planting: PlantingAt,
    /// Position of the step in the planting.
    pub step: usize,
}
