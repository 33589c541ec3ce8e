//! The diary being read, in order of its days: what it tells of each planting of the plan before.

mod lessons;

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::garden::{Garden, Method};
use crate::plan::saved::season::{Gone, Printed, Season};
use crate::plan::{By, Plan, PlantingAt, StepAt, StepKind};
use crate::project::diary::{Entry, Happened, Turn, Turns};
use crate::units::Share;

use super::super::season::need_of;
use lessons::Lessons;

/// A part of which less than this is left is nothing.
const NOTHING: f64 = 1e-6;

/// What an entry does to a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Effect {
    /// It changes something.
    Changes,
    /// What it tells is as printed, or is none of a plan's business.
    AsPrinted,
    /// It should change something, and fits nothing.
    None,
}

/// A planting, and what the diary has told of it so far.
struct Stood {
    printed: Printed,
    /// Minutes of each of its steps, where a lesson may have to be found for them.
    minutes: Vec<f64>,
    /// The part of the plants that were to stand which does stand. A count tells it anew; of a loss it is a part that is
    /// lost.
    left: f64,
    /// The day of the entry by which nothing was left.
    gone_on: Option<Date>,
}

impl Stood {
    fn of(printed: Printed, minutes: Vec<f64>) -> Self {
        Self {
            printed,
            minutes,
            left: 1.0,
            gone_on: None,
        }
    }

    /// True if it is of an ingredient and by a day began as far as a plan has it begin.
    fn is(&self, name: &str, on: Date) -> bool {
        let began = self.began();
        self.printed.ingredient == name && began.is_some_and(|day| day <= on)
    }

    /// The day on which the plan sowed or planted it. What came onto the shelf without the plan is of the plan once it is
    /// planted out, and of what stood in a bed before the file tells.
    fn began(&self) -> Option<Date> {
        match self.printed.method {
            Method::Direct | Method::Indoor | Method::Pieces | Method::Bought => {
                self.printed.first()
            }
            Method::Seedlings => {
                let into_bed = StepKind::into_bed(self.printed.method);
                let mut steps = self.printed.steps.iter();
                let out = steps.find(|step| Some(step.kind) == into_bed);
                out.and_then(|step| step.when.first())
            }
            Method::Growing | Method::Patch => None,
        }
    }

    fn leave(&mut self, left: f64, on: Date) -> bool {
        let before = std::mem::replace(&mut self.left, left);
        self.gone_on = (left <= NOTHING).then_some(on);
        (left - before).abs() > NOTHING
    }
}

/// The diary being read.
pub struct Reading<'a> {
    garden: &'a Garden,
    as_of: Date,
    stood: Vec<Stood>,
    turns: Turns<'a>,
    lessons: Lessons<'a>,
}

impl<'a> Reading<'a> {
    /// Begins with the plantings of the plan before, and with those that were lost by then: what of them is left the diary
    /// tells anew, so that an entry which is taken back brings back what it took.
    pub fn of(
        garden: &'a Garden,
        as_of: Date,
        (before, season): (&'a Plan, Option<&'a Season>),
    ) -> Self {
        let gone = season.into_iter().flat_map(|season| &season.gone);
        let gone = gone.map(|gone| Stood::of(gone.what.clone(), Vec::new()));
        let standing = before.plantings.iter().map(|planting| {
            let dated = planting.steps.iter().filter(|step| !step.kind.is_span());
            Stood::of(
                Printed::of(planting),
                dated.map(|step| step.minutes.0).collect(),
            )
        });
        Self {
            garden,
            as_of,
            stood: gone.chain(standing).collect(),
            turns: turns((before, season)),
            lessons: Lessons::of(garden, before.plantings.iter()),
        }
    }

    /// True if anything was begun.
    pub fn has_begun(&self) -> bool {
        let mut all = self.stood.iter().map(|stood| stood.printed.first());
        all.any(|first| first.is_some_and(|first| first < self.as_of))
    }

    /// Takes an entry, the next in order of their days.
    pub fn takes(&mut self, entry: &Entry) -> Effect {
        let wanted = |changes| match changes {
            true => Effect::Changes,
            false => Effect::None,
        };
        match &entry.what {
            Happened::Done { step, .. } if step.is_harvest() || step.is_span() => Effect::AsPrinted,
            Happened::Done { .. } => self.done(entry),
            Happened::Missed { .. } => wanted(self.missed(entry)),
            Happened::Closed { from, to, .. } => self.fell_out((*from, *to), |_| true),
            Happened::NoLesson { class, day } => self.fell_out((*day, *day), |own| own == class),
            Happened::Lost {
                ingredient, share, ..
            } => wanted(self.lost(entry.on, ingredient, *share)),
            Happened::Up {
                ingredient,
                count,
                of: Some(of),
            } => self.up(entry.on, ingredient, (*count, *of)),
            Happened::Up { of: None, .. } => Effect::None,
            Happened::Weather { .. } | Happened::Words(_) | Happened::TakenBack(_) => {
                Effect::AsPrinted
            }
        }
    }

    /// A step was done on a day. An entry of all classes that is of the day of one of them tells of the lessons as they
    /// were printed.
    fn done(&mut self, entry: &Entry) -> Effect {
        if entry.on > self.garden.last_day() {
            return Effect::AsPrinted;
        }
        let stood = &self.stood;
        let Some(told) = self.turns.done(entry, |turn| stands(stood, turn)) else {
            return Effect::None;
        };
        let of_all = matches!(&entry.what, Happened::Done { class: None, .. });
        if of_all && told.iter().any(|turn| turn.day == entry.on) {
            return Effect::AsPrinted;
        }
        let moved: Vec<bool> = told.iter().map(|turn| self.put(turn, entry.on)).collect();
        match moved.contains(&true) {
            true => Effect::Changes,
            false => Effect::AsPrinted,
        }
    }

    /// A class missed a step: it makes up for it in its next lesson with room for it.
    fn missed(&mut self, entry: &Entry) -> bool {
        let (Happened::Missed { step, .. }, stood) = (&entry.what, &self.stood) else {
            return false;
        };
        if step.is_harvest() {
            return false;
        }
        let may = |turn: &Turn<'_>| stands(stood, turn);
        let turn = self.turns.missed(entry, may);
        turn.is_some_and(|turn| self.is_made_up(&turn, entry.on))
    }

    /// School fell out on some days for some classes: they make up for what was due then. What is due on such days to come
    /// is planned anew.
    fn fell_out(&mut self, (from, to): (Date, Date), of: impl Fn(&str) -> bool) -> Effect {
        let (stood, as_of) = (&self.stood, self.as_of);
        let missed = |turn: &Turn<'_>| {
            let days = from..=to.min(as_of.pred_opt().unwrap_or(as_of));
            days.contains(&turn.day)
                && turn.class.is_some_and(&of)
                && !turn.kind.is_harvest()
                && stands(stood, turn)
        };
        let missed = self.turns.fell_out(missed);
        let made_up: Vec<bool> = missed
            .iter()
            .map(|turn| self.is_made_up(turn, turn.day))
            .collect();
        match made_up.contains(&true) || to >= as_of {
            true => Effect::Changes,
            false => Effect::AsPrinted,
        }
    }

    /// A class makes up for a turn in its next lesson with room for it after a day.
    fn is_made_up(&mut self, turn: &Turn<'a>, after: Date) -> bool {
        let Some(own) = self.stood.get(turn.step.planting.0) else {
            return false;
        };
        let who = turn
            .class
            .map(By::Class)
            .zip(Some(own.printed.grades.as_slice()));
        let minutes = own.minutes.get(turn.step.step).copied().unwrap_or_default();
        let next = who.and_then(|who| self.lessons.take(who, after, minutes));
        next.is_some_and(|next| {
            self.turns.made_up(turn, next);
            self.put(turn, next)
        })
    }

    /// Puts a turn on another day; true if it was not there.
    fn put(&mut self, turn: &Turn<'_>, on: Date) -> bool {
        let planting = self.stood.get_mut(turn.step.planting.0);
        let step = planting.and_then(|own| own.printed.steps.get_mut(turn.step.step));
        let days = step.map(|step| step.when.days_mut()).unwrap_or_default();
        match days.into_iter().nth(turn.visit) {
            Some(day) => std::mem::replace(day, on) != on,
            None => false,
        }
    }

    /// So many of those that were counted are up: of a sowing, the last by then.
    fn up(&mut self, on: Date, name: &str, (count, of): (u32, u32)) -> Effect {
        let sown = self.stood.iter_mut().filter(|s| s.is(name, on));
        let last = sown.max_by_key(|s| s.began());
        let Some((last, each)) = last.and_then(|s| {
            let each = seeds_each(self.garden, &s.printed)?;
            Some((s, each))
        }) else {
            return Effect::None;
        };
        // More than are to stand are thinned out.
        let up = (f64::from(count) / f64::from(of.max(1)) * each).min(1.0);
        match last.leave(up, on) {
            true => Effect::Changes,
            false => Effect::AsPrinted,
        }
    }

    /// A part of what stands on a day is lost.
    fn lost(&mut self, on: Date, name: &str, share: f64) -> bool {
        let standing = self.stood.iter_mut();
        let standing = standing.filter(|s| s.is(name, on) && s.gone_on.is_none());
        let lost: Vec<bool> = standing
            .map(|s| s.leave(s.left * (1.0 - share), on))
            .collect();
        lost.contains(&true)
    }

    /// What is left of every planting, and what is gone.
    pub fn left(mut self) -> (Vec<Printed>, Vec<Gone>) {
        let (mut printed, mut gone) = (Vec::new(), Vec::new());
        let done = self.turns.all().filter(|(_, done)| *done);
        let done: BTreeSet<StepAt> = done.map(|(turn, _)| turn.step).collect();
        for (planting, stood) in self.stood.into_iter().enumerate() {
            let planting = PlantingAt(planting);
            let is_told = |step| done.contains(&StepAt { planting, step });
            let mut what = Printed {
                left: Share(stood.left),
                ..stood.printed
            };
            match stood.gone_on {
                Some(on) => gone.push(Gone { what, on }),
                None => {
                    held(&mut what, &stood.minutes, (self.as_of, &mut self.lessons));
                    begun_in_order(&mut what, self.as_of, is_told);
                    printed.push(what);
                }
            }
        }
        (printed, gone)
    }
}

/// True for a turn of what is not gone by the entry that is read.
fn stands(stood: &[Stood], turn: &Turn<'_>) -> bool {
    let own = stood.get(turn.step.planting.0);
    own.is_some_and(|own| own.gone_on.is_none())
}

/// All turns that the diary may tell of, of the plantings in the order in which they are read.
fn turns<'a>((before, season): (&'a Plan, Option<&'a Season>)) -> Turns<'a> {
    let gone = season.into_iter().flat_map(|season| &season.gone);
    let gone = gone.map(|gone| {
        let steps = gone.what.steps.iter().map(|step| (step.kind, &step.when));
        (gone.what.ingredient.as_str(), steps.collect::<Vec<_>>())
    });
    let standing = before.plantings.iter().map(|planting| {
        let dated = planting.steps.iter().filter(|step| !step.kind.is_span());
        let steps = dated.map(|step| (step.kind, &step.when));
        (planting.ingredient.as_str(), steps.collect())
    });
    let all = gone.chain(standing).enumerate();
    let all = all.flat_map(|(planting, (ingredient, steps))| {
        let steps = steps.into_iter().enumerate();
        steps.flat_map(move |(step, (kind, when))| {
            let turns = when.turns().into_iter().enumerate();
            turns.map(move |(visit, (by, day))| Turn {
                step: StepAt {
                    planting: PlantingAt(planting),
                    step,
                },
                visit,
                kind,
                ingredient,
                class: by.class(),
                day,
            })
        })
    });
    Turns::of(all)
}

/// Seeds for each plant that is to stand, where seed was sown or plants were planted by the plan.
fn seeds_each(garden: &Garden, printed: &Printed) -> Option<f64> {
    let need = need_of(garden, &printed.in_garden(garden).ok()?);
    (need.seeds > 0).then(|| f64::from(need.seeds) / f64::from(need.plants.max(1)))
}

/// A lesson to come of a step that has begun may have fallen out of the calendar: then the next one takes its place.
fn held(printed: &mut Printed, minutes: &[f64], (as_of, lessons): (Date, &mut Lessons<'_>)) {
    for (at, step) in printed.steps.iter_mut().enumerate() {
        if step.when.first().is_none_or(|first| first >= as_of) {
            continue;
        }
        let minutes = minutes.get(at).copied().unwrap_or_default();
        let next = step.when.turns().into_iter().map(|(by, day)| {
            let falls_out = day >= as_of && !lessons.is_held(by, day);
            let next = || lessons.take((by, &printed.grades), day, minutes);
            falls_out.then(next).flatten().unwrap_or(day)
        });
        let next: Vec<Date> = next.collect();
        let days = step.when.days_mut().into_iter().zip(next);
        days.for_each(|(day, next)| *day = next);
    }
}

/// What follows on a step that was not begun by then has not begun, unless the diary tells that it was done: it is planned
/// anew.
fn begun_in_order(printed: &mut Printed, as_of: Date, is_told: impl Fn(usize) -> bool) {
    let mut before: Option<Date> = None;
    let mut told = (0..).map(is_told);
    printed.steps.retain(|step| {
        let first = step.when.first();
        let too_early = first < before && first.is_some_and(|first| first < as_of);
        let stays = told.next() == Some(true) || !too_early;
        if stays {
            before = before.max(first);
        }
        stays
    });
}
