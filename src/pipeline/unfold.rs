//! What has happened by a day, from the plan before and the diary: the steps that were due are done, as the diary
//! has them where it says something, and what is lost is gone.

use crate::calendar::{Date, plus_days};
use crate::checker;
use crate::garden::{Garden, Method};
use crate::plan::saved::SavedError;
use crate::plan::saved::season::{Gone, Printed, Season};
use crate::plan::{Plan, StepKind, When};
use crate::project::diary::{Diary, Entry, Happened};
use crate::units::Share;

use super::season::in_season;

/// A step was done at most so many days before or after its printed one.
const APART: i64 = 21;

/// An entry about a class that missed its step is written down within so many days of it.
const NEAR: i64 = 3;

/// A part that is lost of which less than this is left is all of it.
const NOTHING: f64 = 1e-6;

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
    let mut reading = Reading {
        garden: base,
        as_of,
        printed: printed(before, season),
        gone: Vec::new(),
    };
    let begun = |p: &Printed| p.first().is_some_and(|first| first < as_of);
    if diary.sections == 0 || !(reading.printed.iter().any(begun) || season.is_some()) {
        return Ok(None);
    }
    let (mut counted, mut without_effect) = (Vec::new(), Vec::new());
    for (number, entry) in &diary.entries {
        if reading.takes(entry) {
            counted.push((*number, entry.clone()));
        } else if wants_a_change(&entry.what) {
            without_effect.push(*number);
        }
    }
    let now = Season {
        as_of,
        years: years(base, (before, season))?,
        printed: reading.printed,
        gone: reading.gone,
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
        Happened::Missed { .. } | Happened::Lost { .. } | Happened::Up { .. } => true,
        Happened::Done { .. }
        | Happened::Weather { .. }
        | Happened::Words(_)
        | Happened::TakenBack(_) => false,
    }
}

/// The plantings of the plan before, and those that were lost by then: what of them is left the diary tells anew, so
/// that an entry which is taken back brings back what it took.
fn printed(before: &Plan, season: Option<&Season>) -> Vec<Printed> {
    let gone = season.into_iter().flat_map(|season| &season.gone);
    let whole = gone.map(|gone| Printed {
        left: Share(1.0),
        ..gone.what.clone()
    });
    let standing = before.plantings.iter().map(Printed::of);
    whole.chain(standing).collect()
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

/// The diary being read.
struct Reading<'a> {
    garden: &'a Garden,
    as_of: Date,
    printed: Vec<Printed>,
    gone: Vec<Gone>,
}

impl Reading<'_> {
    /// Takes an entry; true if it changes something.
    fn takes(&mut self, entry: &Entry) -> bool {
        match &entry.what {
            Happened::Done {
                step,
                ingredient,
                class,
                ..
            } => self.done(entry.on, (*step, ingredient), class.as_deref()),
            Happened::Missed {
                step,
                ingredient,
                class,
            } => self.missed(entry.on, (*step, ingredient), class),
            Happened::Lost {
                ingredient, share, ..
            } => self.lost(entry.on, ingredient, *share),
            Happened::Up { .. }
            | Happened::Weather { .. }
            | Happened::Words(_)
            | Happened::TakenBack(_) => false,
        }
    }

    /// A step was done on a day. True if that is another one than was printed.
    fn done(&mut self, on: Date, (kind, name): (StepKind, &str), class: Option<&str>) -> bool {
        if kind.is_harvest() {
            return false;
        }
        let steps = self.printed.iter_mut().filter(|p| p.ingredient == name);
        let steps = steps.flat_map(|p| &mut p.steps).filter(|s| s.kind == kind);
        let mut days: Vec<&mut Date> = Vec::new();
        // The sowing that is nearest: each has an entry of its own.
        let nearest = steps.filter_map(|step| {
            let apart = |day: &Date| (on - *day).num_days().abs();
            let near = dates(&step.when, class).iter().map(apart).min()?;
            (near <= APART).then_some((near, step))
        });
        if let Some((_, step)) = nearest.min_by_key(|(near, _)| *near) {
            days = dates_mut(&mut step.when, class);
        }
        let mut moved = false;
        for day in days {
            moved |= *day != on;
            *day = on;
        }
        moved
    }

    /// A class missed a step: it makes up for it in its next lesson that is still to come.
    fn missed(&mut self, on: Date, (kind, name): (StepKind, &str), class: &str) -> bool {
        let Some(at) = self
            .garden
            .class_named(class)
            .filter(|_| !kind.is_harvest())
        else {
            return false;
        };
        let sessions = self.garden.sessions(at).into_iter();
        let next = sessions.into_iter().find(|day| *day >= self.as_of);
        let steps = self.printed.iter_mut().filter(|p| p.ingredient == name);
        let steps = steps.flat_map(|p| &mut p.steps).filter(|s| s.kind == kind);
        let mut days = steps.flat_map(|step| dates_mut(&mut step.when, Some(class)));
        let near = |day: &&mut Date| (on - **day).num_days().abs() <= NEAR && **day < self.as_of;
        match (days.find(near), next) {
            (Some(day), Some(next)) => {
                *day = next;
                true
            }
            _ => false,
        }
    }

    /// A part of what had begun by a day is lost.
    fn lost(&mut self, on: Date, name: &str, share: f64) -> bool {
        let stood = |p: &Printed| {
            p.ingredient == name && is_sown(p.method) && p.first().is_some_and(|day| day <= on)
        };
        let mut any = false;
        for printed in self.printed.iter_mut().filter(|p| stood(p)) {
            printed.left = Share((printed.left.0 - share).max(0.0));
            any = true;
        }
        let all_gone = |p: &mut Printed| stood(p) && p.left.0 <= NOTHING;
        let gone = self
            .printed
            .extract_if(.., all_gone)
            .map(|what| Gone { what, on });
        self.gone.extend(gone);
        any
    }
}

/// True for what the plan itself sows or plants; of what stood there before the file tells.
fn is_sown(method: Method) -> bool {
    match method {
        Method::Direct | Method::Indoor | Method::Pieces | Method::Bought => true,
        Method::Seedlings | Method::Growing | Method::Patch => false,
    }
}

/// The days of a step that a class does, or, without a class, of all who do it.
fn dates(when: &When, class: Option<&str>) -> Vec<Date> {
    match when {
        When::Sessions(visits) => {
            let own = visits
                .iter()
                .filter(|v| class.is_none_or(|class| v.class == class));
            own.map(|visit| visit.date).collect()
        }
        When::Families(day) | When::Adult(day) if class.is_none() => vec![*day],
        When::Families(_) | When::Adult(_) | When::Daily { .. } => Vec::new(),
    }
}

fn dates_mut<'w>(when: &'w mut When, class: Option<&str>) -> Vec<&'w mut Date> {
    match when {
        When::Sessions(visits) => {
            let own = visits
                .iter_mut()
                .filter(|v| class.is_none_or(|class| v.class == class));
            own.map(|visit| &mut visit.date).collect()
        }
        When::Families(day) | When::Adult(day) if class.is_none() => vec![day],
        When::Families(_) | When::Adult(_) | When::Daily { .. } => Vec::new(),
    }
}
