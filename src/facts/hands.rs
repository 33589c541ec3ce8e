//! Steps that are not done by the children who sowed: by whom, and when.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::garden::Team;
use crate::plan::{Planting, Step, StepKind, When};

use super::Facts;
use super::spans::by_children;

/// Steps of one kind of a planting that other people do.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherHands<'a> {
    /// The planting.
    pub planting: &'a Planting,
    /// Who does what.
    pub hands: Hands,
}

/// Who does a planting's steps, where it is not the children who sowed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Hands {
    /// Families, on one of some days.
    Families(StepKind, Vec<Date>),
    /// An adult, on one of some days.
    Adult(StepKind, Vec<Date>),
    /// Whoever is there, from a day to a day.
    Anyone(StepKind, Date, Date),
    /// The children who are in the grade after it has moved up.
    OtherChildren {
        /// The grades that tend the planting then.
        team: Team,
        /// The day on which grades move up.
        from: Date,
        /// What they do.
        kinds: BTreeSet<StepKind>,
    },
}

impl<'a> Facts<'a> {
    /// All that others do, planting by planting.
    #[must_use]
    pub fn other_hands(&self) -> Vec<OtherHands<'a>> {
        let mut all = Vec::new();
        for (planting, _) in self.planted() {
            let taken_over = self.taken_over(planting);
            let hands = by_adults(planting).into_iter().chain(taken_over);
            all.extend(hands.map(|hands| OtherHands { planting, hands }));
        }
        all
    }

    /// Which later steps of a planting other children do.
    fn taken_over(&self, planting: &Planting) -> Option<Hands> {
        let from = self.garden.school_year.moves_up?;
        let team = self.team_of(planting);
        let by_others = |step: &&Step| {
            let first = step.when.first();
            by_children(step) && first.is_some_and(|day| !self.garden.same_children(team, day))
        };
        let others = planting.steps.iter().filter(by_others);
        let kinds: BTreeSet<StepKind> = others.map(|step| step.kind).collect();
        (!kinds.is_empty()).then(|| Hands::OtherChildren {
            team: self.garden.tending(team, from),
            from,
            kinds,
        })
    }
}

/// Steps of families, of an adult, and of whoever is there every day.
fn by_adults(planting: &Planting) -> Vec<Hands> {
    let mut all = Vec::new();
    for steps in planting.steps.chunk_by(|a, b| a.kind == b.kind) {
        let Some(Step { kind, when, .. }) = steps.first() else {
            continue;
        };
        let families = days_of(steps, |when| match when {
            When::Families(day) => Some(*day),
            _ => None,
        });
        let adult = days_of(steps, |when| match when {
            When::Adult(day) => Some(*day),
            _ => None,
        });
        all.extend(families.map(|days| Hands::Families(*kind, days)));
        all.extend(adult.map(|days| Hands::Adult(*kind, days)));
        if let When::Daily { from, to } = when {
            all.push(Hands::Anyone(*kind, *from, *to));
        }
    }
    all
}

/// The days on which certain people do a step; `None` if never.
fn days_of(steps: &[Step], day: impl Fn(&When) -> Option<Date>) -> Option<Vec<Date>> {
    let days: Vec<Date> = steps.iter().filter_map(|s| day(&s.when)).collect();
    (!days.is_empty()).then_some(days)
}
