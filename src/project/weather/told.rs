//! The monthly means that a generated table tells in its comments: from them further years of the same
//! kind can be made. Comments that tell them otherwise, or not whole, tell nothing.

use crate::units::{Celsius, Millimetres};
use crate::weather::monthly::Monthly;

use super::cells::COMMENT;
use super::row::{RAINS, TEMPERATURES};

/// The names of the lines: `# tmin_c: -12, -11.5, ...`, twelve figures, January first.
pub const NAMES: [&str; 4] = ["tmin_c", "tmax_c", "rain_mm", "rain_days"];

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
    })
}
