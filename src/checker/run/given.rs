//! What is given of a season that is under way: which planting of a plan goes on with which printed one, and what
//! it moves of the dates that were printed. Read from the names and days of the plan alone.

use std::collections::{BTreeMap, BTreeSet};

use crate::calendar::Date;
use crate::garden::{Printed, Season, Turn, Turns};
use crate::plan::{Place, StepKind};

use crate::checker::planting::{Planting, Step, Visit, When};

use super::Run;

/// Who comes on which day.
type Days = BTreeSet<(Turn, Date)>;

/// Dates that move, and by how many days together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Moved {
    pub dates: usize,
    pub days: usize,
}

/// The printed planting that has begun and of which this one has every step that has begun, its grade, its way of
/// growing and its strips.
pub fn given<'a>(run: &Run<'a>, planting: &Planting<'a>) -> Option<&'a Printed> {
    let season = run.garden.season.as_ref()?;
    let of = |printed: &&Printed| {
        printed.begun(season.as_of) && is_the_same(run, season.as_of, planting, printed)
    };
    season.printed.iter().find(of)
}

fn is_the_same(run: &Run<'_>, as_of: Date, planting: &Planting<'_>, printed: &Printed) -> bool {
    let places: BTreeSet<Place> = planting.plan.places.iter().cloned().collect();
    let of = printed.places.iter();
    let stood = of.map(|(bed, strips)| Place::of(&run.garden[*bed].id, *strips));
    printed.ingredient == planting.at
        && printed.team == planting.team
        && printed.method == planting.plan.method
        && printed.on_mat == planting.plan.on_mat
        && places == stood.collect()
        && dated().all(|kind| {
            let done = printed_steps(printed, kind).into_iter();
            let done: BTreeSet<Days> = done
                .filter(|turns| turns.begun(as_of))
                .map(|turns| turns.0.iter().copied().collect())
                .collect();
            let own = planting.steps.iter().filter(|s| s.plan.kind == kind);
            let own: BTreeSet<Days> = own
                .filter(|step| run.has_begun(step))
                .map(|step| days(run, step))
                .collect();
            done == own
        })
}

/// The kinds of steps of which days are printed; the others go with them.
fn dated() -> impl Iterator<Item = StepKind> {
    StepKind::ALL.iter().copied().filter(|kind| !kind.is_span())
}

fn printed_steps(printed: &Printed, kind: StepKind) -> Vec<&Turns> {
    match kind {
        StepKind::Sow => printed.sow.iter().collect(),
        StepKind::PotUp => printed.pot_up.iter().collect(),
        StepKind::PlantOut => printed.plant_out.iter().collect(),
        StepKind::Thin => printed.thin.iter().collect(),
        StepKind::Pick => printed.picks.iter().collect(),
        StepKind::Harden | StepKind::Cure => Vec::new(),
    }
}

fn days(run: &Run<'_>, step: &Step<'_>) -> Days {
    match &step.when {
        When::Sessions(visits) => {
            let visit = |v: &Visit| (Turn::Class(v.class), run.horizon.date(v.day));
            visits.iter().map(visit).collect()
        }
        When::Families(day) => BTreeSet::from([(Turn::Families, run.horizon.date(*day))]),
        When::Adult(day) => BTreeSet::from([(Turn::Adult, run.horizon.date(*day))]),
        When::Daily => BTreeSet::new(),
    }
}

impl Run<'_> {
    /// True if a step was begun before the day as of which is planned: it is given.
    pub fn has_begun(&self, step: &Step<'_>) -> bool {
        self.horizon.date(step.first) < self.garden.as_of()
    }

    /// What the plan moves of the dates that were printed.
    pub fn moved(&self) -> Moved {
        let Some(season) = &self.garden.season else {
            return Moved::default();
        };
        let each = self.plantings.iter().map(|planting| {
            let own = |printed: &Printed| self.moved_from(season, planting, printed);
            match planting.given {
                Some(printed) => own(printed),
                None => {
                    let of = season
                        .printed
                        .iter()
                        .filter(|p| p.ingredient == planting.at);
                    let waiting = of.filter(|printed| !printed.begun(season.as_of));
                    waiting.map(own).min().unwrap_or_default()
                }
            }
        });
        each.fold(Moved::default(), |sum, one| Moved {
            dates: sum.dates + one.dates,
            days: sum.days + one.days,
        })
    }

    fn moved_from(&self, season: &Season, planting: &Planting<'_>, printed: &Printed) -> Moved {
        let mut moved = Moved::default();
        for kind in dated() {
            let open = printed_steps(printed, kind).into_iter();
            let open = open.filter(|turns| !turns.begun(season.as_of));
            let old: Days = open.flat_map(|turns| turns.0.iter().copied()).collect();
            let own = planting.steps.iter().filter(|s| s.plan.kind == kind);
            let own = own.filter(|step| !self.has_begun(step));
            let new: Days = own.flat_map(|step| days(self, step)).collect();
            let mut turns: BTreeMap<Turn, (Vec<Date>, Vec<Date>)> = BTreeMap::new();
            for (turn, day) in old.difference(&new) {
                turns.entry(*turn).or_default().0.push(*day);
            }
            for (turn, day) in new.difference(&old) {
                turns.entry(*turn).or_default().1.push(*day);
            }
            for (was, is) in turns.into_values() {
                moved.dates += was.len().max(is.len());
                let apart = was.iter().zip(&is).map(|(a, b)| (*b - *a).num_days().abs());
                moved.days += usize::try_from(apart.sum::<i64>()).unwrap_or(usize::MAX);
            }
        }
        moved
    }
}
