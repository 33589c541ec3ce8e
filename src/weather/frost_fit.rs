//! How much farther from their mean lows are drawn, so that made-up years freeze on the dates of the town's
//! own table. Two places with the same monthly means can have their last frosts weeks apart: nights in a
//! hollow differ more than by the sea. So the means stay, and the spread of the lows follows the dates.

use chrono::Datelike;

use crate::calendar::Date;

use super::monthly::{FrostDates, Monthly};
use super::sky::{Climate, Position, Sky};

/// So many years are drawn to fit on. The share of them that freeze once more is then within 2.5 of a hundred
/// of the true one (its standard error at a half): about a day of a frost date.
const YEARS: usize = 400;

/// Their seed; no file can have it.
const SEED: u64 = 1 << 33;

const DAYS: usize = 365;

/// The least and the greatest stretch. Dates that ask for more do not belong to these means.
const LIMITS: (f64, f64) = (0.4, 2.5);

/// Steps of halving between them: to a thousandth.
const HALVINGS: u32 = 12;

/// Days beyond the dates after which lows are spread as usual again, towards summer and, if nothing is known
/// of the other side of the winter, towards winter.
const FADES: (f64, f64) = (60.0, 90.0);

/// Days between the two dates where only that of half of the years is known.
const USUAL_APART: f64 = 15.0;

/// A low that a gauge reads as 0 C or less.
const FROZEN: f64 = 0.05;

/// The stretch by day of the year: straight lines between a few days, round the year.
pub(super) struct Stretch {
    knots: Vec<(f64, f64)>,
    /// Whether the dates ask for more than the means can give, of spring and of autumn: then they are hardly those of
    /// one place, and the years freeze on other days.
    pub(super) out_of_reach: [bool; 2],
}

impl Stretch {
    /// The stretch with which years made from these means freeze on their dates; 1 where there are none.
    pub(super) fn of(monthly: &Monthly) -> Self {
        let FrostDates {
            last,
            late,
            first,
            early,
        } = monthly.frosts;
        let seasons = [Season::of(last, late, 1.0), Season::of(first, early, -1.0)];
        if seasons.iter().all(Option::is_none) {
            return Self {
                knots: Vec::new(),
                out_of_reach: [false; 2],
            };
        }
        // Two fades share the days from the last dates of spring to the first of autumn.
        let fade = match &seasons {
            [Some(spring), Some(autumn)] => {
                let summer = (autumn.rare - spring.rare).rem_euclid(DAYS as f64);
                FADES.0.min(summer / 2.0)
            }
            _ => FADES.0,
        };
        let lows = Lows::of(monthly);
        let edges = seasons.map(|season| season.map(|season| season.fitted(&lows, fade)));
        let alone = edges.iter().flatten().count() == 1;
        let mut knots = Vec::new();
        for edge in edges.iter().flatten() {
            knots.extend([edge.usual, edge.rare, edge.faded]);
            if alone {
                knots.push((edge.usual.0 - edge.sign * FADES.1, 1.0));
            }
        }
        for (day, _) in &mut knots {
            *day = day.rem_euclid(DAYS as f64);
        }
        knots.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self {
            knots,
            out_of_reach: edges.map(|edge| edge.is_some_and(|edge| edge.is_at_a_limit())),
        }
    }

    /// The stretch on a date.
    pub(super) fn on(&self, date: Date) -> f64 {
        let (Some(first), Some(last)) = (self.knots.first(), self.knots.last()) else {
            return 1.0;
        };
        // The day before stands for a leap day.
        let day = date.with_year(2001).map_or(58, |date| date.ordinal0());
        let day = f64::from(day);
        let next = self.knots.partition_point(|(knot, _)| *knot <= day);
        let year = DAYS as f64;
        let before = match next.checked_sub(1).and_then(|at| self.knots.get(at)) {
            Some(knot) => *knot,
            None => (last.0 - year, last.1),
        };
        let after = self.knots.get(next).copied();
        between(before, after.unwrap_or((first.0 + year, first.1)), day)
    }
}

/// The value on the line through two points.
fn between(before: (f64, f64), after: (f64, f64), at: f64) -> f64 {
    let way = ((at - before.0) / (after.0 - before.0).max(1.0)).clamp(0.0, 1.0);
    before.1 * (1.0 - way) + after.1 * way
}

/// Where winter ends, or begins: days are counted towards summer, so in autumn backwards.
struct Season {
    /// 1 in spring, -1 in autumn.
    sign: f64,
    /// The days of the year that are known: that of half of the years, and that of one in ten.
    known: [bool; 2],
    /// These days, as far as they are not known from the other.
    usual: f64,
    rare: f64,
    /// The last day of the half-year.
    end: f64,
}

/// A fitted season: days of the year with their stretch.
#[derive(Clone, Copy)]
struct Edge {
    sign: f64,
    /// The date of half of the years.
    usual: (f64, f64),
    /// That of one in ten.
    rare: (f64, f64),
    /// From here on, towards summer, lows are spread as usual.
    faded: (f64, f64),
}

impl Edge {
    fn is_at_a_limit(&self) -> bool {
        let close = (LIMITS.1 - LIMITS.0) / f64::from(1 << (HALVINGS - 1));
        let stretches = [self.usual.1, self.rare.1];
        let mut ends = stretches
            .iter()
            .flat_map(|at| [at - LIMITS.0, LIMITS.1 - at]);
        ends.any(|way| way < close)
    }

    /// The stretch on a day that is no nearer to winter than the date of half of the years.
    fn on(&self, day: f64) -> f64 {
        let towards_summer = |knot: (f64, f64)| (self.sign * knot.0, knot.1);
        let [usual, rare, faded] = [self.usual, self.rare, self.faded].map(towards_summer);
        let day = self.sign * day;
        match day < rare.0 {
            true => between(usual, rare, day),
            false => between(rare, faded, day),
        }
    }
}

impl Season {
    /// `None` where no date is known.
    fn of(usual: Option<Date>, rare: Option<Date>, sign: f64) -> Option<Self> {
        let half = if usual.or(rare)?.month() <= 6 {
            (0, 180)
        } else {
            (181, 364)
        };
        let day = |date: Date| f64::from(date.ordinal0());
        let known = [usual.is_some(), rare.is_some()];
        let rare = rare.map(day);
        let usual = usual.map(day).or(rare)?;
        Some(Self {
            sign,
            known,
            usual,
            rare: rare.unwrap_or(usual + sign * USUAL_APART),
            end: f64::from(if sign > 0.0 { half.1 } else { half.0 }),
        })
    }

    /// Finds the stretch at both dates: the rare one alone, for only what comes later counts there; then the usual.
    fn fitted(&self, lows: &Lows, fade: f64) -> Edge {
        let edge = |a: f64, b: f64| Edge {
            sign: self.sign,
            usual: (self.usual, a),
            rare: (self.rare, b),
            faded: (self.rare + self.sign * fade, 1.0),
        };
        let share = |edge: Edge, day: f64| self.freezes_after(lows, edge, day);
        let at_rare = || halving(0.1, |b| share(edge(b, b), self.rare));
        match self.known {
            [true, true] => {
                let b = at_rare();
                edge(halving(0.5, |a| share(edge(a, b), self.usual)), b)
            }
            [true, false] => {
                let a = halving(0.5, |a| share(edge(a, a), self.usual));
                edge(a, a)
            }
            [false, _] => {
                let b = at_rare();
                edge(b, b)
            }
        }
    }

    /// The share of the years that freeze on a day nearer to summer than this one.
    fn freezes_after(&self, lows: &Lows, edge: Edge, day: f64) -> f64 {
        let days = (self.sign * (self.end - day)).max(0.0) as usize;
        let stretches: Vec<(usize, f64)> = (1..=days)
            .map(|step| {
                let at = day + self.sign * step as f64;
                (at as usize, edge.on(at))
            })
            .collect();
        let frozen = (0..YEARS).filter(|year| {
            stretches
                .iter()
                .any(|(at, stretch)| lows.low(*year, *at, *stretch) < FROZEN)
        });
        frozen.count() as f64 / YEARS as f64
    }
}

/// Where a share that grows with the stretch reaches this one; else the nearer limit.
fn halving(wanted: f64, share: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = LIMITS;
    for _ in 0..HALVINGS {
        let middle = (low + high) / 2.0;
        if share(middle) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low + high) / 2.0
}

/// The lows of drawn years: the mean of each day, and how far from it each year's was drawn.
struct Lows {
    means: Vec<f64>,
    away: Vec<f64>,
}

impl Lows {
    fn of(monthly: &Monthly) -> Self {
        let climate = Climate::of(monthly);
        let first = Date::from_ymd_opt(2001, 1, 1).unwrap_or_default();
        let positions: Vec<Position> = first.iter_days().take(DAYS).map(Position::of).collect();
        let mut sky = Sky::new(SEED);
        Self {
            means: positions.iter().map(|day| climate.low(day)).collect(),
            away: (0..YEARS)
                .flat_map(|_| &positions)
                .map(|day| sky.draw(&climate, day).low)
                .collect(),
        }
    }

    fn low(&self, year: usize, day: usize, stretch: f64) -> f64 {
        let mean = self.means.get(day).copied().unwrap_or(f64::INFINITY);
        let away = self.away.get(year * DAYS + day).copied();
        mean + stretch * away.unwrap_or(0.0)
    }
}
