//! The days of made-up weather: rain first, temperatures as anomalies with a memory. A generator of
//! Richardson's kind (Richardson, C.W. 1981, Water Resources Research 17(1):182-190, from memory).

use chrono::Datelike;
use rand::{RngExt, SeedableRng};
use rand_pcg::Pcg64Mcg;

use crate::calendar::Date;
use crate::units::{Celsius, Millimetres};

use super::Daily;
use super::monthly::Monthly;

// The constants of temperature were fitted by hand to six of the records that
// tests/reference/stations.py reads: Champion, Cambridge, Suffolk, North Yorkshire, Tunis and
// Seattle. tests/reference/generator.py shows how near they come, there and on seven others.

/// Spread of one day's temperature around its mean in the coldest month, as a share of the
/// difference between the warmest and the coldest month's mean: the farther from the sea, the
/// more winter days differ.
const WINTER_SPREAD: f64 = 0.22;
/// It is no smaller than this even where months are alike, in C (from memory).
const LEAST_SPREAD: f64 = 1.0;
/// Spread in the warmest month: so much everywhere, in C, and a share of the same difference.
const SUMMER_SPREAD: (f64, f64) = (1.2, 0.065);
/// How much of a day's anomaly is left the next day.
const DAY_MEMORY: f64 = 0.70;
/// A slow anomaly makes seasons and years differ: its memory from day to day, some seven
/// weeks, and its spread in C.
const SEASON_MEMORY: f64 = 0.98;
const SEASON_SPREAD: f64 = 0.9;
/// Spread of each extreme around the day's level, down for one and up for the other, as a
/// share of the month's mean difference between them.
const EXTREME_SPREAD: f64 = 0.16;
/// Days warmer than usual have extremes farther apart, as under a clear sky: the correlation.
const CLEAR_AND_WARM: f64 = 0.25;
/// The least difference between the day's extremes.
const LEAST_RANGE: f64 = 1.0;
/// Rain after a dry day is this much as likely as rain on any day: Geng, S., Penning de
/// Vries, F.W.T. and Supit, I. 1986, Agricultural and Forest Meteorology 36:363-376, from
/// memory.
const WET_AFTER_DRY: f64 = 0.75;
/// The least rain that makes a rain day.
const LEAST_RAIN: f64 = 0.1;

/// Monthly means made ready for daily use.
pub(super) struct Climate {
    tmin: [f64; 12],
    tmax: [f64; 12],
    /// Spread of the day's level.
    spread: [f64; 12],
    /// Spread of each extreme around that level.
    widening: [f64; 12],
    rain: [f64; 12],
    rain_days: [f64; 12],
}

impl Climate {
    /// What the means make of each day of the year.
    pub(super) fn of(monthly: &Monthly) -> Self {
        let mean = |m: usize| (monthly.tmin[m].0 + monthly.tmax[m].0) / 2.0;
        let coldest = (0..12).map(mean).fold(f64::INFINITY, f64::min);
        let warmest = (0..12).map(mean).fold(f64::NEG_INFINITY, f64::max);
        let range = warmest - coldest;
        let winter = (WINTER_SPREAD * range).max(LEAST_SPREAD);
        let summer = SUMMER_SPREAD.0 + SUMMER_SPREAD.1 * range;
        let spread = |m: usize| {
            let warm = (mean(m) - coldest) / range.max(1.0);
            winter + (summer - winter) * warm
        };
        let widening = |m: usize| EXTREME_SPREAD * (monthly.tmax[m].0 - monthly.tmin[m].0);
        Self {
            tmin: knots(monthly.tmin.map(|t| t.0)),
            tmax: knots(monthly.tmax.map(|t| t.0)),
            spread: std::array::from_fn(spread),
            widening: std::array::from_fn(widening),
            rain: monthly.rain.map(|r| r.0),
            rain_days: monthly.rain_days,
        }
    }

    /// The mean lowest temperature of a date.
    pub(super) fn low(&self, position: &Position) -> f64 {
        position.on(&self.tmin)
    }
}

/// Mid-month values such that the straight lines between them keep every month's mean: the
/// lines give month `m` the mean `(k[m-1] + 6 k[m] + k[m+1]) / 8`. The method is that of
/// Sheng, J. and Zwiers, F. 1998, Climate Dynamics 14:609-613, from memory. Each round
/// leaves at most a third of the error.
fn knots(means: [f64; 12]) -> [f64; 12] {
    let mut knots = means;
    for _ in 0..40 {
        let old = knots;
        knots = std::array::from_fn(|m| {
            (8.0 * means[m] - old[(m + 11) % 12] - old[(m + 1) % 12]) / 6.0
        });
    }
    knots
}

/// A day's place on the straight lines between mid-months.
pub(super) struct Position {
    month: usize,
    neighbour: usize,
    /// Weight of the neighbouring month, 0 to a half.
    weight: f64,
    days_in_month: f64,
}

impl Position {
    pub(super) fn of(day: Date) -> Self {
        let month = day.month0() as usize;
        let days_in_month = f64::from(day.num_days_in_month());
        let past_middle = (f64::from(day.day()) - 0.5) / days_in_month - 0.5;
        let neighbour = if past_middle < 0.0 {
            month + 11
        } else {
            month + 1
        };
        Self {
            month,
            neighbour: neighbour % 12,
            weight: past_middle.abs(),
            days_in_month,
        }
    }

    fn on(&self, knots: &[f64; 12]) -> f64 {
        knots[self.month] * (1.0 - self.weight) + knots[self.neighbour] * self.weight
    }
}

/// The state that one day hands to the next.
pub(super) struct Sky {
    rng: Pcg64Mcg,
    /// Anomaly of the day, in spreads.
    day: f64,
    /// Slow anomaly, in spreads.
    season: f64,
    wet: bool,
}

/// What one day has drawn.
pub(super) struct Draw {
    /// How far the day's lowest temperature is from the mean of its date.
    pub(super) low: f64,
    high: f64,
    rain: f64,
}

impl Sky {
    pub(super) fn new(seed: u64) -> Self {
        let mut rng = Pcg64Mcg::seed_from_u64(seed);
        let (day, season) = (normal(&mut rng), normal(&mut rng));
        Self {
            rng,
            day,
            season,
            wet: false,
        }
    }

    /// The next day, as it differs from the means.
    pub(super) fn draw(&mut self, climate: &Climate, position: &Position) -> Draw {
        let rain = self.rain(climate, position);
        self.day = remember(&mut self.rng, self.day, DAY_MEMORY);
        self.season = remember(&mut self.rng, self.season, SEASON_MEMORY);
        let anomaly = position.on(&climate.spread) * self.day + SEASON_SPREAD * self.season;
        let own = (1.0 - CLEAR_AND_WARM * CLEAR_AND_WARM).sqrt() * normal(&mut self.rng);
        let widening = position.on(&climate.widening) * (CLEAR_AND_WARM * self.day + own);
        Draw {
            low: anomaly - widening,
            high: anomaly + widening,
            rain,
        }
    }

    /// The next day; its low is so many times as far from its mean as it was drawn.
    pub(super) fn next_day(&mut self, climate: &Climate, date: Date, stretch: f64) -> Daily {
        let position = Position::of(date);
        let draw = self.draw(climate, &position);
        let tmin = climate.low(&position) + stretch * draw.low;
        let tmax = position.on(&climate.tmax) + draw.high;
        let middle = (tmin + tmax) / 2.0;
        Daily {
            tmin: Celsius(tenths(tmin.min(middle - LEAST_RANGE / 2.0))),
            tmax: Celsius(tenths(tmax.max(middle + LEAST_RANGE / 2.0))),
            rain: Millimetres(tenths(draw.rain)),
        }
    }

    /// A two-state chain of wet and dry days; exponential amounts on wet days.
    fn rain(&mut self, climate: &Climate, position: &Position) -> f64 {
        let rain_days = climate.rain_days[position.month];
        let wet_share = (rain_days / position.days_in_month).clamp(0.0, 1.0);
        let after_dry = WET_AFTER_DRY * wet_share;
        let chance = if self.wet {
            1.0 - WET_AFTER_DRY + after_dry
        } else {
            after_dry
        };
        self.wet = rain_days > 0.0 && self.rng.random::<f64>() < chance;
        if !self.wet {
            return 0.0;
        }
        let mean = climate.rain[position.month] / rain_days;
        let above_least = (mean - LEAST_RAIN).max(0.0);
        LEAST_RAIN - above_least * (1.0 - self.rng.random::<f64>()).ln()
    }
}

/// The next value of a series with spread 1 that keeps `memory` of its last value.
fn remember(rng: &mut Pcg64Mcg, last: f64, memory: f64) -> f64 {
    memory * last + (1.0 - memory * memory).sqrt() * normal(rng)
}

/// A draw with mean 0 and spread 1, near to normal: the sum of twelve even draws less six.
/// It needs additions only and never leaves -6 to 6.
fn normal(rng: &mut Pcg64Mcg) -> f64 {
    (0..12).map(|_| rng.random::<f64>()).sum::<f64>() - 6.0
}

fn tenths(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}
