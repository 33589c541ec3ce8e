//! What is due in a week, and what of the weeks before is not written down as done, by a plan and the diary.

use std::collections::BTreeSet;

use crate::calendar::{Date, monday_of, plus_days};
use crate::checker::WaterNeed;
use crate::garden::{Garden, IngredientAt, Source};
use crate::plan::StepAt;
use crate::project::diary::{Diary, Entry, Happened, Turn, Turns};

use super::Facts;
use super::decisions::Decision;
use super::kept_picked::PickingTurns;
use super::tasks::{Doer, Task};

/// A pick is one of several: only what was picked so few days from its day counts for it.
const PICK: i64 = 6;

/// Decisions are told so many days ahead.
const AHEAD: i64 = 14;

/// What a week asks for.
pub struct Due<'f, 'a> {
    /// Its Monday.
    pub monday: Date,
    /// What is to be done in it and is not written down as done, in order of time.
    pub week: Vec<&'f Task<'a>>,
    /// What was due before and is not written down as done; what was missed is among it.
    pub late: Vec<&'f Task<'a>>,
    /// What is to be kept picked in it, so that it goes on bearing.
    pub kept_picked: Vec<PickingTurns<'a>>,
    /// What is to be decided within two weeks, or should have been in the two before.
    pub decisions: Vec<&'f Decision<'a>>,
    /// The water that all beds need in it; `None` where nothing stands in them.
    pub water: Option<WaterNeed>,
    /// Rain of its days in the gauge, mm, as far as it was written down.
    pub rain: f64,
    /// Parts of ingredients that are lost, 0 to 1, with the name of each.
    pub lost: Vec<(&'f str, f64)>,
    /// School that falls out, of which the plan does not know yet.
    pub shut: Vec<&'f Happened>,
}

impl<'f, 'a> Due<'f, 'a> {
    /// Looks at the week of a day.
    #[must_use]
    pub fn on(facts: &'f Facts<'a>, diary: &'f Diary, day: Date) -> Self {
        let monday = monday_of(day);
        let sunday = plus_days(monday, 6);
        let done = done(facts, diary);
        let open = facts.tasks.iter().zip(done);
        // What was due before the day as of which the plan was made is taken as done.
        let as_of = facts.garden.as_of();
        let given = |task: &Task<'_>| task.who != Doer::Anyone && task.from < as_of;
        let open = open.filter_map(|(task, done)| (!done && !given(task)).then_some(task));
        let (mut week, mut late) = (Vec::new(), Vec::new());
        for task in open {
            let goes_on = task.who == Doer::Anyone && task.from < monday && task.to >= monday;
            match (monday..=sunday).contains(&task.from) || goes_on {
                true => week.push(task),
                // What goes on from day to day is no task that is made up for.
                false if task.from < monday && task.who != Doer::Anyone => late.push(task),
                false => {}
            }
        }
        let near = plus_days(day, -AHEAD)..=plus_days(day, AHEAD);
        Self {
            monday,
            week,
            late,
            kept_picked: kept_picked(facts, (monday, sunday)),
            decisions: facts
                .decisions
                .iter()
                .filter(|decision| near.contains(&decision.by))
                .collect(),
            water: water(facts, monday),
            rain: rain(diary, monday),
            lost: lost(diary, facts.garden),
            shut: shut(diary, facts.garden),
        }
    }
}

/// What is kept picked in a week, with those who are to do it then.
fn kept_picked<'a>(facts: &Facts<'a>, (monday, sunday): (Date, Date)) -> Vec<PickingTurns<'a>> {
    let mut all = facts.kept_picked().to_vec();
    for kept in &mut all {
        kept.turns
            .retain(|turn| turn.from <= sunday && monday <= turn.to);
    }
    all.retain(|kept| !kept.turns.is_empty());
    all
}

/// Which tasks the diary says were done, in the order of all tasks.
fn done(facts: &Facts<'_>, diary: &Diary) -> Vec<bool> {
    let mut done = picked(facts, diary);
    let steps = facts.tasks.iter().filter(|task| !task.kind.is_harvest());
    let mut turns = Turns::of(steps.map(|task| {
        Turn {
            step: task.at,
            visit: task.visit,
            kind: task.kind,
            ingredient: &task.ingredient.name,
            class: task
                .who
                .class()
                .map(|at| facts.garden.class(at).name.as_str()),
            day: task.from,
        }
    }));
    for (_, entry) in diary.by_day() {
        turns.done(entry, |_| true);
        turns.missed(entry, |_| true);
    }
    let told = turns
        .all()
        .filter_map(|(turn, done)| done.then_some((turn.step, turn.visit)));
    let told: BTreeSet<(StepAt, usize)> = told.collect();
    for (done, task) in done.iter_mut().zip(&facts.tasks) {
        *done |= told.contains(&(task.at, task.visit));
    }
    done
}

/// Which tasks are picks that fall away: an entry of a pick stands for all picks of each planting that is due about
/// then, for after a pick the others are no more.
fn picked(facts: &Facts<'_>, diary: &Diary) -> Vec<bool> {
    let mut done = vec![false; facts.tasks.len()];
    for (_, entry) in diary.by_day() {
        let whose = |task: &Task<'_>| (task.who, task.at.planting);
        let meant = facts.tasks.iter().zip(&done);
        let meant = meant.filter(|(task, done)| !**done && is_pick(facts.garden, entry, task));
        let meant: Vec<_> = meant.map(|(task, _)| whose(task)).collect();
        for (done, task) in done.iter_mut().zip(&facts.tasks) {
            *done |= task.kind.is_harvest() && meant.contains(&whose(task));
        }
    }
    done
}

/// True if an entry may tell of a pick. One of a class does not stand for another; one without a class stands for all.
fn is_pick(garden: &Garden, entry: &Entry, task: &Task<'_>) -> bool {
    let Happened::Done {
        step,
        ingredient,
        class,
        ..
    } = &entry.what
    else {
        return false;
    };
    let by_class = |name: &String| {
        let class = task.who.class();
        class.is_none_or(|class| garden.class(class).name == *name)
    };
    task.kind.is_harvest()
        && *step == task.kind
        && *ingredient == task.ingredient.name
        && (entry.on - task.from).num_days().abs() <= PICK
        && class.as_ref().is_none_or(by_class)
}

/// What all beds need in the week of a Monday.
fn water(facts: &Facts<'_>, monday: Date) -> Option<WaterNeed> {
    let watering = facts.watering();
    let horizon = facts.garden.horizon();
    let week = (0..watering.weeks.len()).find(|week| horizon.monday(*week) == monday)?;
    let stands = watering
        .beds
        .iter()
        .any(|bed| bed.get(week).is_some_and(Option::is_some));
    watering.weeks.get(week).copied().filter(|_| stands)
}

/// Rain of a week as the diary has it.
fn rain(diary: &Diary, monday: Date) -> f64 {
    let week = monday..=plus_days(monday, 6);
    let of_week = diary
        .entries
        .iter()
        .filter(|(_, entry)| week.contains(&entry.on));
    let rain = of_week.filter_map(|(_, entry)| match entry.what {
        Happened::Weather { rain, .. } => rain,
        _ => None,
    });
    rain.sum()
}

/// School that falls out, of which the plan does not know yet.
fn shut<'d>(diary: &'d Diary, garden: &Garden) -> Vec<&'d Happened> {
    let known = garden.season.as_ref().map_or(0, |season| season.entries);
    let new = diary.entries.iter().filter(|(number, _)| *number > known);
    let shut = new.map(|(_, entry)| &entry.what);
    shut.filter(|what| matches!(what, Happened::Closed { .. } | Happened::NoLesson { .. }))
        .collect()
}

/// What is lost of each ingredient, of which the plan does not know yet, or of what cannot be planned again, such as a
/// patch. Each loss is a part of what stood until then.
fn lost<'d>(diary: &'d Diary, garden: &Garden) -> Vec<(&'d str, f64)> {
    let known = garden.season.as_ref().map_or(0, |season| season.entries);
    let is_planned = |name: &str| {
        let at = garden.ingredient_named(name);
        at.is_some_and(|at| garden[at].source == Source::Sown || has_lost(garden, at))
    };
    let mut all: Vec<(&str, f64)> = Vec::new();
    for (number, entry) in &diary.entries {
        let Happened::Lost {
            ingredient, share, ..
        } = &entry.what
        else {
            continue;
        };
        if *number <= known && is_planned(ingredient) {
            continue;
        }
        match all.iter_mut().find(|(name, _)| name == ingredient) {
            Some((_, lost)) => *lost += (1.0 - *lost) * share,
            None => all.push((ingredient, *share)),
        }
    }
    all
}

/// True if the plan knows of a loss of what it goes on with.
fn has_lost(garden: &Garden, at: IngredientAt) -> bool {
    let mut begun = garden.begun_of(at);
    begun.any(|(_, printed)| printed.left.0 < 1.0)
}
