//! What is due in a week, and what of the weeks before is not written down as done, by a plan and the diary.

use crate::calendar::{Date, monday_of, plus_days};
use crate::checker::WaterNeed;
use crate::garden::{Garden, Source};
use crate::plan::PlantingAt;
use crate::project::diary::{Diary, Entry, Happened};

use super::Facts;
use super::decisions::Decision;
use super::kept_picked::PickingTurns;
use super::tasks::{Doer, Task};

/// Days before a task's own on which it may have been done already.
const EARLY: i64 = 21;

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

/// Which tasks the diary says were done, in the order of all tasks. An entry stands for the first open task of each
/// class that it can mean, for a later sowing has an entry of its own. One of a pick stands for all picks of each
/// planting that is due about then: after a pick the others fall away.
fn done(facts: &Facts<'_>, diary: &Diary) -> Vec<bool> {
    let mut done = vec![false; facts.tasks.len()];
    let mut entries: Vec<&Entry> = diary.entries.iter().map(|(_, entry)| entry).collect();
    entries.sort_by_key(|entry| entry.on);
    let picked = |task: &Task<'_>| task.kind.is_harvest().then_some(task.at.planting);
    for entry in entries {
        let mut served: Vec<(Doer, Option<PlantingAt>)> = Vec::new();
        for (at, task) in facts.tasks.iter().enumerate() {
            let who = (task.who, picked(task));
            if !done[at] && !served.contains(&who) && can_mean(facts.garden, entry, task) {
                served.push(who);
                done[at] = true;
            }
        }
        for (at, task) in facts.tasks.iter().enumerate() {
            let who = (task.who, picked(task));
            done[at] |= who.1.is_some() && served.contains(&who);
        }
    }
    done
}

/// True if an entry may tell that a task was done. One of a class does not stand for another; one without a class
/// stands for all.
fn can_mean(garden: &Garden, entry: &Entry, task: &Task<'_>) -> bool {
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
    let days = (entry.on - task.from).num_days();
    let in_time = match task.kind.is_harvest() {
        true => days.abs() <= PICK,
        false => days >= -EARLY,
    };
    *step == task.kind
        && *ingredient == task.ingredient.name
        && in_time
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

/// What is lost of each ingredient, and was not known yet when the plan was made; of what cannot be planned again, such as a
/// patch, whenever it was.
fn lost<'d>(diary: &'d Diary, garden: &Garden) -> Vec<(&'d str, f64)> {
    let is_planned_for = |on: Date, name: &str| {
        let at = garden.ingredient_named(name);
        let sown = at.is_some_and(|at| garden[at].source == Source::Sown);
        sown && garden
            .season
            .as_ref()
            .is_some_and(|season| on < season.as_of)
    };
    let mut all: Vec<(&str, f64)> = Vec::new();
    for (_, entry) in &diary.entries {
        let Happened::Lost {
            ingredient, share, ..
        } = &entry.what
        else {
            continue;
        };
        if is_planned_for(entry.on, ingredient) {
            continue;
        }
        match all.iter_mut().find(|(name, _)| name == ingredient) {
            Some((_, sum)) => *sum = (*sum + share).min(1.0),
            None => all.push((ingredient, *share)),
        }
    }
    all
}
