//! What one step of a plan bears, and what is lost without it.

use crate::explain::StepSlack;
use crate::plan::{Needed, Planting, Step, StepKind};
use crate::units::Kilograms;

use super::Facts;

/// Why a step is marked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mark {
    /// Its next round is too late, or there is none: of picks, only one.
    TooLate,
    /// By itself it fails in the next round; another sowing makes up for it.
    AnotherSowing,
    /// In the next round, with every class later, too many ready years are lost.
    CostsYears,
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
    /// Nothing that the rules ask for: the planting comes to something without it.
    LeftOut,
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
    match (slack.fragile, slack.bears_next) {
        (true, _) if kind.is_harvest() => Some(Mark::TooLate),
        (true, Some(true)) => Some(Mark::AnotherSowing),
        (true, _) if slack.next_costs => Some(Mark::CostsYears),
        (true, _) => Some(Mark::TooLate),
        (false, Some(false)) if slack.next_costs => Some(Mark::CostsTogether),
        (false, Some(false)) => Some(Mark::NoRoom {
            thinning: planting.steps.iter().any(|s| s.kind.is_counted_from(kind)),
        }),
        (false, Some(true) | None) => None,
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
    step.kind.is_harvest() && planting.picks().count() > 1
}

impl Facts<'_> {
    /// What is lost if a step is missed; `None` for an ingredient that is not known.
    #[must_use]
    pub fn lost(&self, slack: &StepSlack, planting: &Planting, step: &Step) -> Option<Lost> {
        let seen = self.seen(&planting.ingredient)?;
        let with_others = slack.missed.sowings > 1;
        let is_pick = step.kind.is_harvest();
        Some(match step.kind.facts().needed {
            Needed::Never => Lost::LeftOut,
            _ if is_one_of_several(planting, step) && slack.missed.nothing => Lost::Nothing,
            _ if is_pick && planting.steps.len() > 1 => Lost::Pick { with_others },
            Needed::Always | Needed::OneOfSeveral => Lost::Planting {
                with_others,
                low: seen.low - slack.missed.low,
                expected: seen.expected - slack.missed.expected,
            },
        })
    }
}
