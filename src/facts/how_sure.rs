//! What the numbers of ready years leave out: weak light in autumn, and whether the climate is still
//! that of the record.

use chrono::Datelike;

use crate::calendar::Date;
use crate::plan::{Planting, StepKind};
use crate::units::Hours;
use crate::weather::WeatherYear;
use crate::weather::cold_days::{ColdDays, FREEZING};
use crate::weather::sun::day_length;
use crate::weather::trend::trend;

use super::Facts;
use super::spans::span_of;

/// A record that ends so many years before the feast is called old.
const OLD_YEARS: i32 = 10;

/// Day and night are equal.
const EQUINOX: Hours = Hours(12.0);

/// Where the weather years come from, and what they cannot tell.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Years {
    /// Generated from monthly means.
    Generated {
        /// True if it freezes in fewer than half of the springs.
        mild: bool,
    },
    /// A record.
    Measured {
        /// Its first year.
        first: i32,
        /// Its last year.
        last: i32,
        /// How many years before the plan it ends, if that is long ago.
        old: Option<i32>,
        /// The certain change of warmth in ten years, in C; `None` if none is certain.
        change: Option<f64>,
        /// With a certain change: what the plan does in the later years, which tell more.
        later: Option<Later>,
    },
    /// None covers the plan.
    None,
}

/// So many of the last years are looked at alone where the climate changes, if so many stand before them.
const LATER_YEARS: usize = 15;
const EARLIER_YEARS: usize = 5;

/// In how many of its last years a plan is ready, and in how many of those before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Later {
    /// The first of the last years.
    pub from: i32,
    /// Years in which the whole dish is ready, and all, of the last ones.
    pub later: (usize, usize),
    /// Of those before.
    pub earlier: (usize, usize),
}

impl Facts<'_> {
    /// The ingredients that ripen in the weakening light of autumn, which degree-days do not know,
    /// each once.
    #[must_use]
    pub fn in_autumn_light(&self) -> Vec<&str> {
        let mut names: Vec<&str> = Vec::new();
        for planting in self.plan.plantings.iter().filter(|p| self.weak_light(p)) {
            if !names.contains(&planting.ingredient.as_str()) {
                names.push(&planting.ingredient);
            }
        }
        names
    }

    /// True if it is set out after midsummer and picked after day and night are equal.
    fn weak_light(&self, planting: &Planting) -> bool {
        let light = |day: Date| day_length(self.garden.latitude, day.ordinal());
        let plants = span_of(planting, StepKind::PlantOut);
        let out = plants.or_else(|| span_of(planting, StepKind::Sow));
        let both = out.zip(span_of(planting, StepKind::Pick));
        both.is_some_and(|((from, _), (_, to))| {
            let next = from.succ_opt().unwrap_or(from);
            light(next) < light(from) && light(to) < EQUINOX
        })
    }

    /// Where the weather years come from.
    #[must_use]
    pub fn weather_years(&self) -> Years {
        let weather = &self.garden.weather;
        if weather.is_generated() {
            let frosts = ColdDays::frosts(weather, self.garden.latitude, FREEZING);
            let (frosty, all) = frosts.springs();
            return Years::Generated {
                mild: 2 * frosty < all,
            };
        }
        let horizon = self.garden.horizon();
        let years = weather.years(horizon);
        let (Some(first), Some(last)) = (years.first(), years.last()) else {
            return Years::None;
        };
        let age = horizon.first().year() - last.label;
        let means: Vec<f64> = years.iter().map(mean).collect();
        // Years between them may be left out of the record.
        let steps = (years.len() - 1) as f64 / f64::from((last.label - first.label).max(1));
        let change = trend(&means).map(|per_step| per_step * steps * 10.0);
        Years::Measured {
            later: change.and_then(|_| self.later()),
            first: first.label,
            last: last.label,
            old: (age >= OLD_YEARS).then_some(age),
            change,
        }
    }

    /// What the plan does in the last years of its record; `None` of a short one.
    fn later(&self) -> Option<Later> {
        let before = self.replay.years.len().checked_sub(LATER_YEARS)?;
        let (earlier, later) = self.replay.dish_ready.split_at_checked(before)?;
        let ready = |years: &[bool]| (years.iter().filter(|ready| **ready).count(), years.len());
        (before >= EARLIER_YEARS).then_some(Later {
            from: *self.replay.years.get(before)?,
            later: ready(later),
            earlier: ready(earlier),
        })
    }
}

/// Mean temperature of the plan's span.
fn mean(year: &WeatherYear<'_>) -> f64 {
    let sum: f64 = year.days.iter().map(|day| day.mean().0).sum();
    sum / year.days.len().max(1) as f64
}
