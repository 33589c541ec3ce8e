//! Warmth, rain and daylight by months, and the degree-days of the season.

use crate::growth::climate::{season_months, season_warmth, year_by_months};
use crate::units::{Celsius, Latitude, Millimetres, rounded};
use crate::weather::Record;
use crate::weather::rank::nearest_rank;

use super::super::page::Page;
use super::super::words::Words;

/// Base temperatures of the degree-days, and what they are used for: 50 F, and 40 F.
const BASES: [(Celsius, &str); 2] = [
    (Celsius(10.0), "warm-season crops such as bean and maize"),
    (Celsius(4.4), "cool-season crops such as pea and lettuce"),
];

/// Writes both.
pub(super) fn write(record: &Record, latitude: Latitude, words: Words, page: &mut Page) {
    page.heading("Warmth, rain and light");
    let months = year_by_months(record, latitude);
    let rows: Vec<Vec<String>> = months
        .iter()
        .map(|month| {
            vec![
                words.month(month.first),
                degrees(month.low),
                degrees(month.high),
                degrees(month.soil),
                words.rain(month.rain),
                format!("{:.0}", month.wet_days),
                format!("{:.1}\u{a0}h", month.light.0),
            ]
        })
        .collect();
    let header = [
        "Month",
        "Lowest",
        "Highest",
        "Soil",
        "Rain",
        "Rain days",
        "Daylight",
    ];
    page.table(&header, &rows, &[1, 2, 3, 4, 5, 6]);
    page.gap();
    let rain: Millimetres = months.iter().map(|m| m.rain).sum();
    page.line(&format!(
        "Means over the years; {} of rain in a whole year. Rain days have {} or more. \
         Daylight is from sunrise to sunset in the middle of the month.",
        words.rain_of_a_year(rain),
        words.rain_day()
    ));
    degree_days(record, latitude, words, page);
}

fn degree_days(record: &Record, latitude: Latitude, words: Words, page: &mut Page) {
    let sums = BASES.map(|(base, crops)| (base, crops, season_warmth(record, latitude, base)));
    let texts: Vec<String> = sums
        .iter()
        .filter_map(|(base, crops, sums)| {
            let at = |share| nearest_rank(sums, share).map(|sum| format!("{:.0}", sum.0));
            Some(format!(
                "Above {} C, as for {crops}: {} in the middle year, fewer than {} in 1 year of \
                 10, more than {} in 1 of 10.",
                base.0,
                at(0.5)?,
                at(0.1)?,
                at(0.9)?
            ))
        })
        .collect();
    if texts.is_empty() {
        return;
    }
    page.gap();
    page.line(&format!(
        "Degree-days (C) {}: every day counts by as much as the mean of its lowest and highest \
         temperature, each held at the base if below, lies above the base.",
        season(latitude, words)
    ));
    for text in texts {
        page.item(&text);
    }
}

/// `from April to October`.
fn season(latitude: Latitude, words: Words) -> String {
    let months = season_months(latitude);
    let name = |month: Option<&u32>| {
        month
            .and_then(|m| crate::calendar::Date::from_ymd_opt(2001, *m, 1))
            .map_or_else(String::new, |day| words.month(day))
    };
    format!("from {} to {}", name(months.first()), name(months.last()))
}

/// `-3.4 C`.
fn degrees(t: Celsius) -> String {
    format!("{}\u{a0}C", rounded(t.0, 1))
}
