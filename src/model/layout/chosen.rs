//! Plantings to be placed, and where they are placed.

/// A planting to be placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chosen {
    /// Position of the candidate.
    pub candidate: usize,
    /// How many blocks.
    pub blocks: u32,
}

/// Blocks of a planting on a plot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// Position of the plot.
    pub plot: usize,
    /// How many blocks.
    pub blocks: u32,
}

/// The parts of each planting, in order.
pub type Parts = Vec<Vec<Part>>;
