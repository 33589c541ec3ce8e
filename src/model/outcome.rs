//! What comes of a solve, and of questions about one.

use crate::candidates::Unlisted;
use crate::plan::Plan;

use super::aim_program::AimProgram;
use super::reasons::Impossible;
use super::solver::Unsolved;

/// What came of a solve.
#[derive(Debug, Clone, PartialEq)]
pub enum Outcome {
    /// A plan; its aims tell what is proved.
    Planned(Plan),
    /// Not every ingredient can be in the pot.
    Impossible(Impossible),
    /// There are too many plantings to choose from.
    TooMany,
    /// No plan was found in the time allowed.
    OutOfTime,
    /// The solver failed; its words.
    Failed(String),
}

impl From<Unlisted> for Outcome {
    fn from(why: Unlisted) -> Self {
        match why {
            Unlisted::TooMany => Self::TooMany,
            Unlisted::OutOfTime => Self::OutOfTime,
        }
    }
}

/// What came of a solve, with the program of every aim that was followed.
#[derive(Debug, Clone, PartialEq)]
pub struct Recorded {
    /// What came of it.
    pub outcome: Outcome,
    /// The programs, in the order of the aims.
    pub programs: Vec<AimProgram>,
}

impl From<Unsolved> for Outcome {
    fn from(why: Unsolved) -> Self {
        match why {
            Unsolved::Failed(words) => Self::Failed(words),
            Unsolved::Infeasible => Self::Failed("the rows contradict each other".into()),
            Unsolved::OutOfTime => Self::OutOfTime,
        }
    }
}

/// Nothing was found in the time allowed, or there is too much to choose from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotKnown;
