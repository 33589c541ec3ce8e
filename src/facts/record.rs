//! What a garden's weather record tells before any plan is made: its years and its light frosts.

use chrono::Datelike;

use crate::calendar::Date;
use crate::garden::Garden;
use crate::units::{Celsius, Share};
use crate::weather::Daily;
use crate::weather::cold_days::{ColdDays, FREEZING};

/// The weather years through which a garden's plans are grown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GrownThrough {
    /// How many there are.
    pub years: usize,
    /// The first and the last of them, where a thermometer saw them.
    pub measured: Option<(i32, i32)>,
}

/// The weather years of a garden.
#[must_use]
pub fn grown_through(garden: &Garden) -> GrownThrough {
    let years = garden.weather.years(garden.horizon());
    let ends = years.first().zip(years.last());
    let measured = ends.filter(|_| !garden.weather.is_generated());
    GrownThrough {
        years: years.len(),
        measured: measured.map(|(first, last)| (first.label, last.label)),
    }
}

/// Where the coldest month is warmer on average, and its nights not so warm that it never freezes, made-up
/// years can freeze weeks beside the real dates: 16 to 32 days at places with a coldest month of 8 to 13 C, up to
/// 15 at one with 4, and 11 where it is below freezing (measured; tests/reference/README.md has more of them).
const MILD_WINTER: Celsius = Celsius(0.0);

/// Mean lows of the coldest month from which on nobody asks for frosts (from memory).
const NO_WINTER: Celsius = Celsius(12.0);

/// True if the frosts of a garden's weather years were made from monthly means alone, at a place where these
/// tell little of them: its winter is mild, and the file gives no frost date of one of its two ends.
#[must_use]
pub fn frosts_unchecked(garden: &Garden) -> bool {
    let Some(means) = garden.weather.means() else {
        return false;
    };
    let month = |m: usize| (means.tmin[m] + means.tmax[m]) * 0.5;
    let coldest = (0..12)
        .map(month)
        .fold(Celsius(f64::INFINITY), Celsius::min);
    let nights = means
        .tmin
        .into_iter()
        .fold(Celsius(f64::INFINITY), Celsius::min);
    let dates = means.frosts;
    let known = dates.last.or(dates.late).is_some() && dates.first.or(dates.early).is_some();
    !known && coldest > MILD_WINTER && nights < NO_WINTER
}

/// The light frosts of a garden's place.
#[must_use]
pub fn light_frosts(garden: &Garden) -> ColdDays {
    ColdDays::frosts(&garden.weather, garden.latitude, FREEZING)
}

/// Days before and after a date that count as about it.
const ABOUT: u32 = 7;

/// From so many days on a share of them is told.
const ENOUGH_DAYS: usize = 100;

/// On which share of the days about a date, over all years of the record, something was less than a value; a day that
/// was just so counts half. `None` of a short record.
#[must_use]
pub fn share_below(
    garden: &Garden,
    date: Date,
    value: Celsius,
    of: fn(&Daily) -> Celsius,
) -> Option<Share> {
    let apart = |day: Date| {
        let days = day.ordinal0().abs_diff(date.ordinal0());
        days.min(365_u32.saturating_sub(days))
    };
    let about = garden
        .weather
        .held()
        .filter(|(day, _)| apart(*day) <= ABOUT);
    let (mut below, mut all) = (0.0, 0_usize);
    for (_, day) in about {
        all += 1;
        below += match of(day).0.total_cmp(&value.0) {
            std::cmp::Ordering::Less => 1.0,
            std::cmp::Ordering::Equal => 0.5,
            std::cmp::Ordering::Greater => 0.0,
        };
    }
    (all >= ENOUGH_DAYS).then(|| Share(below / all as f64))
}
