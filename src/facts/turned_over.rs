//! Strips that are turned over within the plan: what leaves them, who has time to clear and prepare them, and
//! what comes next.

use std::collections::BTreeMap;

use chrono::{Datelike, Weekday};

use crate::calendar::{Date, days_between};
use crate::garden::{ClassAt, Former, StripAt, Strips};
use crate::plan::{Place, Planting, Stand, StepKind};

use super::Facts;
use super::spans::span_of;

/// What leaves the strips.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Leaves<'a> {
    /// A planting, with its last pick.
    Planting(&'a Planting),
    /// What stood there for no ingredient, on its day.
    Former(&'a Former),
}

/// Strips of a bed that carry one thing after another.
#[derive(Debug, Clone, PartialEq)]
pub struct TurnedOver<'a> {
    /// The strips.
    pub place: Place,
    /// What leaves them.
    pub leaves: Leaves<'a>,
    /// The day on which it leaves.
    pub off: Date,
    /// The last day to clear and prepare them.
    pub until: Date,
    /// A class that then has a lesson with nothing else to do in it, if there is one.
    pub lesson: Option<(ClassAt, Date)>,
    /// What comes next.
    pub comes: &'a Planting,
    /// The day on which it comes.
    pub from: Date,
}

/// What a strip carried before: a stand, by its position, or what stood there for no ingredient.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Before {
    Stand(usize),
    Former(usize),
}

impl<'a> Facts<'a> {
    /// All strips that are turned over, in order of time.
    #[must_use]
    pub fn turned_over(&self) -> Vec<TurnedOver<'a>> {
        let mut all = Vec::new();
        for stand in &self.stands {
            let mut before: BTreeMap<Before, Vec<StripAt>> = BTreeMap::new();
            for strip in stand.strips.iter() {
                if let Some(what) = self.before(stand, strip) {
                    before.entry(what).or_default().push(strip);
                }
            }
            for (what, strips) in before {
                let runs = Strips::runs(strips.into_iter()).into_iter();
                all.extend(runs.filter_map(|run| self.turned(what, stand, run)));
            }
        }
        all.sort_by(|a, b| (a.off, &a.place).cmp(&(b.off, &b.place)));
        all
    }

    /// What a strip of a stand carried last before it.
    fn before(&self, stand: &Stand, strip: StripAt) -> Option<Before> {
        let stands = self.stands.iter().enumerate();
        let earlier = stands.filter(|(_, other)| {
            other.bed == stand.bed && other.strips.has(strip) && other.days.1 < stand.days.0
        });
        let last = earlier.max_by_key(|(_, other)| other.days);
        let mut former = self.garden.former.iter();
        let former = former.position(|f| f.bed == stand.bed && f.strips.has(strip));
        let stood = last.map(|(at, _)| Before::Stand(at));
        stood.or(former.map(Before::Former))
    }

    fn turned(&self, before: Before, stand: &Stand, strips: Strips) -> Option<TurnedOver<'a>> {
        let garden = self.garden;
        let horizon = garden.horizon();
        let comes = self.plan.planting(*stand.plantings.first()?)?;
        let from = horizon.date(stand.days.0);
        let (leaves, off, until) = match before {
            Before::Stand(at) => {
                let gone = &self.stands[at];
                let planting = self.plan.planting(*gone.plantings.first()?)?;
                let (_, off) = span_of(planting, StepKind::Pick)?;
                (Leaves::Planting(planting), off, horizon.date(gone.days.1))
            }
            Before::Former(at) => {
                let former = &garden.former[at];
                let until = former.free_from().pred_opt()?;
                (Leaves::Former(former), former.cleared, until)
            }
        };
        let lesson = match leaves {
            Leaves::Planting(planting) => self.free_lesson(planting, (off, until)),
            Leaves::Former(_) => None,
        };
        Some(TurnedOver {
            place: Place::of(&garden[stand.bed].id, strips),
            leaves,
            off,
            until: weekday_until(off, until),
            lesson,
            comes,
            from,
        })
    }

    /// The first lesson after a day and up to another in which a class that tends a planting has nothing to do.
    fn free_lesson(
        &self,
        planting: &Planting,
        (off, until): (Date, Date),
    ) -> Option<(ClassAt, Date)> {
        let garden = self.garden;
        let tending = garden.tending(self.team_of(planting), until);
        let free = |class: ClassAt| {
            let sessions = garden.sessions(class).into_iter();
            let given = self.given.get(&class);
            let mut open = sessions.filter(|day| off < *day && *day <= until);
            open.find(|day| given.is_none_or(|given| !given.contains_key(day)))
                .map(|day| (class, day))
        };
        garden
            .classes_of(tending)
            .filter_map(free)
            .min_by_key(|(class, day)| (*day, *class))
    }
}

/// The last day from Monday to Friday after a day and up to another; that one where there is none.
fn weekday_until(off: Date, until: Date) -> Date {
    let weekend = [Weekday::Sat, Weekday::Sun];
    let days = days_between(off, until).skip(1);
    let weekdays = days.filter(|day| !weekend.contains(&day.weekday()));
    weekdays.last().unwrap_or(until)
}
