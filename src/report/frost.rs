//! The frosts of a record in plain words: when the last of spring and the first of autumn
//! fell, north or south of the equator.

use chrono::{Datelike, Months};

use crate::calendar::{Date, days_between};
use crate::units::{Celsius, Latitude};
use crate::weather::Record;

/// Air at or below this is frost.
const FREEZING: Celsius = Celsius(0.0);

/// The frosts of many years; days are counted from the first day of their half-year.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frosts {
    /// Last frosts of the half-years that warm up, earliest first.
    last: Vec<i64>,
    /// First frosts of the half-years that cool down, earliest first.
    first: Vec<i64>,
    /// Half-years of each kind that the record holds whole.
    halves: (usize, usize),
    south: bool,
}

impl Frosts {
    /// The frosts of a record. The year is warming from January to June in the north, from
    /// July to December in the south.
    #[must_use]
    pub fn of(record: &Record, latitude: Latitude) -> Self {
        let south = latitude.0 < 0.0;
        let mut frosts = Self {
            last: Vec::new(),
            first: Vec::new(),
            halves: (0, 0),
            south,
        };
        let end = record.first().year() + i32::try_from(record.days().len() / 365).unwrap_or(0);
        for year in record.first().year()..=end {
            for (month, warming) in [(1, !south), (7, south)] {
                frosts.add_half(record, year, month, warming);
            }
        }
        frosts.last.sort_unstable();
        frosts.first.sort_unstable();
        frosts
    }

    /// Adds the half-year that begins in a month, if the record holds all of it.
    fn add_half(&mut self, record: &Record, year: i32, month: u32, warming: bool) {
        let Some((from, to)) = half_year(year, month) else {
            return;
        };
        let Ok(start) = usize::try_from((from - record.first()).num_days()) else {
            return;
        };
        let length = days_between(from, to).count();
        let Some(days) = record.days().get(start..start + length) else {
            return;
        };
        let frost = |d: &crate::weather::Daily| d.tmin <= FREEZING;
        if warming {
            self.halves.0 += 1;
            self.last
                .extend(days.iter().rposition(frost).map(|n| n as i64));
        } else {
            self.halves.1 += 1;
            self.first
                .extend(days.iter().position(frost).map(|n| n as i64));
        }
    }

    /// The last frosts in a sentence: half of the years, and one year in ten.
    #[must_use]
    pub fn spring(&self) -> String {
        let month = if self.south { 7 } else { 1 };
        if self.last.is_empty() {
            return "No frost in any spring of the record.".to_owned();
        }
        format!(
            "Last frost: after {} in half of the years, after {} in one year of ten; {} of {} \
             springs had frost.",
            day_name(quantile(&self.last, 0.5), month),
            day_name(quantile(&self.last, 0.9), month),
            self.last.len(),
            self.halves.0
        )
    }

    /// The first frosts in a sentence.
    #[must_use]
    pub fn autumn(&self) -> String {
        let month = if self.south { 1 } else { 7 };
        if self.first.is_empty() {
            return "No frost in any autumn of the record.".to_owned();
        }
        format!(
            "First frost: before {} in half of the years, before {} in one year of ten; {} of {} \
             autumns had frost.",
            day_name(quantile(&self.first, 0.5), month),
            day_name(quantile(&self.first, 0.1), month),
            self.first.len(),
            self.halves.1
        )
    }
}

fn half_year(year: i32, month: u32) -> Option<(Date, Date)> {
    let from = Date::from_ymd_opt(year, month, 1)?;
    let to = from.checked_add_months(Months::new(6))?.pred_opt()?;
    Some((from, to))
}

/// The value that a share of the sorted values does not pass: the nearest rank, rounded to
/// the middle of the list.
fn quantile(sorted: &[i64], share: f64) -> i64 {
    let last = sorted.len().saturating_sub(1);
    let at = (share * last as f64).round() as usize;
    sorted.get(at.min(last)).copied().unwrap_or(0)
}

/// `6 May`: a day of a half-year in a year without leap day.
fn day_name(day: i64, month: u32) -> String {
    Date::from_ymd_opt(2001, month, 1).map_or_else(String::new, |first| {
        crate::calendar::plus_days(first, day)
            .format("%-d %B")
            .to_string()
    })
}
