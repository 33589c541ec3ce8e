//! How a plan does: in how many weather years the dish is ready, how far that is proved best, and
//! what fails in the others.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::checker::{ENOUGH_YEARS, LEAST_YEARS, Standing, Unseen};
use crate::garden::IngredientAt;
use crate::growth::Unready;
use crate::plan::{Aim, AimResult};

use super::Facts;
use super::interval::further_years_95;

/// How far the number of ready years is proved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Proof {
    /// The plan says nothing of it.
    Unknown,
    /// Neither these years nor what is aimed at before them; `most` years are possible, where more
    /// may be.
    NotProved {
        /// No plan has more.
        most: Option<usize>,
    },
    /// What is aimed at before them, but not these years.
    Open {
        /// No plan has more.
        most: usize,
    },
    /// No plan has more.
    Best,
    /// Some years were given up for what is aimed at later.
    GivenUp {
        /// So many are possible.
        possible: usize,
        /// So many were given up.
        given: usize,
    },
}

/// On which years it was counted how often something is ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountedOn {
    /// Those that the plan was made for.
    Own,
    /// Years made anew of the same means, in which the plan itself was grown.
    Fresh,
    /// Those of the record, each with a plan that was made the same way without it.
    InTurn,
}

/// How much can be said of further years.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sayable {
    /// Nothing: there are too few years.
    Nothing,
    /// Little: there are few.
    Little,
    /// How many to expect.
    Range,
}

/// Why a plan was not counted on years that it was not made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotCounted {
    /// It has too few years.
    TooFewYears,
    /// Its years are made up, of means that are not known.
    NoMeans,
    /// The time did not last.
    NoTime,
    /// It was not made so: it was edited, or the project has changed.
    NotOfThisPlan,
    /// It was not counted when it was made, or its file does not tell.
    NotSaid,
}

/// In how many of some years something is ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Readiness {
    /// In so many.
    pub ready: usize,
    /// Of so many.
    pub years: usize,
    /// On which.
    pub on: CountedOn,
}

impl Readiness {
    /// Of a hundred years, rounded; all and none only where it is so.
    #[must_use]
    pub fn of_hundred(self) -> usize {
        let rounded = (self.ready * 100 + self.years / 2) / self.years.max(1);
        match self.ready {
            0 => 0,
            all if all >= self.years => 100,
            _ => rounded.clamp(1, 99),
        }
    }
}

/// The ready years of the whole dish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Verdict {
    /// What is promised: counted on years that the plan was not chosen on, where there are such.
    pub promised: Readiness,
    /// In so many of its own years it is ready.
    pub ready: usize,
    /// Of so many.
    pub years: usize,
    /// Of as many further years, the fewest and the most to expect it in, if that can be said.
    pub expected: Option<(usize, usize)>,
    /// How far that is proved.
    pub proof: Proof,
    /// True if that was proved when the plan was made, not now.
    pub proved_before: bool,
}

/// The dish on the rain date.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OnRainDate {
    /// The day.
    pub day: Date,
    /// In how many years it is ready, of the same as the dish on its day.
    pub promised: Readiness,
    /// The ingredient and the reason that fail most often.
    pub weakest: Option<(IngredientAt, Unready)>,
    /// True if something keeps bearing, so that it is picked once more.
    pub picked_again: bool,
}

/// An ingredient that fails in some years.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WeakPoint {
    /// Which.
    pub ingredient: IngredientAt,
    /// In so many years it fails.
    pub failed: usize,
    /// Why, with the years.
    pub reasons: Vec<(Unready, Vec<i32>)>,
}

impl Facts<'_> {
    /// The ready years of the whole dish.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        let (ready, years) = (self.replay.whole_dish_years(), self.years());
        let promised = self.promised();
        Verdict {
            promised,
            ready,
            years,
            expected: self.expected(promised),
            proof: proof(&self.plan.aims, ready, years),
            proved_before: *self.standing() == Standing::Saved,
        }
    }

    /// How often the whole dish is ready: the number that leads on every screen, page and file.
    #[must_use]
    pub fn promised(&self) -> Readiness {
        let own = (self.replay.whole_dish_years(), self.years());
        self.counted(self.unseen().map(|seen| seen.dish), own)
    }

    /// The same of an ingredient.
    #[must_use]
    pub fn promised_of(&self, at: IngredientAt) -> Readiness {
        let seen = self.replay.ingredients.get(at.0);
        let own = (seen.map_or(0, |seen| seen.ready_years()), self.years());
        let unseen = self.unseen();
        self.counted(unseen.and_then(|u| u.ingredients.get(at.0).copied()), own)
    }

    /// What was counted on unseen years, or else on the plan's own, given with their number.
    fn counted(&self, unseen: Option<usize>, (ready, years): (usize, usize)) -> Readiness {
        match unseen.zip(self.unseen()) {
            Some((ready, unseen)) => Readiness {
                ready,
                years: unseen.years,
                on: counted_on(unseen),
            },
            None => Readiness {
                ready,
                years,
                on: CountedOn::Own,
            },
        }
    }

    /// Of as many further years as the plan has, the fewest and the most in which to expect something.
    #[must_use]
    pub fn expected(&self, promised: Readiness) -> Option<(usize, usize)> {
        let range = further_years_95(promised.ready, promised.years, self.years());
        (self.sayable() != Sayable::Nothing).then_some(range)
    }

    /// How much can be said of further years. Fresh years are always enough.
    #[must_use]
    pub fn sayable(&self) -> Sayable {
        match self.promised() {
            Readiness {
                on: CountedOn::Fresh,
                ..
            } => Sayable::Range,
            Readiness { years, .. } if years < LEAST_YEARS => Sayable::Nothing,
            Readiness { years, .. } if years < ENOUGH_YEARS => Sayable::Little,
            Readiness { .. } => Sayable::Range,
        }
    }

    /// Why the plan was not counted on years that it was not made for; `None` if it was.
    #[must_use]
    pub fn not_counted(&self) -> Option<NotCounted> {
        let why = || match self.standing() {
            _ if self.garden.weather.is_generated() => NotCounted::NoMeans,
            _ if self.years() < LEAST_YEARS => NotCounted::TooFewYears,
            Standing::Planned => NotCounted::NoTime,
            Standing::Saved => NotCounted::NotSaid,
            Standing::Edited | Standing::Changed(_) => NotCounted::NotOfThisPlan,
        };
        self.unseen().is_none().then(why)
    }

    /// The dish on the rain date, if there is one.
    #[must_use]
    pub fn on_rain_date(&self) -> Option<OnRainDate> {
        let ready = self.replay.dish_ready_on_rain_date.as_ref()?;
        let mut all = self.ingredients();
        Some(OnRainDate {
            day: self.garden.feast.rain_date?,
            promised: self.counted(
                self.unseen().and_then(|u| u.rain_date),
                (ready.iter().filter(|ready| **ready).count(), ready.len()),
            ),
            weakest: self.weakest_on_rain_date(),
            picked_again: all.any(|(_, i, _)| i.crop.picking.keeps_bearing),
        })
    }

    fn weakest_on_rain_date(&self) -> Option<(IngredientAt, Unready)> {
        let mut failures: BTreeMap<(IngredientAt, Unready), u32> = BTreeMap::new();
        for (at, _, seen) in self.ingredients() {
            let reasons = seen.ready_on_rain_date.iter().flatten();
            for why in reasons.filter_map(|ready| ready.err()) {
                *failures.entry((at, why)).or_default() += 1;
            }
        }
        let all = failures.into_iter();
        all.max_by_key(|(key, n)| (*n, Reverse(*key))).map(|f| f.0)
    }

    /// The ingredients that fail in some years.
    #[must_use]
    pub fn weak_points(&self) -> Vec<WeakPoint> {
        let mut points = Vec::new();
        for (ingredient, _, seen) in self.ingredients() {
            let mut reasons: BTreeMap<Unready, Vec<i32>> = BTreeMap::new();
            for (year, outcome) in self.replay.years.iter().zip(&seen.ready) {
                if let Err(why) = outcome {
                    reasons.entry(*why).or_default().push(*year);
                }
            }
            if !reasons.is_empty() {
                points.push(WeakPoint {
                    ingredient,
                    failed: self.years() - seen.ready_years(),
                    reasons: reasons.into_iter().collect(),
                });
            }
        }
        points
    }

    /// The ingredients that are ready in the fewest years, with that number; `None` where all are
    /// ready in every year.
    #[must_use]
    pub fn held_back_by(&self) -> Option<(Vec<&str>, Readiness)> {
        let ready = || {
            self.ingredients()
                .map(|(at, i, _)| (i, self.promised_of(at)))
        };
        let (_, fewest) = ready().min_by_key(|(_, promised)| promised.ready)?;
        let of_fewest = ready().filter(|(_, promised)| promised.ready == fewest.ready);
        let names = of_fewest.map(|(i, _)| i.name.as_str()).collect();
        (fewest.ready < fewest.years).then_some((names, fewest))
    }
}

fn counted_on(unseen: &Unseen) -> CountedOn {
    match unseen.fresh {
        true => CountedOn::Fresh,
        false => CountedOn::InTurn,
    }
}

/// What a plan that was read says of its aims was proved when it was made; one that was edited, or
/// whose project has changed, says nothing of them.
fn proof(aims: &[AimResult], ready: usize, years: usize) -> Proof {
    let Some(at) = aims.iter().position(|a| a.aim == Aim::WholeDish) else {
        return Proof::Unknown;
    };
    let (before, rest) = aims.split_at(at);
    let Some(whole) = rest.first() else {
        return Proof::Unknown;
    };
    let best = whole.value.round().max(0.0) as usize;
    // Where its worst ingredient allows no more, the dish is at its best whatever its own bound.
    let most = most_years(aims, years).unwrap_or(years).max(ready);
    if !before.iter().all(AimResult::proved) {
        Proof::NotProved {
            most: (most > ready).then_some(most),
        }
    } else if !whole.proved() && most > ready {
        Proof::Open { most }
    } else if ready >= best {
        Proof::Best
    } else {
        Proof::GivenUp {
            possible: best,
            given: best - ready,
        }
    }
}

/// No plan has the whole dish ready in more years than this; `None` if nothing is known. The
/// dish is ready in no more years than its worst ingredient; what was found for the dish itself
/// holds only beside the best of the aims before it.
#[must_use]
pub fn most_years(aims: &[AimResult], years: usize) -> Option<usize> {
    let of = |aim: Aim| aims.iter().position(|a| a.aim == aim);
    let bound = |at: usize| {
        let bound = aims.get(at).map(|a| (a.bound + 1e-6).floor().max(0.0));
        bound.map(|bound| (bound as usize).min(years))
    };
    let worst = of(Aim::WorstIngredient).and_then(bound);
    let dish = of(Aim::WholeDish).filter(|at| aims.iter().take(*at).all(AimResult::proved));
    let dish = dish.and_then(bound);
    worst.into_iter().chain(dish).min()
}

/// The most years of the whole dish that may be possible beyond what was reached for it; `None` if
/// it is known that there are none. What was reached and given back is no longer open.
#[must_use]
pub fn open_years(aims: &[AimResult], years: usize) -> Option<usize> {
    let most = most_years(aims, years)?;
    let dish = aims.iter().find(|a| a.aim == Aim::WholeDish)?;
    (most as f64 > dish.value + 0.5).then_some(most)
}

/// The bound of an aim, rounded to what a whole number can reach where it counts whole things.
#[must_use]
pub fn reachable(result: &AimResult) -> f64 {
    match (result.aim.is_whole(), result.aim.more_is_better()) {
        (false, _) => result.bound,
        (true, true) => (result.bound + 1e-6).floor(),
        (true, false) => (result.bound - 1e-6).ceil(),
    }
}

/// True if what was reached for all aims about years is proved best.
#[must_use]
pub fn years_are_proved(aims: &[AimResult]) -> bool {
    let about_years = |a: &&AimResult| {
        matches!(
            a.aim,
            Aim::WorstIngredient | Aim::AllIngredients | Aim::WholeDish
        )
    };
    aims.iter().filter(about_years).all(AimResult::proved)
}
