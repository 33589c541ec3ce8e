//! Who goes on with a grade's plantings when the grades move up.

use crate::calendar::Date;
use crate::garden::{GradeAt, HandOver};

use super::Facts;

/// A grade that leaves work when the grades move up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HandedOver {
    /// The grade.
    pub grade: GradeAt,
    /// The day on which the grades move up.
    pub from: Date,
    /// Who goes on.
    pub to: HandOver,
}

impl Facts<'_> {
    /// Who goes on with a grade's plantings, if something is left to do when the grades move up.
    #[must_use]
    pub fn handed_over(&self, grade: GradeAt) -> Option<HandedOver> {
        let from = self.garden.school_year.moves_up?;
        let steps = self.planted_by(grade).flat_map(|(p, _)| &p.steps);
        let mut days = steps.filter_map(|step| step.when.last());
        days.any(|day| day >= from).then(|| HandedOver {
            grade,
            from,
            to: self.garden[grade].hand_over,
        })
    }

    /// The last day on which a grade is there that leaves the school when the grades move up.
    #[must_use]
    pub fn there_until(&self, grade: GradeAt) -> Option<Date> {
        let from = self.garden.school_year.moves_up?;
        let leaves = !self.garden.tending(grade, from).has(grade);
        from.pred_opt().filter(|_| leaves)
    }
}
