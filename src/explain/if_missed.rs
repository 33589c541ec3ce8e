//! What a single lesson that falls out loses: the plan is replayed without one class's part of a
//! step, and then with that part made up later, so the checker is the judge.

use crate::calendar::{Date, days_between};
use crate::candidates::family_days;
use crate::checker::Edit;
use crate::garden::ClassAt;
use crate::plan::{Planting, Step, StepAt, StepKind, Visit, When};

use super::bench::{Bench, feeds_as_often};

/// What becomes of the plan if those who do a step on a day, a class or families or an adult,
/// cannot come on that day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IfMissed {
    /// Nothing is lost: the other days of picking bring in as much.
    Nothing,
    /// On this day they can make up for it, all else as planned: every rule holds but that of
    /// rounds, and the ready years are borne.
    MadeUp(Date),
    /// On this day they can make up for a sowing, if they thin it on another day than planned.
    AndThinned(Date),
    /// The other days of picking bring in nearly as much: what is lost is borne.
    Little {
        /// Ready years of the ingredient that are left.
        ready_years: usize,
    },
    /// The rules ask for it no more, and on no later day in time: roots stay small.
    Crowded,
    /// More is lost than is borne, and no later day makes up for it.
    Lost,
}

impl Bench<'_> {
    /// What is lost if those who do a step do not come: class by class, in the order of the plan,
    /// or for all of them at once where it is no session.
    pub fn if_missed(&self, at: StepAt) -> Option<Vec<IfMissed>> {
        let (planting, step) = self.checked.plan().step(at)?;
        match &step.when {
            When::Sessions(visits) => visits
                .iter()
                .enumerate()
                .map(|(n, visit)| {
                    let later = self.later_lessons(visit);
                    let later = later.map(|date| put_off(visits, n, date)).collect();
                    self.one(at, (planting, step), Some(visit), later)
                })
                .collect(),
            When::Families(day) => {
                let later = family_days(self.context.garden).filter(|later| later > day);
                let later = later.map(|d| (d, When::Families(d))).collect();
                Some(vec![self.one(at, (planting, step), None, later)?])
            }
            When::Adult(day) => {
                let choices = self.choices(at.planting, planting, step)?.into_iter();
                let later = choices.filter_map(|when| Some((when.first()?, when)));
                let later = later.filter(|(later, _)| later > day).collect();
                Some(vec![self.one(at, (planting, step), None, later)?])
            }
            When::Daily { .. } => Some(Vec::new()),
        }
    }

    /// The lessons of a class after one of them.
    fn later_lessons(&self, visit: &Visit) -> impl Iterator<Item = Date> {
        let garden = self.context.garden;
        let class = garden.class_named(&visit.class);
        let days = class.map(|class| garden.sessions(class));
        let planned = visit.date;
        days.into_iter().flatten().filter(move |day| *day > planned)
    }

    /// What is lost if one class, or all who do the step, do not come; `later` are the days on which
    /// they could make up for it.
    fn one(
        &self,
        at: StepAt,
        (planting, step): (&Planting, &Step),
        visit: Option<&Visit>,
        later: Vec<(Date, When)>,
    ) -> Option<IfMissed> {
        let lost = match step.kind.is_harvest() {
            true => {
                let missed = self.picks_missed(at, planting, visit);
                let alone = Edit::Missed(missed.iter().copied().filter(|m| m.0 == at).collect());
                let lost = self.replayer.years_lost(at.planting, &alone);
                if lost == 0 {
                    return Some(IfMissed::Nothing);
                }
                Some((lost, Edit::Missed(missed)))
            }
            false => None,
        };
        let saves = |edit: &Edit| {
            let fewer =
                |(lost, _): &(usize, Edit)| self.replayer.years_lost(at.planting, edit) < *lost;
            lost.as_ref().is_none_or(fewer)
        };
        let made_up = later.iter().find(|(_, when)| {
            let edit = Edit::MadeUp(vec![(at, when.clone())]);
            self.borne(&edit).is_some() && saves(&edit)
        });
        if let Some((day, _)) = made_up {
            return Some(IfMissed::MadeUp(*day));
        }
        let thinned = later.iter().find(|(_, when)| {
            let mut edits = self.made_up_with_thinning(at, when, visit).into_iter();
            edits.any(|edit| self.borne(&edit).is_some())
        });
        if let Some((day, _)) = thinned {
            return Some(IfMissed::AndThinned(*day));
        }
        match lost {
            _ if leaves_a_crowd(step.kind) => Some(IfMissed::Crowded),
            Some((_, missed)) => {
                let harvest = self.replayer.harvest(&missed);
                let own = self.context.garden.ingredient_named(&planting.ingredient)?;
                let ready_years = harvest.ingredients.get(own.0)?.ready_years();
                Some(match feeds_as_often(self.checked, &harvest) {
                    true => IfMissed::Little { ready_years },
                    false => IfMissed::Lost,
                })
            }
            None => Some(IfMissed::Lost),
        }
    }

    /// A sowing on other days together with its thinning, by the same class, on each of its other days;
    /// none for what is not thinned.
    fn made_up_with_thinning(&self, at: StepAt, when: &When, visit: Option<&Visit>) -> Vec<Edit> {
        let Some((planting, sowing)) = self.checked.plan().step(at) else {
            return Vec::new();
        };
        let mut steps = planting.steps.iter().enumerate();
        let thinning = steps.find(|(_, s)| s.kind.is_counted_from(sowing.kind));
        let Some((thin, thinning)) = thinning else {
            return Vec::new();
        };
        let of_class = |visits: &[Visit]| {
            let own = visits
                .iter()
                .position(|v| Some(&v.class) == visit.map(|v| &v.class));
            let own = own.and_then(|n| Some((n, visits.get(n)?)));
            own.map_or_else(Vec::new, |(n, planned)| {
                let later = self.later_lessons(planned);
                later.map(|date| put_off(visits, n, date).1).collect()
            })
        };
        let days: Vec<When> = match &thinning.when {
            When::Sessions(visits) => of_class(visits),
            When::Families(day) => {
                let later = family_days(self.context.garden).filter(|later| later > day);
                later.map(When::Families).collect()
            }
            When::Adult(day) => {
                let school = &self.context.garden.school_year;
                let days = days_between(*day, self.context.garden.last_day()).skip(1);
                let at_school = days.filter(|day| school.school_is_in(*day));
                at_school.map(When::Adult).collect()
            }
            When::Daily { .. } => Vec::new(),
        };
        let mut moved = planting.clone();
        if let Some(sowing) = moved.steps.get_mut(at.step) {
            sowing.when = when.clone();
        }
        let at_thin = StepAt { step: thin, ..at };
        let in_time = self.replayer.thinning_days(at.planting, &moved);
        days.into_iter()
            .filter(|day| self.in_time(&in_time, day))
            .map(|day| Edit::MadeUp(vec![(at, when.clone()), (at_thin, day)]))
            .collect()
    }

    /// The picks of an ingredient that fall out with one of them: what the same class, or the same
    /// families, would pick of other sowings on that day.
    fn picks_missed(
        &self,
        at: StepAt,
        planting: &Planting,
        visit: Option<&Visit>,
    ) -> Vec<(StepAt, Option<ClassAt>)> {
        let class = visit.and_then(|v| self.context.garden.class_named(&v.class));
        let own = planting.steps.get(at.step).map(|s| &s.when);
        let falls_out = |step: &Step| match (&step.when, visit) {
            (When::Sessions(visits), Some(visit)) => visits.contains(visit),
            (when, None) => Some(when) == own,
            _ => false,
        };
        let plantings = self.checked.plan().numbered();
        let same = plantings.filter(|(_, p)| p.ingredient == planting.ingredient);
        same.flat_map(|(planting, p)| {
            let steps = p.steps.iter().enumerate();
            let picks = steps.filter(|(_, s)| s.kind.is_harvest() && falls_out(s));
            picks.map(move |(step, _)| (StepAt { planting, step }, class))
        })
        .collect()
    }
}

/// True if a planting without the step stands too close, and that is all.
fn leaves_a_crowd(kind: StepKind) -> bool {
    match kind {
        StepKind::Thin => true,
        StepKind::Sow | StepKind::PotUp | StepKind::Harden | StepKind::PlantOut => false,
        StepKind::Pick | StepKind::Cure => false,
    }
}

/// The visits of a step of which one is on another day.
fn put_off(visits: &[Visit], n: usize, date: Date) -> (Date, When) {
    let mut visits = visits.to_vec();
    if let Some(visit) = visits.get_mut(n) {
        visit.date = date;
    }
    (date, When::Sessions(visits))
}
