//! What the children of a grade do with what they sow, and whether they eat it at school: not after they have left it.

use crate::calendar::Date;
use crate::garden::GradeAt;
use crate::plan::{Planting, StepKind};

use super::Facts;
use super::ours::Ours;
use super::spans::by_children;

/// All steps of one kind of a planting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Deed<'a> {
    /// What is tended.
    pub planting: &'a Planting,
    /// What is done.
    pub kind: StepKind,
    /// The first day of it.
    pub from: Date,
    /// The last.
    pub to: Date,
}

impl<'a> Facts<'a> {
    /// What a grade's children do, in order of time; what is left to do when they have left school is not theirs.
    #[must_use]
    pub fn deeds(&self, ours: &Ours<'a>) -> Vec<Deed<'a>> {
        let until = self.there_until(ours.grade);
        let own = ours.own.iter();
        let mut deeds: Vec<Deed<'a>> = own.flat_map(|(p, _)| deeds_until(p, until)).collect();
        deeds.sort_by_key(|deed| deed.from);
        deeds
    }

    /// False if a grade has left school on the day of the feast.
    #[must_use]
    pub fn is_there_at_the_feast(&self, grade: GradeAt) -> bool {
        let until = self.there_until(grade);
        until.is_none_or(|until| self.garden.feast.day <= until)
    }
}

/// The deeds of a planting up to a day.
fn deeds_until(planting: &Planting, until: Option<Date>) -> Vec<Deed<'_>> {
    let mut deeds: Vec<Deed<'_>> = Vec::new();
    for step in planting.steps.iter().filter(|step| by_children(step)) {
        let (Some(from), Some(last)) = (step.when.first(), step.when.last()) else {
            continue;
        };
        if until.is_some_and(|until| until < from) {
            continue;
        }
        let to = until.map_or(last, |until| until.min(last));
        match deeds.iter_mut().find(|deed| deed.kind == step.kind) {
            Some(deed) => (deed.from, deed.to) = (deed.from.min(from), deed.to.max(to)),
            None => deeds.push(Deed {
                planting,
                kind: step.kind,
                from,
                to,
            }),
        }
    }
    deeds
}
