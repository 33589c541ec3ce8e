//! The monthly means that a generated table tells in its comments: from them further years of the same
//! kind can be made. Comments that tell them otherwise, or not whole, tell nothing.

use crate::calendar::Date;
use crate::project::meant::days_of_year;
use crate::units::{Celsius, Millimetres};
use crate::weather::monthly::{FrostDates, Monthly};

use super::cells::COMMENT;
use super::row::{RAINS, TEMPERATURES};

/// The names of the lines: `# tmin_c: -12, -11.5, ...`, twelve figures, January first.
pub const NAMES: [&str; 4] = ["tmin_c", "tmax_c", "rain_mm", "rain_days"];

/// The names of the lines of frost dates, each only where it is known: `# last_frost: 10 May`.
pub const FROSTS: [&str; 4] = ["last_frost", "late_frost", "first_frost", "early_frost"];

/// The means that the comments before the table tell; `None` if they do not.
pub fn means(text: &str) -> Option<Monthly> {
    let comments: Vec<&str> = text
        .lines()
        .map_while(|line| line.strip_prefix(COMMENT))
        .collect();
    let figures = |name: &str| -> Option<[f64; 12]> {
        let mut told = comments.iter().filter_map(|line| line.split_once(':'));
        let (_, figures) = told.find(|(of, _)| of.trim() == name)?;
        let figures: Result<Vec<f64>, _> = figures.split(',').map(|f| f.trim().parse()).collect();
        figures.ok()?.try_into().ok()
    };
    let [tmin, tmax, rain, rain_days] = NAMES.map(figures);
    let (tmin, tmax, rain, rain_days) = (tmin?, tmax?, rain?, rain_days?);
    // A day, none, or what is no day.
    let day = |name: &str| -> Option<Option<Date>> {
        let mut told = comments.iter().filter_map(|line| line.split_once(':'));
        let Some((_, day)) = told.find(|(of, _)| of.trim() == name) else {
            return Some(None);
        };
        match days_of_year(day).as_slice() {
            [day] => Some(Some(*day)),
            _ => None,
        }
    };
    let [last, late, first, early] = FROSTS.map(day);
    let frosts = FrostDates {
        last: last?,
        late: late?,
        first: first?,
        early: early?,
    };
    let in_order = tmin.iter().zip(&tmax).all(|(low, high)| low <= high);
    let can_be = in_order
        && tmin.iter().chain(&tmax).all(|t| TEMPERATURES.contains(t))
        && rain
            .iter()
            .all(|mm| (0.0..=31.0 * RAINS.end()).contains(mm))
        && rain_days.iter().all(|days| (0.0..=31.0).contains(days));
    can_be.then(|| Monthly {
        tmin: tmin.map(Celsius),
        tmax: tmax.map(Celsius),
        rain: rain.map(Millimetres),
        rain_days,
        frosts,
    })
}
