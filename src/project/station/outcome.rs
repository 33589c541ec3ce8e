//! The days of all files together, and the years of them that stay.

use std::collections::BTreeMap;

use chrono::Datelike;

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Problem, Problems, Source};
use crate::units::Latitude;
use crate::weather::cold_days::{ColdDays, FREEZING};
use crate::weather::{Daily, Record};

use super::super::weather::of_days;
use super::days::{Counts, Day};
use super::element::Element;
use super::intake::called;
use super::one_file::{OneFile, StationFile};
use super::years::{LeftOut, complete, lacking, left_out};

/// A station's record, ready for a project.
#[derive(Debug, Clone)]
pub struct Station {
    /// The files.
    pub files: Vec<StationFile>,
    /// The first and the last day with a value.
    pub span: (Date, Date),
    /// The days for the table, in order: only those with all three values, of years that stay.
    pub days: Vec<(Date, Daily)>,
    /// The same as a project reads them, short gaps filled.
    pub record: Record,
    /// The short gaps, by their first and last day.
    pub gaps: Vec<(Date, Date)>,
    /// The years that are left out.
    pub left_out: Vec<LeftOut>,
    /// Days whose lowest temperature is above the highest, passed over.
    pub upside_down: usize,
    /// Their light frosts, spring being the half-year before the warmest months.
    pub frosts: ColdDays,
}

impl Station {
    /// The calendar years of which the table has days.
    #[must_use]
    pub fn years(&self) -> Vec<i32> {
        let mut years: Vec<i32> = self.days.iter().map(|(date, _)| date.year()).collect();
        years.dedup();
        years
    }

    /// The numbers of all stations, each once.
    #[must_use]
    pub fn ids(&self) -> Vec<&str> {
        let mut ids = Vec::new();
        for (id, _) in self.files.iter().filter_map(|file| file.station.as_ref()) {
            if !ids.contains(&id.as_str()) {
                ids.push(id);
            }
        }
        ids
    }

    /// What was used and passed over of all files: of the lowest, the highest, the rain.
    #[must_use]
    pub fn counts(&self) -> [Counts; 3] {
        let mut sums = [Counts::default(); 3];
        for file in &self.files {
            for (sum, count) in sums.iter_mut().zip(file.counts) {
                sum.values += count.values;
                sum.flagged += count.flagged;
                sum.impossible += count.impossible;
            }
        }
        sums
    }

    /// The days of the years that are left out which lack the lowest, the highest, the rain.
    #[must_use]
    pub fn lacking(&self) -> [usize; 3] {
        let mut sums = [0; 3];
        for year in &self.left_out {
            for (sum, days) in sums.iter_mut().zip(year.lacking) {
                *sum += days;
            }
        }
        sums
    }
}

/// One day in so many may be upside down before the columns are doubted.
const ONE_IN: usize = 100;

/// Puts files together that are sound.
pub fn together(files: Vec<OneFile>) -> Result<Station, Problems> {
    let first = files
        .first()
        .map_or_else(String::new, |file| file.told.name.clone());
    let wrong = |problem: Problem| {
        let mut found = Findings::default();
        found.report(problem);
        let mut problems = Problems::default();
        problems.add(Source::unread(first.clone()), found);
        problems
    };
    let mut days: BTreeMap<Date, Day<f64>> = BTreeMap::new();
    for file in &files {
        for (date, given) in &file.days {
            let day = days.entry(*date).or_default();
            for (place, value) in day.iter_mut().zip(given) {
                match (*place, value) {
                    (Some(a), Some(b)) if (a - b).abs() > 1e-9 => {
                        return Err(wrong(contradicted(*date, &file.told.name)));
                    }
                    (None, value) => *place = *value,
                    _ => {}
                }
            }
        }
    }
    let all = complete(&days);
    let sound = |(_, daily): &(Date, Daily)| daily.tmin <= daily.tmax;
    let (sound, upside_down): (Vec<_>, Vec<_>) = all.into_iter().partition(sound);
    let upside_down = upside_down.len();
    if upside_down * ONE_IN > sound.len() + upside_down {
        return Err(wrong(swapped(upside_down, sound.len() + upside_down)));
    }
    let dates: Vec<Date> = sound.iter().map(|(date, _)| *date).collect();
    let years = left_out(&dates);
    let stays = |(date, _): &(Date, Daily)| !years.contains(&date.year());
    let kept: Vec<(Date, Daily)> = sound.into_iter().filter(stays).collect();
    let ends = days.keys().next().zip(days.keys().next_back());
    let (Some(filled), Some((from, to))) = (of_days(&kept), ends) else {
        return Err(wrong(no_year(&days)));
    };
    Ok(Station {
        files: files.into_iter().map(|file| file.told).collect(),
        span: (*from, *to),
        days: kept,
        frosts: ColdDays::frosts(&filled.record, side(&filled.record), FREEZING),
        record: filled.record,
        gaps: filled.gaps,
        left_out: lacking(&years, &days),
        upside_down,
    })
}

/// So much colder in its summer, in degrees C, a place is not for chance (from memory: on the equator the
/// half-years differ by less).
const CLEARLY: f64 = 1.0;

/// North or south of the equator, as a latitude: where April to September are warmer it is north.
fn side(record: &Record) -> Latitude {
    let mean = |summer: bool| {
        let days = record
            .held()
            .filter(|(date, _)| (4..=9).contains(&date.month()) == summer);
        let (sum, n) = days.fold((0.0, 0_u32), |(sum, n), (_, day)| {
            (sum + day.mean().0, n + 1)
        });
        (n > 0).then(|| sum / f64::from(n))
    };
    match (mean(true), mean(false)) {
        (Some(summer), Some(winter)) if summer + CLEARLY < winter => Latitude(-1.0),
        _ => Latitude(1.0),
    }
}

fn contradicted(date: Date, name: &str) -> Problem {
    let cause = format!("{date} has another value in {name}");
    Problem::new(Code::WeatherDuplicate, cause)
        .remedy("give the files of one station, and each of its values once")
}

fn swapped(upside_down: usize, all: usize) -> Problem {
    let cause =
        format!("on {upside_down} of {all} days the lowest temperature is above the highest");
    Problem::new(Code::WeatherMinOverMax, cause).remedy(
        "are the two columns swapped? Say which is which with `--column low=... --column high=...`",
    )
}

/// The problem of a record of which no year can be used.
fn no_year(days: &BTreeMap<Date, Day<f64>>) -> Problem {
    let count = |element: Element| {
        let has = |day: &&Day<f64>| matches!(day.get(element as usize), Some(Some(_)));
        days.values().filter(has).count()
    };
    let has = Element::ALL.map(|element| format!("the {} on {}", called(element), count(element)));
    let cause = format!(
        "no year has its days: of {} days there are {}",
        days.len(),
        has.join(", ")
    );
    let none = Element::ALL
        .into_iter()
        .find(|element| count(*element) == 0);
    let remedy = match none {
        Some(element) => format!(
            "give the file with the {} as well, or name its column with `--column`; some stations measure \
             rain alone: then ask for one nearby that measures all three",
            called(element)
        ),
        None => "more than five days in a row are missing in every year; ask for a station nearby with a \
                 longer record"
            .to_owned(),
    };
    Problem::new(Code::WeatherTooShort, cause).remedy(remedy)
}
