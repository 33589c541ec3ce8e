//! What each child of a grade gets of the seeds, and how many plants go into the bed.

use crate::plan::{Planting, StepKind};

use super::Facts;
use super::ours::{Grown, Ours};

/// Seeds or pieces of one planting, shared out among the children of a grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share<'a> {
    /// The planting.
    pub planting: &'a Planting,
    /// The children.
    pub children: u32,
    /// What each child gets; 0 where children share.
    pub each: u32,
    /// What is left to share out.
    pub rest: u32,
    /// Plants that go into the bed, where seedlings can be left over.
    pub plants: Option<u32>,
}

impl<'a> Facts<'a> {
    /// What each child of a grade gets, planting by planting; none where there are no children.
    #[must_use]
    pub fn shares(&self, ours: &Ours<'a>) -> Vec<Share<'a>> {
        let is_sown = |p: &Planting| p.steps_of(StepKind::Sow).next().is_some() && p.seeds > 0;
        let share = |(planting, _): &Grown<'a>| {
            let children = self.garden.children_of(self.team_of(planting));
            Some(Share {
                planting,
                children,
                each: planting.seeds.checked_div(children)?,
                rest: planting.seeds.checked_rem(children)?,
                plants: (planting.flats_kept > 0).then_some(planting.plants),
            })
        };
        let sown = ours.own.iter().filter(|(p, _)| is_sown(p));
        sown.filter_map(share).collect()
    }
}
