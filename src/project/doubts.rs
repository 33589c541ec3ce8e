//! What a valid project says that can hardly be meant: a forgotten minus, degrees Fahrenheit, metres for
//! feet, a thermometer that stood still. It is no error, since the world is larger than our bounds.

use chrono::Datelike;

use crate::calendar::{Date, MONTHS, plus_days};
use crate::garden::{Bed, Doubt};
use crate::units::{Celsius, Latitude};
use crate::weather::monthly::{FrostDates, Monthly};
use crate::weather::{Daily, Origin, Record};

use super::names::quote;

/// A longer bed is doubted, in metres (from memory: beds of schools have 1 to 10).
const LONG_BED: f64 = 15.0;

/// Between the tropics the coldest month tells nothing of the side of the equator.
const TROPIC: f64 = 23.4;

/// A single day so far from an ordinary one of its month is doubted, in degrees C (from memory: the
/// greatest falls of temperature known at one place stay below).
const FAR_OFF: f64 = 40.0;

/// A month's mean so far from what lies between its neighbours is doubted (from memory: not even
/// in the east of Siberia is it 10).
const FAR_OFF_MONTH: f64 = 15.0;

/// So many days in a row with the same lowest and the same highest temperature are doubted. Twenty is
/// the bound for daily records in Durre et al. 2010 (from memory).
const SAME_DAYS: usize = 20;

/// The greatest mean of a year up to a latitude, and by how much it falls with each further degree
/// (from memory: 34 C in Dallol, 31 in Mecca, 25 in Death Valley at 36 degrees, 16 in Nice at 44).
const WARMEST: (f64, f64, f64) = (35.0, 35.0, 0.7);

/// Days of a month that make a mean of it.
const ENOUGH_DAYS: usize = 20;

/// Everything that is doubted.
pub fn doubts(latitude: Latitude, record: &Record, beds: &[Bed]) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    let means = means(record);
    let odd = record
        .origin()
        .map_or_else(Vec::new, |origin| odd_months(&origin.means));
    // A month with a wrong sign is no winter.
    if odd.is_empty() {
        doubts.extend(means.and_then(|means| wrong_side(latitude, &means)));
    }
    doubts.extend(odd);
    doubts.extend(
        record
            .origin()
            .into_iter()
            .flat_map(|origin| odd_frosts(&origin)),
    );
    doubts.extend(means.and_then(|means| too_warm(latitude, &means)));
    if record.origin().is_none() {
        doubts.extend(short(record));
        doubts.extend(odd_days(record));
        doubts.extend(stood_still(record));
    }
    doubts.extend(beds.iter().filter_map(long_bed));
    doubts
}

fn doubt(what: impl Into<String>, why: impl Into<String>) -> Doubt {
    let (what, why) = (what.into(), why.into());
    Doubt { what, why }
}

/// The days of each month, over all years.
fn by_month(record: &Record) -> [Vec<Daily>; 12] {
    let mut months: [Vec<Daily>; 12] = Default::default();
    for (date, day) in record.held() {
        let month = date.month0() as usize;
        if let Some(month) = months.get_mut(month) {
            month.push(*day);
        }
    }
    months
}

/// The mean temperature of each month, if there are enough days of all.
fn means(record: &Record) -> Option<[f64; 12]> {
    let months = by_month(record);
    let enough = months.iter().all(|days| days.len() >= ENOUGH_DAYS);
    enough.then(|| {
        months.map(|days| days.iter().map(|day| day.mean().0).sum::<f64>() / days.len() as f64)
    })
}

/// The coldest month is one of summer: a minus was forgotten, or is one too many.
fn wrong_side(latitude: Latitude, means: &[f64; 12]) -> Option<Doubt> {
    let coldest = (0..12).min_by(|a, b| means[*a].total_cmp(&means[*b]))?;
    let north = latitude.0 > 0.0;
    // May to September, or November to March.
    let summer = match north {
        true => [4, 5, 6, 7, 8],
        false => [10, 11, 0, 1, 2],
    };
    if latitude.0.abs() < TROPIC || !summer.contains(&coldest) {
        return None;
    }
    let (side, other, sign) = match north {
        true => ("north", "south", "with a minus"),
        false => ("south", "north", "without a minus"),
    };
    let why = format!(
        "the coldest month of the weather is {}, which is summer {side} of the equator; {other} of \
         it the latitude is written {sign}: latitude = {}",
        MONTHS[coldest], -latitude.0
    );
    Some(doubt(format!("latitude = {}", latitude.0), why))
}

/// The year is warmer than at any place so far from the equator: degrees Fahrenheit.
fn too_warm(latitude: Latitude, means: &[f64; 12]) -> Option<Doubt> {
    let (greatest, flat_to, fall) = WARMEST;
    let most = greatest - fall * (latitude.0.abs() - flat_to).max(0.0);
    let mean = means.iter().sum::<f64>() / 12.0;
    (mean > most).then(|| {
        let why = format!(
            "no place at latitude {} is so warm; are these degrees Fahrenheit? Celsius is (F - 32) / \
             1.8, so {mean:.0} F are {:.0} C",
            latitude.0,
            (mean - 32.0) / 1.8
        );
        doubt(format!("a mean temperature of {mean:.0} C over the year"), why)
    })
}

/// Months of which a mean does not fit between its neighbours.
fn odd_months(means: &Monthly) -> Vec<Doubt> {
    let lists = [("tmin_c", means.tmin), ("tmax_c", means.tmax)];
    let odd = |(key, list): (&str, [Celsius; 12])| {
        let around = |month: usize| (list[(month + 11) % 12].0, list[(month + 1) % 12].0);
        let off = |month: usize| (list[month].0 - (around(month).0 + around(month).1) / 2.0).abs();
        // One wrong month makes its neighbours look odd too: the one farthest off is meant.
        let month = (0..12).max_by(|a, b| off(*a).total_cmp(&off(*b)))?;
        let (before, after) = around(month);
        (off(month) > FAR_OFF_MONTH).then(|| {
            let why = format!(
                "the months around it have {before} and {after} C; is the sign right, and the place in \
                 the list?"
            );
            doubt(format!("{key}: {} C in {}", list[month].0, MONTHS[month]), why)
        })
    };
    lists.into_iter().filter_map(odd).collect()
}

/// Frost dates that the monthly means cannot give.
fn odd_frosts(origin: &Origin) -> Vec<Doubt> {
    let FrostDates {
        last,
        late,
        first,
        early,
    } = origin.means.frosts;
    let named = [
        last.map(|day| ("last_frost", day))
            .or(late.map(|day| ("late_frost", day))),
        first
            .map(|day| ("first_frost", day))
            .or(early.map(|day| ("early_frost", day))),
    ];
    let odd = named.into_iter().zip(origin.out_of_reach);
    odd.filter_map(|(named, out_of_reach)| named.filter(|_| out_of_reach))
        .map(|(key, day)| {
            let why = "with these monthly means it hardly freezes so, whatever the years; are dates and means of the same \
                       place, and the dates those of 0 C?";
            doubt(format!("{key}: {}", day.format("%-d %B")), why.to_owned())
        })
        .collect()
}

/// Less than a year of days.
fn short(record: &Record) -> Option<Doubt> {
    let days = record.held().count();
    (days < 365).then(|| {
        let why = "not even one whole year: no frost date and no chance can be told from it";
        doubt(format!("a weather record of {days} days"), why)
    })
}

/// The lowest or the highest temperature of a day.
type Extreme = fn(&Daily) -> f64;

/// Days that are far from an ordinary one of their month.
fn odd_days(record: &Record) -> Option<Doubt> {
    let months = by_month(record);
    let median = |month: usize, of: Extreme| -> Option<f64> {
        let mut values: Vec<f64> = months.get(month)?.iter().map(of).collect();
        values.sort_by(f64::total_cmp);
        (values.len() >= ENOUGH_DAYS).then(|| values.get(values.len() / 2).copied())?
    };
    let figures: [(&str, Extreme); 2] =
        [("lowest", |day| day.tmin.0), ("highest", |day| day.tmax.0)];
    let usual: Vec<[Option<f64>; 2]> = (0..12)
        .map(|month| figures.map(|(_, of)| median(month, of)))
        .collect();
    let mut odd = Vec::new();
    for (date, day) in record.held() {
        for ((name, of), usual) in figures.iter().zip(usual[date.month0() as usize]) {
            if let Some(usual) = usual.filter(|usual| (of(day) - usual).abs() > FAR_OFF) {
                odd.push((date, *name, of(day), usual));
            }
        }
    }
    let (date, name, value, usual) = odd.first()?;
    let more = match odd.len() - 1 {
        0 => String::new(),
        more => format!(", and {more} more like it"),
    };
    let why = format!(
        "an ordinary day of that month has {usual} C; is it a wrong sign, or a code for a missing day?"
    );
    Some(doubt(
        format!("{value} C as {name} temperature on {date}{more}"),
        why,
    ))
}

/// The longest run of days with the same extremes.
fn stood_still(record: &Record) -> Option<Doubt> {
    let same = |a: &Daily, b: &Daily| a.tmin == b.tmin && a.tmax == b.tmax;
    // Since when, the weather, and for how many days.
    let mut run: Option<(Date, Daily, usize)> = None;
    let mut longest = run;
    for (date, day) in record.held() {
        run = match run {
            Some((first, before, length))
                if same(&before, day) && date == plus_days(first, length as i64) =>
            {
                Some((first, before, length + 1))
            }
            _ => Some((date, *day, 1)),
        };
        if run.map(|run| run.2) > longest.map(|run| run.2) {
            longest = run;
        }
    }
    let (first, day, length) = longest?;
    (length >= SAME_DAYS).then(|| {
        let what = format!(
            "{length} days from {first} on with {} to {} C",
            day.tmin.0, day.tmax.0
        );
        doubt(
            what,
            "no weather stays the same so long; do they stand for days that are missing?",
        )
    })
}

fn long_bed(bed: &Bed) -> Option<Doubt> {
    (bed.length.0 > LONG_BED).then(|| {
        let what = format!("bed {}: length_m = {}", quote(&bed.id), bed.length.0);
        doubt(what, "longer than nearly any bed; are these metres?")
    })
}
