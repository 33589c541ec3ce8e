//! What one class does and when: its own steps, the lessons on which nothing is due with one thing to look after in each,
//! and the day on which the grades move up.

use crate::calendar::{Date, plus_days};
use crate::explain::{IfMissed, StepSlack};
use crate::garden::{ClassAt, Method};
use crate::plan::{Planting, PlantingAt, StepKind};

use super::Facts;
use super::kept_picked::{Picker, Turn};
use super::ours::{Job, Ours};
use super::spans::span_of;
use super::tasks::Doer;

/// How long a seedbed is watched for seed that comes up, in days.
const COMING_UP: i64 = 21;

/// How long before its first pick a crop is looked at, in days.
const RIPENING: i64 = 14;

/// One thing to look after where nothing is due (common practice).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quiet {
    /// Seedlings on the shelf are watered and turned.
    TurnFlats,
    /// Seedlings on the shelf are counted.
    CountSeedlings,
    /// A seedbed is kept damp.
    Seedbed,
    /// The bed is weeded.
    Weed,
    /// Leaves are looked at from below.
    Leaves,
    /// The tallest plant is measured and drawn.
    Measure,
    /// Mulch is laid.
    Mulch,
    /// Somebody looks how ripe it is.
    Ripeness,
    /// What is ripe is picked, so that it goes on bearing.
    KeepPicked,
}

/// An entry of a class's sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Entry<'f> {
    /// A step of a planting.
    Job(Job<'f>),
    /// A lesson on which nothing is due, with what to do in it.
    Quiet(Date, Quiet),
    /// The grades move up.
    MovesUp(Date),
}

/// The sheet of a class.
#[derive(Debug, Clone, PartialEq)]
pub struct ClassSheet<'f> {
    /// The class.
    pub class: ClassAt,
    /// Its entries, in order of time.
    pub entries: Vec<Entry<'f>>,
}

impl Entry<'_> {
    /// The day on which it is, or begins.
    #[must_use]
    pub fn day(&self) -> Date {
        match self {
            Self::Job(job) => job.task.from,
            Self::Quiet(day, _) | Self::MovesUp(day) => *day,
        }
    }

    /// What becomes of a step if its lesson falls out.
    #[must_use]
    pub fn if_missed(&self) -> Option<IfMissed> {
        match self {
            Self::Job(job) => job.if_missed,
            Self::Quiet(..) | Self::MovesUp(_) => None,
        }
    }
}

impl Facts<'_> {
    /// The sheets of the classes of a grade that have something to do with its plantings.
    #[must_use]
    pub fn class_sheets(&self, ours: &Ours<'_>, slack: &[StepSlack]) -> Vec<ClassSheet<'_>> {
        let jobs = self.jobs(ours, slack);
        let classes = jobs.iter().filter_map(|job| job.task.who.class());
        let mut classes: Vec<ClassAt> = classes
            .chain(self.garden.classes_of(ours.grade))
            .filter(|class| class.grade == ours.grade)
            .collect();
        classes.sort_unstable();
        classes.dedup();
        let kept = self.kept_picked_by(ours);
        let sheet = |class| self.class_sheet(ours, (&jobs, &kept), class);
        classes.into_iter().map(sheet).collect()
    }

    /// The classes to which something of a planting is handed out, to sow or to plant.
    #[must_use]
    pub fn classes_that_set(&self, planting: PlantingAt) -> Vec<ClassAt> {
        let own = self.tasks.iter();
        let own = own.filter(|task| task.at.planting == planting && task.part.is_some());
        let mut classes: Vec<ClassAt> = own.filter_map(|task| task.who.class()).collect();
        classes.sort_unstable();
        classes.dedup();
        classes
    }

    /// What is done for a grade's plantings by no class of it.
    #[must_use]
    pub fn jobs_of_others(&self, ours: &Ours<'_>, slack: &[StepSlack]) -> Vec<Job<'_>> {
        let mut jobs = self.jobs(ours, slack);
        let of_grade = |class: ClassAt| class.grade == ours.grade;
        jobs.retain(|job| !job.task.who.class().is_some_and(of_grade));
        jobs.sort_by_key(|job| (job.task.from, job.task.who));
        jobs
    }

    /// When a grade keeps picked in its lessons what is its own or has been taken over.
    fn kept_picked_by(&self, ours: &Ours<'_>) -> Vec<Turn> {
        let all = self.kept_picked_of(ours);
        all.flat_map(|kept| &kept.turns)
            .copied()
            .filter(|turn| matches!(turn.who, Picker::Team(team) if team.has(ours.grade)))
            .collect()
    }

    fn class_sheet<'f>(
        &'f self,
        ours: &Ours<'_>,
        (jobs, kept): (&[Job<'f>], &[Turn]),
        class: ClassAt,
    ) -> ClassSheet<'f> {
        let own = jobs.iter().filter(|job| job.task.who == Doer::Class(class));
        let mut entries: Vec<Entry<'f>> = own.map(|job| Entry::Job(*job)).collect();
        let busy: Vec<Date> = entries.iter().map(Entry::day).collect();
        if let Some(between) = self.between(ours) {
            let all = self.garden.sessions(class).into_iter();
            let free = all.filter(|day| (between.from..=between.to).contains(day));
            let free = free.filter(|day| !busy.contains(day)).enumerate();
            entries.extend(free.map(|(n, day)| {
                let picks = kept.iter().any(|turn| (turn.from..=turn.to).contains(&day));
                let what = if picks {
                    Quiet::KeepPicked
                } else {
                    quiet(ours, n, day)
                };
                Entry::Quiet(day, what)
            }));
        }
        let moves_up = self.garden.school_year.moves_up.filter(|day| {
            let last = entries.iter().map(Entry::day).max();
            let handed = self.handed_over(ours.grade).is_some();
            handed || !ours.adopted.is_empty() && last >= Some(*day)
        });
        entries.extend(moves_up.map(Entry::MovesUp));
        // On one day the rule of moving up stands first.
        entries.sort_by_key(|entry| (entry.day(), !matches!(entry, Entry::MovesUp(_))));
        ClassSheet { class, entries }
    }
}

/// The thing to look after in a lesson, the `n`-th on which nothing is due: what the plants want on that day, and of
/// what they always want one thing in turn.
fn quiet(ours: &Ours<'_>, n: usize, day: Date) -> Quiet {
    let adopted = ours.adopted.iter().filter(|_| ours.takes_over <= Some(day));
    let all: Vec<&Planting> = ours.own.iter().chain(adopted).map(|(p, _)| *p).collect();
    let plantings = || all.iter().copied();
    if plantings().any(|p| ripens(p, day)) {
        return Quiet::Ripeness;
    }
    if plantings().any(|p| comes_up(p, day)) {
        return Quiet::Seedbed;
    }
    if plantings().all(|p| !stands(p, day)) {
        return match n % 2 {
            0 => Quiet::CountSeedlings,
            _ => Quiet::TurnFlats,
        };
    }
    match n % 4 {
        0 => Quiet::Weed,
        1 => Quiet::Measure,
        2 => Quiet::Leaves,
        _ => Quiet::Mulch,
    }
}

/// True shortly before the first pick, and while it may be picked.
fn ripens(planting: &Planting, day: Date) -> bool {
    let pick = span_of(planting, StepKind::Pick);
    pick.is_some_and(|(first, last)| plus_days(first, -RIPENING) <= day && day <= last)
}

/// True shortly after it was sown in the bed.
fn comes_up(planting: &Planting, day: Date) -> bool {
    let sown = match planting.method {
        Method::Direct | Method::Pieces => span_of(planting, StepKind::Sow),
        Method::Indoor | Method::Bought | Method::Seedlings => None,
        Method::Growing | Method::Patch => None,
    };
    sown.is_some_and(|(first, last)| first <= day && day <= plus_days(last, COMING_UP))
}

/// True while it stands in a bed or patch.
fn stands(planting: &Planting, day: Date) -> bool {
    let from = match planting.method {
        Method::Indoor | Method::Seedlings => span_of(planting, StepKind::PlantOut),
        Method::Direct | Method::Pieces | Method::Bought => span_of(planting, StepKind::Sow),
        Method::Growing | Method::Patch => return true,
    };
    from.is_none_or(|(first, _)| first <= day)
}
