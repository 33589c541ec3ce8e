//! Rounds: the smallest sets of sessions in which every class that tends a team's plantings
//! meets once. A team's step happens in one round.

use std::collections::BTreeSet;

use crate::calendar::{Date, plus_days};
use crate::garden::{ClassAt, Garden, Team};
use crate::plan::{Visit, When};

use super::context::Context;

/// One session of every class, close together, all on one side of moving up.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Round {
    /// One visit per class of the tending team, in the order of its classes.
    pub visits: Vec<(ClassAt, Date)>,
}

impl Round {
    /// The classes that come.
    pub fn classes(&self) -> impl Iterator<Item = ClassAt> + '_ {
        self.visits.iter().map(|(class, _)| *class)
    }

    /// The first session's day.
    #[must_use]
    pub fn first(&self) -> Date {
        self.visits.iter().map(|v| v.1).min().unwrap_or_default()
    }

    /// The last session's day.
    #[must_use]
    pub fn last(&self) -> Date {
        self.visits.iter().map(|v| v.1).max().unwrap_or_default()
    }

    /// The same as a plan says it, with the names of the classes.
    #[must_use]
    pub fn when(&self, garden: &Garden) -> When {
        let visit = |(class, date): &(ClassAt, Date)| Visit {
            class: garden.class(*class).name.clone(),
            date: *date,
        };
        When::Sessions(self.visits.iter().map(visit).collect())
    }

    /// The day on which a part is tended: part `j` belongs to class `j` modulo their number.
    #[must_use]
    pub fn day_of_part(&self, part: usize) -> Date {
        self.visits[part % self.visits.len()].1
    }
}

/// All rounds in which the plantings of `team` are tended, by first and last day. One round
/// may begin in every week; rounds that share sessions are different choices of the same step.
#[must_use]
pub fn rounds(context: &Context<'_>, team: Team) -> Vec<Round> {
    let Context {
        garden, horizon, ..
    } = context;
    let before = garden.tending(team, horizon.first());
    let after = garden.tending(team, horizon.last());
    let mut found = BTreeSet::new();
    for tending in BTreeSet::from([before, after]) {
        let sessions: Vec<(ClassAt, Vec<Date>)> = garden
            .classes_of(tending)
            .map(|c| (c, tended_sessions(context, (team, tending), c)))
            .collect();
        let harvest = garden.school_year.harvest_days.iter();
        found.extend(harvest.filter_map(|h| round_within(&sessions, h.day, h.day)));
        let sessions = lessons(garden, sessions);
        let span = i64::from(garden.round_weeks(tending)) * 7;
        for week in 0..horizon.weeks() {
            let from = horizon.monday(week);
            let to = plus_days(from, span - 1);
            let halves = match garden.school_year.moves_up {
                Some(up) if from < up && up <= to => vec![(from, plus_days(up, -1)), (up, to)],
                _ => vec![(from, to)],
            };
            found.extend(
                halves
                    .into_iter()
                    .filter_map(|(from, to)| round_within(&sessions, from, to)),
            );
        }
    }
    let mut rounds: Vec<Round> = found.into_iter().map(|visits| Round { visits }).collect();
    rounds.sort_by_key(|r| (r.first(), r.last()));
    rounds
}

/// The days on which `class` of `tending` meets while that tends the plantings of `team`.
fn tended_sessions(
    context: &Context<'_>,
    (team, tending): (Team, Team),
    class: ClassAt,
) -> Vec<Date> {
    let garden = context.garden;
    let mut days = context.sessions(class).to_vec();
    days.retain(|d| {
        *d >= garden.as_of() && *d <= garden.last_day() && garden.tending(team, *d) == tending
    });
    days
}

/// The lessons among the sessions of classes. A day of the harvest is a round by itself, and takes no lesson's
/// place in the rounds of its week.
fn lessons(garden: &Garden, mut sessions: Vec<(ClassAt, Vec<Date>)>) -> Vec<(ClassAt, Vec<Date>)> {
    for (class, days) in &mut sessions {
        let class = garden.class(*class);
        days.retain(|day| class.has_lesson_on(&garden.school_year, *day));
    }
    sessions
}

/// The first session of every class within a span; `None` if some class does not meet.
fn round_within(
    sessions: &[(ClassAt, Vec<Date>)],
    from: Date,
    to: Date,
) -> Option<Vec<(ClassAt, Date)>> {
    sessions
        .iter()
        .map(|(class, days)| {
            days.iter()
                .find(|d| from <= **d && **d <= to)
                .map(|d| (*class, *d))
        })
        .collect()
}

/// When and by whom a step of a candidate is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Done<'a> {
    /// By children, in a round.
    Round(&'a Round),
    /// By families, in a break in which they care.
    Families(Date),
    /// By an adult.
    Adult(Date),
}

impl Done<'_> {
    /// The first day.
    #[must_use]
    pub fn first(&self) -> Date {
        match self {
            Done::Round(round) => round.first(),
            Done::Families(day) | Done::Adult(day) => *day,
        }
    }

    /// The same as a plan says it.
    #[must_use]
    pub fn when(&self, garden: &Garden) -> When {
        match self {
            Done::Round(round) => round.when(garden),
            Done::Families(day) => When::Families(*day),
            Done::Adult(day) => When::Adult(*day),
        }
    }
}

/// A pick that may be part of a window: a round of children, or a day of families in a break.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum PickDay {
    /// By children.
    Round(Round),
    /// By families.
    Families(Date),
}

impl PickDay {
    /// When and by whom.
    #[must_use]
    pub fn done(&self) -> Done<'_> {
        match self {
            PickDay::Round(round) => Done::Round(round),
            PickDay::Families(day) => Done::Families(*day),
        }
    }

    /// The first day.
    #[must_use]
    pub fn first(&self) -> Date {
        match self {
            PickDay::Round(round) => round.first(),
            PickDay::Families(day) => *day,
        }
    }

    /// The last day.
    #[must_use]
    pub fn last(&self) -> Date {
        match self {
            PickDay::Round(round) => round.last(),
            PickDay::Families(day) => *day,
        }
    }

    /// The day on which a part is picked.
    #[must_use]
    pub fn day_of_part(&self, part: usize) -> Date {
        match self {
            PickDay::Round(round) => round.day_of_part(part),
            PickDay::Families(day) => *day,
        }
    }

    /// How many classes take part; 1 for families.
    #[must_use]
    pub fn parts(&self) -> usize {
        match self {
            PickDay::Round(round) => round.visits.len(),
            PickDay::Families(_) => 1,
        }
    }
}
