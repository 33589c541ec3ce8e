//! The steps that a person can ask for by name.

use crate::plan::{Planting, StepAt, StepKind};

use super::Facts;
use super::sowings::Sowing;
use super::tasks::{Chance, chance};

/// A step that can be asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked<'a> {
    /// Which step; of a pick window the first one.
    pub at: StepAt,
    /// What is done.
    pub kind: StepKind,
    /// To which planting.
    pub planting: &'a Planting,
    /// Which sowing of its ingredient that is.
    pub sowing: Sowing,
    /// Which of several chances to pick.
    pub chance: Option<Chance>,
}

impl<'a> Facts<'a> {
    /// All steps that can be asked for, in the order of the plan; hardening off and curing go with
    /// others.
    #[must_use]
    pub fn asked(&self) -> Vec<Asked<'a>> {
        let plantings = self.plan.numbered();
        let all = plantings.flat_map(|(planting, p)| {
            let steps = p.steps.iter().enumerate();
            steps.map(move |(step, done)| (StepAt { planting, step }, p, done.kind))
        });
        all.filter(|(.., kind)| !kind.is_span())
            .map(|(at, planting, kind)| Asked {
                at,
                kind,
                planting,
                sowing: self.sowing(at.planting),
                chance: chance(planting, at.step),
            })
            .collect()
    }
}
