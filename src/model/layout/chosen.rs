//! Plantings to be placed, and where they are placed.

use crate::candidates::{CandidateAt, PlotAt};

/// Which of the plantings that are placed together: a position in their list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PieceAt(pub usize);

/// A planting to be placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chosen {
    /// Position of the candidate.
    pub candidate: CandidateAt,
    /// How many blocks.
    pub blocks: u32,
}

/// Blocks of a planting on a plot.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// Position of the plot.
    pub plot: PlotAt,
    /// How many blocks.
    pub blocks: u32,
}

/// The parts of each planting, in order.
pub type Parts = Vec<Vec<Part>>;
