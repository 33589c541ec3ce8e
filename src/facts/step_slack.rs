//! What one step of a plan bears, and what is lost without it.

use crate::explain::StepSlack;
use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind};
use crate::units::Kilograms;

use super::Facts;

/// Why a step is marked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// There is only this session to pick.
    OnlyPick,
    /// By itself it fails in the next round; another sowing makes up for it.
    AnotherSowing,
    /// In the next round, with every class later, too many ready years are lost.
    CostsYears,
    /// The next round is too late unless planting out moves too.
    UnlessPlantedLater,
    /// The next round is too late unless the steps after it move too.
    UnlessAllLater,
    /// The next round is too late.
    TooLate,
    /// The crop would bear the next round, but with all that goes into the pot too many ready years
    /// are lost.
    CostsTogether,
    /// The crop would bear the next round, but what is done beside it leaves no room.
    NoRoom {
        /// True if the class may also have no session in which to thin it in time.
        thinning: bool,
    },
}

/// What is lost if a step is missed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lost {
    /// Nothing that the rules ask for; roots in a crowded row stay small.
    Crowded,
    /// Nothing: other days of picking bring in as much.
    Nothing,
    /// One day of picking of several.
    Pick {
        /// True if other sowings are picked on the same day.
        with_others: bool,
    },
    /// The planting.
    Planting {
        /// True if another sowing loses a step by it too.
        with_others: bool,
        /// Kilograms of the ingredient that are lost in a poor year.
        low: Kilograms,
        /// Kilograms of the ingredient that are lost in an ordinary year.
        expected: Kilograms,
    },
}

/// Why a step is marked, if it is.
#[must_use]
pub fn mark(slack: &StepSlack, planting: &Planting, kind: StepKind) -> Option<Mark> {
    match (slack.fragile, slack.bears_next, kind) {
        (true, _, StepKind::Pick) => Some(Mark::OnlyPick),
        (true, Some(true), _) => Some(Mark::AnotherSowing),
        (true, ..) if slack.next_costs => Some(Mark::CostsYears),
        (true, _, StepKind::PotUp) => Some(Mark::UnlessPlantedLater),
        (true, _, StepKind::Sow) if planting.method == Method::Indoor => Some(Mark::UnlessAllLater),
        (true, ..) => Some(Mark::TooLate),
        (false, Some(false), _) if slack.next_costs => Some(Mark::CostsTogether),
        (false, Some(false), kind) => {
            let is_thinned = planting.steps.iter().any(|s| s.kind == StepKind::Thin);
            Some(Mark::NoRoom {
                thinning: is_thinned && kind == StepKind::Sow,
            })
        }
        (false, ..) => None,
    }
}

/// The ready years of other days, where they are fewer than on the planned ones: then and now.
#[must_use]
pub fn fewer_years(slack: &StepSlack, at: usize) -> Option<(usize, usize)> {
    let years = |at: usize| slack.ready_years.get(at).copied();
    let (then, now) = years(at).zip(years(slack.planned))?;
    (then < now).then_some((then, now))
}

/// True if a step is one of several chances to pick.
#[must_use]
pub fn is_one_of_several(planting: &Planting, step: &Step) -> bool {
    let picks = planting.steps.iter().filter(|s| s.kind == StepKind::Pick);
    step.kind == StepKind::Pick && picks.count() > 1
}

impl Facts<'_> {
    /// What is lost if a step is missed; `None` for an ingredient that is not known.
    #[must_use]
    pub fn lost(&self, slack: &StepSlack, planting: &Planting, step: &Step) -> Option<Lost> {
        let seen = self.seen(&planting.ingredient)?;
        let with_others = slack.missed.sowings > 1;
        Some(match step.kind {
            StepKind::Thin => Lost::Crowded,
            StepKind::Pick if is_one_of_several(planting, step) && slack.missed.nothing => {
                Lost::Nothing
            }
            StepKind::Pick if planting.steps.len() > 1 => Lost::Pick { with_others },
            _ => Lost::Planting {
                with_others,
                low: seen.low - slack.missed.low,
                expected: seen.expected - slack.missed.expected,
            },
        })
    }
}
