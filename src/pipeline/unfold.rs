//! What has happened by a day, from the plan before and the diary: the steps that were due are done, as the diary
//! has them where it says something, and what is lost is gone.

mod reading;

use crate::calendar::{Date, plus_days};
use crate::checker;
use crate::garden::Garden;
use crate::plan::Plan;
use crate::plan::saved::SavedError;
use crate::plan::saved::season::Season;
use crate::project::diary::{Diary, Entry, Happened};

use super::season::in_season;
use reading::Reading;

/// A season as it has gone until a day.
#[derive(Debug, Clone)]
pub struct Unfolded {
    /// The garden in this season.
    pub garden: Garden,
    season: Season,
    /// The plan before.
    pub before: Plan,
    /// The entries that change what is planned, with their numbers.
    pub counted: Vec<(usize, Entry)>,
    /// The numbers of entries about losses, missed steps and plants that are up which change nothing.
    pub without_effect: Vec<usize>,
    /// How many entries there are.
    pub entries: usize,
}

impl Unfolded {
    /// The same season over a changed garden. Of what it does not know by name nothing has begun.
    #[must_use]
    pub fn over(&self, changed: Garden) -> Garden {
        match self.season.as_far_as_known(&changed).in_garden(&changed) {
            Ok(season) => in_season(changed, season),
            Err(_) => changed,
        }
    }
}

/// What the diary says of the plan before, as of a day. `base` is the garden of the file, `before` the saved plan and
/// the season in which it was made. `None` before the first step, and without a diary.
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
    let mut reading = Reading::of(base, as_of, (before, season));
    if diary.sections == 0 || !reading.has_begun() {
        return Ok(None);
    }
    // What the plan before was made with has had its effect there.
    let seen = |entry: &Entry| season.is_some_and(|season| entry.on < season.as_of);
    let (mut counted, mut without_effect) = (Vec::new(), Vec::new());
    for (number, entry) in &diary.entries {
        if reading.takes(entry) {
            counted.push((*number, entry.clone()));
        } else if wants_a_change(&entry.what) && !seen(entry) {
            without_effect.push(*number);
        }
    }
    let (printed, gone) = reading.left();
    let now = Season {
        as_of,
        years: years(base, (before, season))?,
        printed,
        gone,
    };
    Ok(Some(Unfolded {
        garden: in_season(base.clone(), now.in_garden(base)?),
        season: now,
        before: before.clone(),
        counted,
        without_effect,
        entries: diary.entries.len(),
    }))
}

/// True for what tells of a step, or of a loss.
fn is_news(what: &Happened) -> bool {
    match what {
        Happened::Done { .. } | Happened::Missed { .. } | Happened::Lost { .. } => true,
        Happened::Up { .. }
        | Happened::Weather { .. }
        | Happened::Words(_)
        | Happened::TakenBack(_) => false,
    }
}

/// True for what should change the plan. What was done as printed need not.
fn wants_a_change(what: &Happened) -> bool {
    match what {
        Happened::Missed { .. } | Happened::Lost { .. } | Happened::Up { of: None, .. } => true,
        Happened::Done { .. }
        | Happened::Up { of: Some(_), .. }
        | Happened::Weather { .. }
        | Happened::Words(_)
        | Happened::TakenBack(_) => false,
    }
}

/// How often the plan before is ready in the garden for which it was made.
fn years(
    base: &Garden,
    (before, season): (&Plan, Option<&Season>),
) -> Result<(u32, u32, u32), SavedError> {
    let garden = match season {
        Some(season) => in_season(base.clone(), season.in_garden(base)?),
        None => base.clone(),
    };
    let promise = checker::promise(&garden, before);
    let each = || promise.ingredients.iter().map(|own| own.ready_years);
    Ok((
        each().min().unwrap_or(0),
        each().sum(),
        promise.whole_dish_years,
    ))
}
