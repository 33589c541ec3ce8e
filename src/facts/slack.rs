//! What can wait, from the slack of the steps: by how many weeks a planting's steps of one kind may
//! be earlier or later, and how many of its picks may fall out.

use crate::calendar::{Date, monday_of};
use crate::checker::{bearable, bears};
use crate::explain::StepSlack;
use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind, When};

use super::Facts;

/// What is known of a planting's steps of one kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wait {
    /// It has no such step.
    None,
    /// It was not looked at in time.
    Unknown,
    /// One step that may be moved.
    Weeks {
        /// By how many weeks it may be earlier.
        earlier: u32,
        /// What is known of later weeks.
        later: Later,
    },
    /// The only session to pick.
    OneSession,
    /// Several chances to pick.
    Picks {
        /// How many of them may fall out, one at a time.
        free: usize,
        /// How many there are.
        of: usize,
    },
}

/// By how much a step may be later.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Later {
    /// Weeks; 0 if it may not, though it bears the next round.
    Weeks(u32),
    /// The next round is too late, whatever is done beside it.
    NoSlack,
    /// The crop would bear the next round, but what is done beside it leaves no room.
    NoRoom,
}

/// How many ready years each of some other days may cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bearable {
    /// None: there are too few to lose one.
    Nothing,
    /// One in ten of the ready years.
    OneInTen,
}

impl<'a> Facts<'a> {
    /// What another day of a step may cost an ingredient or the whole dish.
    #[must_use]
    pub fn bearable(&self) -> Bearable {
        let ready = self.ingredients().map(|(.., seen)| seen.ready_years());
        match ready.max().map_or(0, bearable) {
            0 => Bearable::Nothing,
            _ => Bearable::OneInTen,
        }
    }

    /// What is known of a planting's steps of one kind.
    #[must_use]
    pub fn wait(&self, slack: &[StepSlack], planting: &Planting, kind: StepKind) -> Wait {
        let own = |s: &&StepSlack| {
            let step = self.step_of(s);
            step.is_some_and(|(p, step)| p == planting && step.kind == kind)
        };
        let of_kind: Vec<&StepSlack> = slack.iter().filter(own).collect();
        match of_kind.as_slice() {
            [] if planting.steps_of(kind).next().is_some() => Wait::Unknown,
            [] => Wait::None,
            [one] if !kind.is_harvest() || planting.method == Method::Patch => weeks(one),
            [_] => Wait::OneSession,
            many => Wait::Picks {
                free: many
                    .iter()
                    .filter(|s| self.may_fall_out(planting, s))
                    .count(),
                of: many.len(),
            },
        }
    }

    /// The days of a planting's picks that may not fall out, those of several.
    pub fn picks_to_keep(
        &self,
        slack: &[StepSlack],
        planting: &Planting,
    ) -> impl Iterator<Item = Date> {
        let kept = slack.iter().filter(move |s| {
            let step = self.step_of(s);
            let own = step.is_some_and(|(p, step)| p == planting && step.kind.is_harvest());
            own && !self.may_fall_out(planting, s)
        });
        kept.filter_map(|s| s.days.get(s.planned)?.first())
    }

    /// The planting and the step that a slack is about.
    #[must_use]
    pub fn step_of(&self, slack: &StepSlack) -> Option<(&'a Planting, &'a Step)> {
        self.plan.step(slack.at)
    }

    /// True if the plan keeps its promise where a pick falls out.
    fn may_fall_out(&self, planting: &Planting, slack: &StepSlack) -> bool {
        let now = self.ready_years(&planting.ingredient);
        let whole = self.replay.whole_dish_years();
        bears(now, slack.missed.ready_years) && bears(whole, slack.missed.whole_dish_years)
    }
}

/// How far one step may be moved, a sowing with its thinning.
fn weeks(slack: &StepSlack) -> Wait {
    let (earlier, later) = range(slack);
    let [first, last] = with_thinning(slack);
    let earlier = first.map_or(earlier, |_| weeks_to(slack, first));
    let later = last.map_or(later, |_| weeks_to(slack, last));
    let later = match (slack.fragile, slack.bears_next) {
        (true, _) => Later::NoSlack,
        (false, Some(false)) if !slack.next_costs => Later::NoRoom,
        _ => Later::Weeks(later),
    };
    Wait::Weeks { earlier, later }
}

/// Weeks by which a step may be earlier and later.
#[must_use]
pub fn range(slack: &StepSlack) -> (u32, u32) {
    (
        weeks_to(slack, slack.days.first()),
        weeks_to(slack, slack.days.last()),
    )
}

/// Weeks between the planned days and others.
#[must_use]
pub fn weeks_to(slack: &StepSlack, other: Option<&When>) -> u32 {
    let monday = |when: Option<&When>| when.and_then(When::first).map(monday_of);
    let planned = monday(slack.days.get(slack.planned));
    let days = monday(other)
        .zip(planned)
        .map_or(0, |(a, b)| (a - b).num_days().abs());
    u32::try_from(days / 7).unwrap_or(0)
}

/// The earliest and the latest days that only do if the thinning moves too.
#[must_use]
pub fn with_thinning(slack: &StepSlack) -> [Option<&When>; 2] {
    let first = slack.with_thinning.first();
    let last = slack.with_thinning.last();
    [
        first.filter(|when| when.first() < slack.days.first().and_then(When::first)),
        last.filter(|when| when.first() > slack.days.last().and_then(When::first)),
    ]
}
