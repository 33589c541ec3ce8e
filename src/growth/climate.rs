//! What a place offers to crops in the course of the year: warmth, frost and light by weeks and
//! months, the weeks that suit warm-season and cool-season crops, degree-days of the season.

use std::ops::Range;

use chrono::Datelike;

use crate::calendar::{Date, plus_days};
use crate::garden::{DegreeDayMethod, OPEN_GROUND};
use crate::units::{Celsius, DegreeDays, Hours, Latitude, Millimetres};
use crate::weather::cold_days::{FREEZING, HARD_FROST};
use crate::weather::weeks::{Part, months, weeks};
use crate::weather::{Daily, Record, WeatherYear, sun};

use super::degree_days::degree_days;
use super::season::WORKABLE;
use super::soil::soil_temperatures;

/// The least soil warmth for setting out tomatoes and for sowing cucumbers and beans
/// (UGA-SOILT: McLaurin, W. 2000. Soil temperatures: don't rush mother nature. University of
/// Georgia, 18 April 2000: 60 F).
pub const WARM_SOIL: Celsius = Celsius(16.0);

/// Where most days are warmer than this at their warmest, cool-season crops suffer: lettuce
/// turns bitter, peas and spinach stop (common practice: 75 F).
pub const TOO_WARM: Celsius = Celsius(24.0);

/// Air as cold as this kills young peas, beets and lettuce, the middle of the cool-season
/// crops of the catalogue (from memory).
pub const TOO_COLD: Celsius = Celsius(-4.0);

/// A day with so much rain counts as a day with rain (from memory: the usual limit of
/// weather services).
const WET: Millimetres = Millimetres(1.0);

/// A part of the year, over all years of a record that hold it.
#[derive(Debug, Clone, PartialEq)]
pub struct Spell {
    /// Its first day, in a year without leap day.
    pub first: Date,
    /// Its last day.
    pub last: Date,
    /// How many years hold it; none: all means are 0.
    pub years: usize,
    /// Mean of the days' lowest air temperatures.
    pub low: Celsius,
    /// Mean of the days' highest air temperatures.
    pub high: Celsius,
    /// Mean soil temperature in an open bed; see `growth::soil`.
    pub soil: Celsius,
    /// Mean rain of the whole part.
    pub rain: Millimetres,
    /// Mean number of days with a millimetre of rain or more.
    pub wet_days: f64,
    /// Hours of daylight on the middle day.
    pub light: Hours,
    /// Years with a light frost in it.
    pub frost_years: usize,
    /// Years with a hard frost in it.
    pub hard_frost_years: usize,
    /// Years with air of `TOO_COLD` or colder in it.
    pub too_cold_years: usize,
    /// Years in which its soil is on average as warm as `WARM_SOIL`.
    pub warm_soil_years: usize,
    /// Years in which its soil is on average as warm as `growth::season::WORKABLE`.
    pub workable_years: usize,
}

impl Spell {
    /// True if it suits warm-season crops: a frost in at most one year of ten, and soil as warm
    /// as `WARM_SOIL` in more than half of the years.
    #[must_use]
    pub fn suits_warm_crops(&self) -> bool {
        self.years > 0
            && self.frost_years * 10 <= self.years
            && self.warm_soil_years * 2 > self.years
    }

    /// True if it suits cool-season crops: soil that can be worked in more than half of the
    /// years, air of `TOO_COLD` or colder in at most half of them, and days not warmer than
    /// `TOO_WARM` on average (common practice).
    #[must_use]
    pub fn suits_cool_crops(&self) -> bool {
        self.workable_years * 2 > self.years
            && self.too_cold_years * 2 <= self.years
            && self.high <= TOO_WARM
    }
}

/// The weeks of the year; summer lies in the middle.
#[must_use]
pub fn year_by_weeks(record: &Record, latitude: Latitude) -> Vec<Spell> {
    spells(record, latitude, &weeks(record, latitude))
}

/// The months of the year; summer lies in the middle.
#[must_use]
pub fn year_by_months(record: &Record, latitude: Latitude) -> Vec<Spell> {
    spells(record, latitude, &months(record, latitude))
}

fn spells(record: &Record, latitude: Latitude, parts: &[Part]) -> Vec<Spell> {
    let whole = WeatherYear {
        label: record.first().year(),
        lead: &[],
        days: record.days(),
    };
    let soil = soil_temperatures(&whole, OPEN_GROUND);
    parts
        .iter()
        .map(|part| spell(part, record.days(), &soil, latitude))
        .collect()
}

fn spell(part: &Part, days: &[Daily], soil: &[Celsius], latitude: Latitude) -> Spell {
    let runs = &part.runs;
    let in_years = |holds: &dyn Fn(&Range<usize>) -> bool| runs.iter().filter(|r| holds(r)).count();
    let cold_as = |limit| in_years(&|r| days[r.clone()].iter().any(|d| d.tmin <= limit));
    let soil_as = |limit| in_years(&|r| mean(soil[r.clone()].iter().map(|t| t.0)) >= limit);
    let all = || runs.iter().flat_map(|r| &days[r.clone()]);
    let per_year = |sum: f64| sum / runs.len().max(1) as f64;
    let middle = plus_days(part.first, (part.last - part.first).num_days() / 2);
    Spell {
        first: part.first,
        last: part.last,
        years: runs.len(),
        low: Celsius(mean(all().map(|d| d.tmin.0))),
        high: Celsius(mean(all().map(|d| d.tmax.0))),
        soil: Celsius(mean(
            runs.iter().flat_map(|r| &soil[r.clone()]).map(|t| t.0),
        )),
        rain: Millimetres(per_year(all().map(|d| d.rain.0).sum())),
        wet_days: per_year(all().filter(|d| d.rain >= WET).count() as f64),
        light: sun::day_length(latitude, middle.ordinal()),
        frost_years: cold_as(FREEZING),
        hard_frost_years: cold_as(HARD_FROST),
        too_cold_years: cold_as(TOO_COLD),
        warm_soil_years: soil_as(WARM_SOIL.0),
        workable_years: soil_as(WORKABLE.0),
    }
}

/// The mean; 0 of nothing.
fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, n) = values.fold((0.0, 0_u32), |(sum, n), value| (sum + value, n + 1));
    sum / f64::from(n.max(1))
}

/// Runs of neighbouring parts for which something holds, as positions of first and last. The
/// year is a ring: a run may go over its end, and then its first is after its last.
#[must_use]
pub fn stretches(holds: &[bool]) -> Vec<(usize, usize)> {
    let n = holds.len();
    if n > 0 && holds.iter().all(|h| *h) {
        return vec![(0, n - 1)];
    }
    let before = |at: usize| holds[(at + n - 1) % n];
    (0..n)
        .filter(|at| holds[*at] && !before(*at))
        .map(|first| {
            let length = (0..n).take_while(|k| holds[(first + k) % n]).count();
            (first, (first + length - 1) % n)
        })
        .collect()
}

/// Months of the season over which degree-days are summed, from the first one of spring: from
/// April to October in the north, from October to April in the south (from memory: the span
/// in which vine growers sum them, Amerine and Winkler 1944).
pub const SEASON_MONTHS: u32 = 7;

/// Degree-days above `base` of every season that the record holds whole, least first, by the
/// average of the day's extremes, each held at the base (UWEX-GDD; see `growth::degree_days`).
#[must_use]
pub fn season_warmth(record: &Record, latitude: Latitude, base: Celsius) -> Vec<DegreeDays> {
    let in_season = |part: &&Part| season_months(latitude).contains(&part.first.month());
    let parts = months(record, latitude);
    let season: Vec<&Part> = parts.iter().filter(in_season).collect();
    let (Some(first), Some(last)) = (season.first(), season.last()) else {
        return Vec::new();
    };
    let of_day =
        |day: &Daily| degree_days(DegreeDayMethod::Average, base, None, day.tmin, day.tmax);
    let mut sums: Vec<DegreeDays> = first
        .runs
        .iter()
        .filter_map(|from| {
            let to = last.runs.iter().find(|to| to.start > from.start)?;
            // Over a year that is left out the season would end in another year.
            let season = from.start..to.end;
            let is_whole = season.len() < 366 && record.holds(&season);
            is_whole.then(|| record.days()[season].iter().map(of_day).sum())
        })
        .collect();
    sums.sort_by(|a, b| a.0.total_cmp(&b.0));
    sums
}

/// The months of the season, 1 to 12.
#[must_use]
pub fn season_months(latitude: Latitude) -> Vec<u32> {
    let first = if latitude.0 < 0.0 { 10 } else { 4 };
    (0..SEASON_MONTHS)
        .map(|k| (first + k - 1) % 12 + 1)
        .collect()
}
