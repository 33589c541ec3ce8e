//! What has happened by a day, from the plan before and the diary: the steps that were due are done, as the diary
//! has them where it says something, and what is lost is gone.

mod reading;

use crate::calendar::{Date, plus_days};
use crate::checker;
use crate::garden::Garden;
use crate::plan::saved::SavedError;
use crate::plan::saved::season::Season;
use crate::plan::saved::shut::{Closed, Shut};
use crate::plan::{Plan, Promise, Visit};
use crate::project::diary::{Diary, Entry, Happened};

use super::season::{fall_out, in_season};
use reading::{Effect, Reading};

/// A season as it has gone until a day.
#[derive(Debug, Clone)]
pub struct Unfolded {
    /// The garden in this season.
    pub garden: Garden,
    season: Season,
    /// The plan before.
    pub before: Plan,
    /// What it promises in the garden as it is now.
    pub promise: Promise,
    /// The entries that change what is planned, with their numbers, in order of their days.
    pub counted: Vec<(usize, Entry)>,
    /// The numbers of entries that should change something and fit nothing of the plan.
    pub without_effect: Vec<usize>,
    /// How many entries there are.
    pub entries: usize,
}

impl Unfolded {
    /// The same season over a changed garden. Of what it does not know by name nothing has begun.
    ///
    /// # Errors
    /// Something was begun on a day that the changed garden leaves out.
    pub fn over(&self, changed: Garden) -> Result<Garden, SavedError> {
        let season = self.season.as_far_as_known(&changed).in_garden(&changed)?;
        Ok(in_season(changed, season))
    }
}

/// What the diary says of the plan before, as of a day. `base` is the garden of the file, `before` the saved plan and
/// the season in which it was made. `None` before the first step.
///
/// # Errors
/// A name in the saved plan that the project does not know.
pub fn unfold(
    base: &Garden,
    (before, season): (&Plan, Option<&Season>),
    diary: &Diary,
    on: Date,
) -> Result<Option<Unfolded>, SavedError> {
    let today = diary
        .entries
        .iter()
        .any(|(_, entry)| entry.on == on && is_news(&entry.what));
    // What was done today is done: then the rest begins tomorrow.
    let as_of = plus_days(on, i64::from(today));
    let shut = shut(diary);
    let mut held = base.clone();
    fall_out(&mut held, &shut.in_garden(base)?);
    let mut reading = Reading::of(&held, as_of, (before, season));
    if !reading.has_begun() {
        return Ok(None);
    }
    // What the plan before was made with has had its effect there.
    let seen = |number: usize| season.is_some_and(|season| number <= season.entries);
    let (mut counted, mut without_effect) = (Vec::new(), Vec::new());
    for (number, entry) in diary.by_day() {
        match reading.takes(entry) {
            Effect::Changes => counted.push((number, entry.clone())),
            Effect::None if !seen(number) => without_effect.push(number),
            Effect::None | Effect::AsPrinted => {}
        }
    }
    without_effect.sort_unstable();
    let (printed, gone) = reading.left();
    let promise = promise(base, (before, season))?;
    let now = Season {
        as_of,
        entries: diary
            .entries
            .iter()
            .map(|(number, _)| *number)
            .max()
            .unwrap_or(0),
        years: years(&promise),
        printed,
        gone,
        shut,
    };
    Ok(Some(Unfolded {
        garden: in_season(base.clone(), now.in_garden(base)?),
        season: now,
        before: before.clone(),
        promise,
        counted,
        without_effect,
        entries: diary.entries.len(),
    }))
}

/// The school that falls out by the diary.
fn shut(diary: &Diary) -> Shut {
    let mut shut = Shut::default();
    for (_, entry) in &diary.entries {
        match &entry.what {
            Happened::Closed { from, to, care } => shut.closed.push(Closed {
                from: *from,
                to: *to,
                care: *care,
            }),
            Happened::NoLesson { class, day } => shut.no_lesson.push(Visit {
                class: class.clone(),
                date: *day,
            }),
            Happened::Done { .. }
            | Happened::Missed { .. }
            | Happened::Up { .. }
            | Happened::Lost { .. }
            | Happened::Weather { .. }
            | Happened::Words(_)
            | Happened::TakenBack(_) => {}
        }
    }
    shut
}

/// True for what tells of a step, or of a loss.
fn is_news(what: &Happened) -> bool {
    match what {
        Happened::Done { .. } | Happened::Missed { .. } | Happened::Lost { .. } => true,
        Happened::Up { .. }
        | Happened::Closed { .. }
        | Happened::NoLesson { .. }
        | Happened::Weather { .. }
        | Happened::Words(_)
        | Happened::TakenBack(_) => false,
    }
}

/// What the plan before promises, in the season in which it was made.
fn promise(
    base: &Garden,
    (before, season): (&Plan, Option<&Season>),
) -> Result<Promise, SavedError> {
    let garden = match season {
        Some(season) => in_season(base.clone(), season.in_garden(base)?),
        None => base.clone(),
    };
    Ok(checker::promise(&garden, before))
}

/// How often the worst ingredient is ready, all added up, and the whole dish.
fn years(promise: &Promise) -> (u32, u32, u32) {
    let each = || promise.ingredients.iter().map(|own| own.ready_years);
    (
        each().min().unwrap_or(0),
        each().sum(),
        promise.whole_dish_years,
    )
}
