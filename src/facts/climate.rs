//! A place's year as its weather record shows it: warmth, frost, rain and light by weeks and months,
//! which weeks suit which crops, and degree-days of the season.

use chrono::Datelike;

use crate::calendar::{Date, plus_days};
use crate::garden::Garden;
use crate::growth::climate::{
    self, Spell, season_months, season_warmth, stretches, year_by_months, year_by_weeks,
};
use crate::growth::season::{STANDSTILL, WORKABLE};
use crate::units::{Celsius, DegreeDays, Hours, Latitude, Millimetres};
use crate::weather::Record;
use crate::weather::cold_days::{ColdDays, FREEZING, HARD_FROST};
use crate::weather::rank::nearest_rank;

/// The limits that tell which weeks suit which crops.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    /// The least soil warmth for warm-season crops.
    pub warm_soil: Celsius,
    /// The least soil warmth for cool-season crops.
    pub workable: Celsius,
    /// Air as cold as this kills young cool-season crops.
    pub too_cold: Celsius,
    /// Days warmer than this at their warmest do not suit cool-season crops.
    pub too_warm: Celsius,
    /// On days shorter than this crops stand still.
    pub standstill: Hours,
}

/// Those that the program holds to.
pub const LIMITS: Limits = Limits {
    warm_soil: climate::WARM_SOIL,
    workable: WORKABLE,
    too_cold: climate::TOO_COLD,
    too_warm: climate::TOO_WARM,
    standstill: STANDSTILL,
};

/// A part of the year, over all years of the record that hold it, and which crops it suits.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What the record holds of it.
    pub spell: Spell,
    /// True if it suits warm-season crops.
    pub warm: bool,
    /// True if it suits cool-season crops.
    pub cool: bool,
    /// True if its days are so short that crops stand still.
    pub dark: bool,
}

impl From<Spell> for Part {
    fn from(spell: Spell) -> Self {
        Self {
            warm: spell.suits_warm_crops(),
            cool: spell.suits_cool_crops(),
            dark: spell.light < STANDSTILL,
            spell,
        }
    }
}

/// Weeks that a picture shows as one.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// The last day of the first of them.
    pub begins: Date,
    /// The mean lowest temperature.
    pub low: Celsius,
    /// The mean highest temperature.
    pub high: Celsius,
    /// The share of the years with a frost in a week, 0 to 1; the mean of the weeks.
    pub frost: f64,
    /// True if all suit warm-season crops.
    pub warm: bool,
    /// True if all suit cool-season crops.
    pub cool: bool,
}

impl Column {
    /// The weeks of a year, so many to a column, at least one; the last column may hold fewer.
    #[must_use]
    pub fn all(weeks: &[Part], together: usize) -> Vec<Self> {
        weeks
            .chunks(together.max(1))
            .filter_map(|weeks| {
                let mean = |value: fn(&Spell) -> f64| {
                    let values = weeks.iter().map(|week| value(&week.spell));
                    values.sum::<f64>() / weeks.len() as f64
                };
                Some(Self {
                    begins: weeks.first()?.spell.last,
                    low: Celsius(mean(|spell| spell.low.0)),
                    high: Celsius(mean(|spell| spell.high.0)),
                    frost: mean(|spell| spell.frost_years as f64 / spell.years.max(1) as f64),
                    warm: weeks.iter().all(|week| week.warm),
                    cool: weeks.iter().all(|week| week.cool),
                })
            })
            .collect()
    }
}

/// Weeks in a row for which something holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stretch {
    /// The first day.
    pub from: Date,
    /// The last day; of the next year, if it is before the first.
    pub to: Date,
    /// How many weeks.
    pub weeks: usize,
}

/// Degree-days of a season.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Warmth {
    /// Counted above this.
    pub base: Celsius,
    /// Of the middle year.
    pub middle: DegreeDays,
    /// One year in ten has fewer.
    pub low: DegreeDays,
    /// One year in ten has more.
    pub high: DegreeDays,
}

/// The year of a place.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// Years that hold every week; none where the record does not hold each week once.
    pub years: usize,
    /// The first and the last calendar year of a measured record.
    pub measured: Option<(i32, i32)>,
    /// The weeks; summer lies in the middle.
    pub weeks: Vec<Part>,
    /// The months; summer lies in the middle.
    pub months: Vec<Part>,
    /// Frosts of 0 C.
    pub frosts: ColdDays,
    /// Frosts that also kill what stands light ones.
    pub hard_frosts: ColdDays,
    /// First and last month of the season of `warmth`, 1 to 12.
    pub season: Option<(u32, u32)>,
}

impl Climate {
    /// The climate of a garden's place.
    #[must_use]
    pub fn of(garden: &Garden) -> Self {
        let (record, place) = (&garden.weather, garden.latitude);
        let parts = |spells: Vec<Spell>| spells.into_iter().map(Part::from).collect();
        let weeks: Vec<Part> = parts(year_by_weeks(record, place));
        let season = season_months(place);
        Self {
            years: weeks.iter().map(|week| week.spell.years).min().unwrap_or(0),
            measured: measured(record).filter(|_| !weeks.is_empty()),
            months: parts(year_by_months(record, place)),
            frosts: ColdDays::frosts(record, place, FREEZING),
            hard_frosts: ColdDays::frosts(record, place, HARD_FROST),
            season: season.first().copied().zip(season.last().copied()),
            weeks,
        }
    }

    /// Rain of a whole year.
    #[must_use]
    pub fn rain(&self) -> Millimetres {
        self.months.iter().map(|month| month.spell.rain).sum()
    }

    /// The stretches of weeks for which something holds. The year is a ring: a stretch may go over
    /// its end.
    #[must_use]
    pub fn stretches(&self, holds: impl Fn(&Part) -> bool) -> Vec<Stretch> {
        let n = self.weeks.len();
        let flags: Vec<bool> = self.weeks.iter().map(holds).collect();
        let stretch = |(first, last): (usize, usize)| {
            Some(Stretch {
                from: self.weeks.get(first)?.spell.first,
                to: self.weeks.get(last)?.spell.last,
                weeks: (last + n - first) % n + 1,
            })
        };
        stretches(&flags).into_iter().filter_map(stretch).collect()
    }
}

/// First and last calendar year of a record; `None` for generated years, whose numbers mean nothing.
fn measured(record: &Record) -> Option<(i32, i32)> {
    let last = plus_days(record.first(), record.days().len() as i64 - 1);
    (!record.is_generated()).then(|| (record.first().year(), last.year()))
}

/// The degree-days of a place's season above a base; `None` if the record holds no season whole.
#[must_use]
pub fn warmth(record: &Record, latitude: Latitude, base: Celsius) -> Option<Warmth> {
    let sums = season_warmth(record, latitude, base);
    let at = |share| nearest_rank(&sums, share);
    Some(Warmth {
        base,
        middle: at(0.5)?,
        low: at(0.1)?,
        high: at(0.9)?,
    })
}
