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

/// Whether dates ask for more than these means can give: of spring, and of autumn.
pub(super) fn strained(monthly: &Monthly) -> [bool; 2] {
    let close = (LIMITS.1 - LIMITS.0) / f64::from(1 << (HALVINGS - 1));
    let at_a_limit =
        |(_, stretch): (f64, f64)| stretch - LIMITS.0 < close || LIMITS.1 - stretch < close;
    edges(monthly).map(|edge| edge.is_some_and(|e| at_a_limit(e.usual) || at_a_limit(e.rare)))
}

/// The fitted seasons, spring and autumn, of which a date is known.
fn edges(monthly: &Monthly) -> [Option<Edge>; 2] {
    let FrostDates {
        last,
        late,
        first,
        early,
    } = monthly.frosts;
    if monthly.frosts == FrostDates::default() {
        return [None, None];
    }
    let lows = Lows::of(monthly);
    let seasons = [Season::of(last, late, 1.0), Season::of(first, early, -1.0)];
    seasons.map(|season| season.map(|season| season.fitted(&lows)))
}

/// The stretch by day of the year: straight lines between a few days, round the year.
pub(super) struct Stretch(Vec<(f64, f64)>);

impl Stretch {
    /// The stretch with which years made from these means freeze on their dates; 1 where there are none.
    pub(super) fn of(monthly: &Monthly) -> Self {
        let [spring, autumn] = edges(monthly);
        // Days from the last dates of spring to the first of autumn: two fades share them.
        let summer = match (spring, autumn) {
            (Some(spring), Some(autumn)) => {
                (autumn.rare.0 - spring.rare.0).rem_euclid(DAYS as f64) / 2.0
            }
            _ => FADES.0,
        };
        let alone = spring.is_some() != autumn.is_some();
        let mut knots = Vec::new();
        for (edge, sign) in [(spring, 1.0), (autumn, -1.0)] {
            let Some(edge) = edge else { continue };
            knots.extend([edge.usual, edge.rare]);
            knots.push((edge.rare.0 + sign * FADES.0.min(summer), 1.0));
            if alone {
                knots.push((edge.usual.0 - sign * FADES.1, 1.0));
            }
        }
        let mut knots: Vec<(f64, f64)> = knots
            .into_iter()
            .map(|(day, stretch)| (day.rem_euclid(DAYS as f64), stretch))
            .collect();
        knots.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self(knots)
    }

    /// The stretch on a date.
    pub(super) fn on(&self, date: Date) -> f64 {
        let (Some(first), Some(last)) = (self.0.first(), self.0.last()) else {
            return 1.0;
        };
        // The day before stands for a leap day.
        let day = date.with_year(2001).map_or(58, |date| date.ordinal0());
        let day = f64::from(day);
        let next = self.0.partition_point(|(knot, _)| *knot <= day);
        let year = DAYS as f64;
        let before = match next.checked_sub(1).and_then(|at| self.0.get(at)) {
            Some(knot) => *knot,
            None => (last.0 - year, last.1),
        };
        let after = self.0.get(next).copied();
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
    /// The dates of half of the years and of one in ten, by day of the year.
    usual: Option<f64>,
    rare: Option<f64>,
    /// The last day of the half-year.
    end: f64,
}

/// A fitted season: the day of the year and the stretch at the dates of half of the years and of one in ten.
#[derive(Clone, Copy)]
struct Edge {
    usual: (f64, f64),
    rare: (f64, f64),
}

impl Season {
    /// `None` where no date is known.
    fn of(usual: Option<Date>, rare: Option<Date>, sign: f64) -> Option<Self> {
        let any = usual.or(rare)?;
        let half = if any.month() <= 6 {
            (0, 180)
        } else {
            (181, 364)
        };
        let end = if sign > 0.0 { half.1 } else { half.0 };
        let day = |date: Date| f64::from(date.ordinal0());
        Some(Self {
            sign,
            usual: usual.map(day),
            rare: rare.map(day),
            end: f64::from(end),
        })
    }

    /// Finds the stretch at both dates: the rare one alone, for only what comes later counts there; then the usual.
    fn fitted(&self, lows: &Lows) -> Edge {
        let (usual, rare) = match (self.usual, self.rare) {
            (Some(usual), Some(rare)) => (usual, rare),
            (Some(usual), None) => (usual, usual + self.sign * USUAL_APART),
            (None, rare) => (rare.unwrap_or(0.0), rare.unwrap_or(0.0)),
        };
        let edge = |a: f64, b: f64| Edge {
            usual: (usual, a),
            rare: (rare, b),
        };
        let share = |edge: Edge, day: f64| self.freezes_after(lows, edge, day);
        match (self.usual, self.rare) {
            (Some(_), Some(_)) => {
                let b = halving(0.1, |b| share(edge(b, b), rare));
                edge(halving(0.5, |a| share(edge(a, b), usual)), b)
            }
            (Some(_), None) => {
                let a = halving(0.5, |a| share(edge(a, a), usual));
                edge(a, a)
            }
            _ => {
                let b = halving(0.1, |b| share(edge(b, b), rare));
                edge(b, b)
            }
        }
    }

    /// The share of the years that freeze on a day nearer to summer than this one.
    fn freezes_after(&self, lows: &Lows, edge: Edge, day: f64) -> f64 {
        let faded = (edge.rare.0 + self.sign * FADES.0, 1.0);
        let days = (self.sign * (self.end - day)).max(0.0) as usize;
        let stretches: Vec<(usize, f64)> = (1..=days)
            .map(|step| {
                let at = day + self.sign * step as f64;
                let towards = |knot: (f64, f64)| (self.sign * knot.0, knot.1);
                let here = self.sign * at;
                let stretch = match here < towards(edge.rare).0 {
                    true => between(towards(edge.usual), towards(edge.rare), here),
                    false => between(towards(edge.rare), towards(faded), here),
                };
                (at as usize, stretch)
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
