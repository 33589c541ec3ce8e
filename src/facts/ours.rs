//! What one grade has to do with: what it grows and takes over, what it does on which day, and the
//! sessions on which nothing is due.

use crate::calendar::Date;
use crate::explain::{IfMissed, StepSlack};
use crate::garden::{ClassAt, GradeAt, Ingredient};
use crate::plan::{Planting, Step, StepKind};
use crate::units::Minutes;

use super::Facts;
use super::kept_picked::PickingTurns;
use super::missed::if_missed;
use super::spans::{first_day, span_of};
use super::tasks::{Doer, Task};

/// A planting with its ingredient.
pub type Grown<'a> = (&'a Planting, &'a Ingredient);

/// What a grade has to do with.
#[derive(Debug, Clone, PartialEq)]
pub struct Ours<'a> {
    /// The grade.
    pub grade: GradeAt,
    /// What the grade grows.
    pub own: Vec<Grown<'a>>,
    /// What it takes over from a grade that leaves.
    pub adopted: Vec<Grown<'a>>,
    /// The day from which on it has to do with that.
    pub takes_over: Option<Date>,
}

/// One thing to do on one day, on the page of a grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Job<'f> {
    /// What is done.
    pub task: &'f Task<'f>,
    /// What becomes of it if it is missed; `None` for what goes on from day to day.
    pub if_missed: Option<IfMissed>,
}

/// The sessions of a grade on which nothing is due.
#[derive(Debug, Clone, PartialEq)]
pub struct Between {
    /// The first day on which there is something to tend.
    pub from: Date,
    /// The last day of picking, or on which a grade is there that leaves the school before that.
    pub to: Date,
    /// The classes that have such sessions, and how many.
    pub free: Vec<(ClassAt, u32)>,
    /// True if seedlings are raised that are planted out.
    pub raised: bool,
}

impl<'a> Ours<'a> {
    /// What it grows, then what it takes over.
    pub fn all(&self) -> impl Iterator<Item = &Grown<'a>> {
        self.own.iter().chain(&self.adopted)
    }

    /// The names of what it grows itself, each once.
    #[must_use]
    pub fn own_names(&self) -> Vec<&'a str> {
        let mut names: Vec<&str> = Vec::new();
        for (_, ingredient) in &self.own {
            if !names.contains(&ingredient.name.as_str()) {
                names.push(&ingredient.name);
            }
        }
        names
    }

    /// The same with the steps of each; of what it takes over, only those that come after that.
    pub fn with_steps(
        &self,
    ) -> impl Iterator<Item = (&'a Planting, &'a Ingredient, Vec<&'a Step>)> {
        let own = self.own.iter().map(|grown| (*grown, None));
        let adopted = self.adopted.iter();
        let adopted = adopted.map(|grown| (*grown, self.takes_over));
        own.chain(adopted).map(|((planting, ingredient), from)| {
            let steps = planting.steps.iter();
            let after = steps.filter(|step| from.is_none_or(|from| step.when.last() >= Some(from)));
            (planting, ingredient, after.collect())
        })
    }

    /// Its ingredients, each once.
    #[must_use]
    pub fn ingredients(&self) -> Vec<&'a Ingredient> {
        let mut all: Vec<&Ingredient> = Vec::new();
        for (_, ingredient) in self.all() {
            if all.iter().all(|known| known.name != ingredient.name) {
                all.push(ingredient);
            }
        }
        all
    }

    /// True if one of several days is to be chosen for a harvest.
    #[must_use]
    pub fn has_chances(&self) -> bool {
        self.all().any(|(p, _)| p.picks().count() > 1)
    }
}

impl<'a> Facts<'a> {
    /// What a grade grows or has taken over that is kept picked.
    pub fn kept_picked_of(&self, ours: &Ours<'_>) -> impl Iterator<Item = &PickingTurns<'a>> {
        let is_ours = |planting| ours.all().any(|(own, _)| std::ptr::eq(*own, planting));
        let all = self.kept_picked().iter();
        all.filter(move |kept| is_ours(kept.planting))
    }

    /// What a grade has to do with.
    #[must_use]
    pub fn ours(&self, grade: GradeAt) -> Ours<'a> {
        let end = self.garden.last_day();
        let takes_over = |planting: &Planting| {
            let team = self.team_of(planting);
            !team.has(grade) && self.garden.tending(team, end).has(grade)
        };
        Ours {
            grade,
            own: self.planted_by(grade).collect(),
            adopted: self.planted().filter(|(p, _)| takes_over(p)).collect(),
            takes_over: self.garden.school_year.moves_up,
        }
    }

    /// All that is done, planting by planting; of what is taken over, only what comes after that.
    #[must_use]
    pub fn jobs(&self, ours: &Ours<'_>, slack: &[StepSlack]) -> Vec<Job<'_>> {
        let own = ours.own.iter().map(|(p, _)| (*p, None));
        let adopted = ours.adopted.iter().map(|(p, _)| (*p, ours.takes_over));
        let of_planting = |(planting, from): (&Planting, Option<Date>)| {
            let tasks = self.tasks.iter();
            let own = tasks.filter(|task| std::ptr::eq(task.planting, planting));
            own.filter(|task| from.is_none_or(|from| task.from >= from))
                .collect::<Vec<_>>()
        };
        let tasks = own.chain(adopted).flat_map(of_planting);
        tasks
            .map(|task| Job {
                task,
                if_missed: if_missed(task, slack),
            })
            .collect()
    }

    /// The sessions on which nothing is due; `None` where there is nothing to tend.
    #[must_use]
    pub fn between(&self, ours: &Ours<'_>) -> Option<Between> {
        let adopted = ours.adopted.iter().filter_map(|_| ours.takes_over);
        let begins = |p| self.on_shelf(p).map(|(from, _)| from).or(first_day(p));
        let own = ours.own.iter().filter_map(|(p, _)| begins(p));
        let from = own.chain(adopted).min()?;
        let picks = ours.all().filter_map(|(p, _)| span_of(p, StepKind::Pick));
        let last = picks.map(|(_, last)| last).max()?;
        let there = self.there_until(ours.grade);
        let to = there.map_or(last, |there| there.min(last));
        if to < from {
            return None;
        }
        let is_raised = |p: &Planting| span_of(p, StepKind::PlantOut).is_some();
        let classes = self.garden.classes_of(ours.grade);
        let free = classes.map(|class| (class, self.free_sessions(ours, class, (from, to))));
        Some(Between {
            from,
            to,
            free: free.filter(|(_, free)| *free > 0).collect(),
            raised: ours.own.iter().any(|(p, _)| is_raised(p)),
        })
    }

    /// How many sessions a class has in a span of days on which it has nothing to do with the
    /// grade's plantings.
    fn free_sessions(&self, ours: &Ours<'_>, class: ClassAt, (from, to): (Date, Date)) -> u32 {
        let is_ours = |task: &Task<'_>| ours.all().any(|(p, _)| std::ptr::eq(*p, task.planting));
        let due = |day: Date| {
            let mut tasks = self.tasks.iter();
            tasks.any(|t| t.who == Doer::Class(class) && t.from == day && is_ours(t))
        };
        let sessions = self.garden.sessions(class).into_iter();
        let free = sessions.filter(|day| (from..=to).contains(day) && !due(*day));
        u32::try_from(free.count()).unwrap_or(u32::MAX)
    }
}

/// What the jobs of one class in one session take together; `None` where no more than one has its
/// time. Minutes that are rounded job by job do not add up.
#[must_use]
pub fn together(session: &[Job<'_>]) -> Option<Minutes> {
    let timed = || session.iter().filter_map(|job| job.task.takes);
    (timed().count() > 1).then(|| timed().sum())
}
