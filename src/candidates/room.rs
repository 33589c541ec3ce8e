//! Where plantings overlap most, and what they can take there: the only days on which the room
//! that they share can run out, and the only sessions that can be too short for all their steps.

use std::collections::{BTreeMap, BTreeSet};

use crate::calendar::Date;
use crate::garden::{ClassAt, Garden, IngredientAt, Team};

use super::candidate::Candidate;
use super::shelf::ShelfDays;

/// The days, in order, on which most of some spans (first and last day) are under way: whatever
/// is under way on any day is also under way on one of these. They are the first days after
/// which a span ends before another one begins.
#[must_use]
pub fn fullest(spans: impl Iterator<Item = (usize, usize)>) -> Vec<usize> {
    let (mut begins, mut ends): (Vec<usize>, Vec<usize>) = spans.unzip();
    begins.sort_unstable();
    begins.dedup();
    ends.sort_unstable();
    let until = begins.iter().skip(1).copied().chain([usize::MAX]);
    let ends_before = |day: usize, next: usize| {
        let first = ends.partition_point(|end| *end < day);
        ends.get(first).is_some_and(|end| *end < next)
    };
    begins
        .iter()
        .zip(until)
        .filter(|(day, next)| ends_before(**day, *next))
        .map(|(day, _)| *day)
        .collect()
}

/// The days on which the shelf, or its mat, can be fullest: what stands there on any other day
/// stands there on one of these, too.
#[must_use]
pub fn fullest_days(all: &[Candidate]) -> Vec<usize> {
    fullest(
        all.iter()
            .filter_map(|c| c.shelf)
            .flat_map(ShelfDays::spans),
    )
}

impl Candidate {
    /// Most flats that it can take on a day.
    #[must_use]
    pub fn greatest_flats(&self, day: usize) -> u32 {
        let Some(shelf) = self.shelf else { return 0 };
        let levels = self.amounts.levels.iter();
        let flats = levels.map(|l| shelf.flats_on(day, l.sown, l.kept));
        flats.max().unwrap_or(0)
    }

    /// Most flats that it can take on the mat on a day.
    #[must_use]
    pub fn greatest_warm_flats(&self, day: usize) -> u32 {
        match self.shelf {
            Some(shelf) if shelf.warm_on(day) => {
                let levels = self.amounts.levels.iter();
                levels.map(|l| l.sown).max().unwrap_or(0)
            }
            _ => 0,
        }
    }
}

/// The greatest sum of a use over plantings: for each ingredient its greatest uses, as many
/// as it may have sowings.
pub fn greatest_use(garden: &Garden, all: &[Candidate], use_of: impl Fn(&Candidate) -> u32) -> u32 {
    garden
        .ingredient_positions()
        .map(|at| {
            let mut uses: Vec<u32> = all
                .iter()
                .filter(|c| c.ingredient == at)
                .map(&use_of)
                .filter(|u| *u > 0)
                .collect();
            uses.sort_unstable_by_key(|u| std::cmp::Reverse(*u));
            uses.iter()
                .take(garden[at].most_plantings() as usize)
                .sum::<u32>()
        })
        .sum()
}

/// A session: a class and a day on which it meets.
pub type SessionOf = (ClassAt, Date);

/// The minutes that the plantings of each ingredient want in a session, by the team that grows it.
type Wanted = BTreeMap<(Team, IngredientAt), Vec<f64>>;

/// The sessions in which plantings that may be made together can want more minutes than there are.
#[must_use]
pub fn crowded_sessions(garden: &Garden, all: &[Candidate]) -> BTreeSet<SessionOf> {
    let mut wanted: BTreeMap<SessionOf, Wanted> = BTreeMap::new();
    for c in all {
        let plants = c.amounts.blocks.1 * c.amounts.block.plants;
        let mut own: BTreeMap<SessionOf, f64> = BTreeMap::new();
        for task in &c.tasks {
            *own.entry((task.class, task.date)).or_default() += task.effort.minutes(plants).0;
        }
        for (session, minutes) in own {
            let of = wanted.entry(session).or_default();
            of.entry((c.team, c.ingredient)).or_default().push(minutes);
        }
    }
    let apart = garden.each_grade_grows_one();
    let short = |(session, wanted): (SessionOf, Wanted)| {
        let minutes = garden.session_minutes(session.0, session.1);
        (most_minutes(garden, wanted, apart) > minutes.0).then_some(session)
    };
    wanted.into_iter().filter_map(short).collect()
}

/// The most minutes that are wanted in one session. Where no grade grows two ingredients (`apart`), of those of
/// one team only one counts; plantings of two teams may still meet in a class that takes one of them over.
fn most_minutes(garden: &Garden, wanted: Wanted, apart: bool) -> f64 {
    let mut of_team: BTreeMap<Team, f64> = BTreeMap::new();
    for ((team, at), mut minutes) in wanted {
        minutes.sort_unstable_by(|a, b| b.total_cmp(a));
        let sowings = garden[at].most_plantings() as usize;
        let own: f64 = minutes.iter().take(sowings).sum();
        let most = of_team.entry(team).or_default();
        *most = if apart { most.max(own) } else { *most + own };
    }
    of_team.values().sum()
}
