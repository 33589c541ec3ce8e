//! The diary being read: what it tells of each planting of the plan before.

use crate::calendar::Date;
use crate::garden::{Garden, Method};
use crate::plan::saved::season::{Gone, Printed, Season};
use crate::plan::{Plan, StepKind, When};
use crate::project::diary::{Entry, Happened};
use crate::units::Share;

/// A step was done at most so many days before or after its printed one.
const APART: i64 = 21;

/// An entry about a lesson is written down within so many days of it.
const NEAR: i64 = 3;

/// A part that is lost of which less than this is left is all of it.
const NOTHING: f64 = 1e-6;

/// A planting, and what the diary has told of it so far.
struct Stood {
    printed: Printed,
    /// Seeds for each plant that is to stand, where that is known.
    seeds: Option<f64>,
    /// The part of its plants that came up, by the last count.
    up: f64,
    /// The part that was lost.
    lost: f64,
    /// The day of the last loss.
    lost_on: Option<Date>,
}

impl Stood {
    fn of(printed: Printed, seeds_and_plants: Option<(u32, u32)>) -> Self {
        let each = |(seeds, plants): (u32, u32)| f64::from(seeds) / f64::from(plants.max(1));
        Self {
            printed,
            seeds: seeds_and_plants.map(each),
            up: 1.0,
            lost: 0.0,
            lost_on: None,
        }
    }

    /// True if it is of an ingredient, sown or planted by the plan, and began by a day.
    fn is(&self, name: &str, on: Date) -> bool {
        let first = self.printed.first();
        self.printed.ingredient == name
            && is_sown(self.printed.method)
            && first.is_some_and(|day| day <= on)
    }

    fn left(&self) -> f64 {
        (self.up - self.lost).max(0.0)
    }
}

/// The diary being read.
pub struct Reading<'a> {
    garden: &'a Garden,
    as_of: Date,
    stood: Vec<Stood>,
}

impl<'a> Reading<'a> {
    /// Begins with the plantings of the plan before, and with those that were lost by then: what of them is left the diary
    /// tells anew, so that an entry which is taken back brings back what it took.
    pub fn of(garden: &'a Garden, as_of: Date, (before, season): (&Plan, Option<&Season>)) -> Self {
        let gone = season.into_iter().flat_map(|season| &season.gone);
        let gone = gone.map(|gone| Stood::of(gone.what.clone(), None));
        let standing = before.plantings.iter();
        let standing = standing.map(|p| Stood::of(Printed::of(p), Some((p.seeds, p.plants))));
        Self {
            garden,
            as_of,
            stood: gone.chain(standing).collect(),
        }
    }

    /// True if anything was begun.
    pub fn has_begun(&self) -> bool {
        let mut all = self.stood.iter().map(|stood| stood.printed.first());
        all.any(|first| first.is_some_and(|first| first < self.as_of))
    }

    /// Takes an entry; true if it changes something.
    pub fn takes(&mut self, entry: &Entry) -> bool {
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
            Happened::Up {
                ingredient,
                count,
                of: Some(of),
            } => self.up(entry.on, ingredient, (*count, *of)),
            Happened::Up { of: None, .. }
            | Happened::Weather { .. }
            | Happened::Words(_)
            | Happened::TakenBack(_) => false,
        }
    }

    /// A step was done on a day. True if that is another one than was printed. Without a class the lessons about then are
    /// meant, or, where there is none, all of the step.
    fn done(&mut self, on: Date, (kind, name): (StepKind, &str), class: Option<&str>) -> bool {
        if kind.is_harvest() || on > self.garden.last_day() {
            return false;
        }
        let apart = |day: &Date| (on - *day).num_days().abs();
        let steps = self.printed_of(name);
        let steps = steps.flat_map(|p| &mut p.steps).filter(|s| s.kind == kind);
        // The sowing that is nearest: each has an entry of its own.
        let nearest = steps.filter_map(|step| {
            let near = dates(&step.when, class).iter().map(apart).min()?;
            (near <= APART).then_some((near, step))
        });
        let Some((near, step)) = nearest.min_by_key(|(near, _)| *near) else {
            return false;
        };
        let mut moved = false;
        for day in dates_mut(&mut step.when, class) {
            let meant = class.is_some() || near > NEAR || apart(day) <= NEAR;
            if meant {
                moved |= *day != on;
                *day = on;
            }
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
        let next = sessions
            .into_iter()
            .find(|day| *day >= self.as_of && *day <= self.garden.last_day());
        let as_of = self.as_of;
        let steps = self.printed_of(name);
        let steps = steps.flat_map(|p| &mut p.steps).filter(|s| s.kind == kind);
        let mut days = steps.flat_map(|step| dates_mut(&mut step.when, Some(class)));
        let near = |day: &&mut Date| (on - **day).num_days().abs() <= NEAR && **day < as_of;
        match (days.find(near), next) {
            (Some(day), Some(next)) => {
                *day = next;
                true
            }
            _ => false,
        }
    }

    /// So many of those that were counted are up: of a sowing, the last by then.
    fn up(&mut self, on: Date, name: &str, (count, of): (u32, u32)) -> bool {
        let sown = self
            .stood
            .iter_mut()
            .filter(|s| s.is(name, on) && s.seeds.is_some());
        let Some(last) = sown.max_by_key(|s| s.printed.first()) else {
            return false;
        };
        let up = f64::from(count) / f64::from(of.max(1)) * last.seeds.unwrap_or(1.0);
        let before = last.up;
        // More than are to stand are thinned out.
        last.up = up.min(1.0);
        if last.left() <= NOTHING {
            last.lost_on = Some(on);
        }
        (last.up - before).abs() > NOTHING
    }

    /// A part of what had begun by a day is lost.
    fn lost(&mut self, on: Date, name: &str, share: f64) -> bool {
        let mut any = false;
        for stood in self.stood.iter_mut().filter(|s| s.is(name, on)) {
            stood.lost += share;
            stood.lost_on = Some(on);
            any = true;
        }
        any
    }

    fn printed_of(&mut self, name: &str) -> impl Iterator<Item = &mut Printed> {
        let all = self.stood.iter_mut().map(|stood| &mut stood.printed);
        all.filter(move |printed| printed.ingredient == name)
    }

    /// What is left of every planting, and what is gone.
    pub fn left(self) -> (Vec<Printed>, Vec<Gone>) {
        let (mut printed, mut gone) = (Vec::new(), Vec::new());
        for stood in self.stood {
            let left = stood.left();
            let what = Printed {
                left: Share(left),
                ..stood.printed
            };
            match stood.lost_on.filter(|_| left <= NOTHING) {
                Some(on) => gone.push(Gone { what, on }),
                None => printed.push(what),
            }
        }
        (printed, gone)
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
