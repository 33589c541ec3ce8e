//! Warmth, rain and daylight by months, and the degree-days of the season.

use crate::calendar::Date;
use crate::facts::climate::{Climate, warmth};
use crate::garden::Garden;
use crate::units::{Celsius, rounded};

use crate::page::Page;
use crate::words::Words;

/// Base temperatures of the degree-days, and what they are used for: 50 F, and 40 F.
const BASES: [(Celsius, &str); 2] = [
    (Celsius(10.0), "warm-season crops such as bean and maize"),
    (Celsius(4.4), "cool-season crops such as pea and lettuce"),
];

/// Writes both.
pub(super) fn write(garden: &Garden, climate: &Climate, words: Words, page: &mut Page) {
    page.heading("Warmth, rain and light");
    let rows: Vec<Vec<String>> = climate
        .months
        .iter()
        .map(|month| {
            vec![
                words.month(month.spell.first),
                degrees(month.spell.low),
                degrees(month.spell.high),
                degrees(month.spell.soil),
                words.rain(month.spell.rain),
                format!("{:.0}", month.spell.wet_days),
                format!("{:.1}\u{a0}h", month.spell.light.0),
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
    page.line(&format!(
        "Means over the years; {} of rain in a whole year. Rain days have {} or more. \
         Daylight is from sunrise to sunset in the middle of the month.",
        words.rain_of_a_year(climate.rain()),
        words.rain_day()
    ));
    degree_days(garden, climate, words, page);
}

fn degree_days(garden: &Garden, climate: &Climate, words: Words, page: &mut Page) {
    let (record, latitude) = (&garden.weather, garden.latitude);
    let texts: Vec<String> = BASES
        .iter()
        .filter_map(|(base, crops)| {
            let warmth = warmth(record, latitude, *base)?;
            Some(format!(
                "Above {} C, as for {crops}: {:.0} in the middle year, fewer than {:.0} in 1 year of \
                 10, more than {:.0} in 1 of 10.",
                base.0, warmth.middle.0, warmth.low.0, warmth.high.0
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
        season(climate, words)
    ));
    for text in texts {
        page.item(&text);
    }
}

/// `from April to October`.
fn season(climate: &Climate, words: Words) -> String {
    let name = |month: u32| {
        let day = Date::from_ymd_opt(2001, month, 1);
        day.map_or_else(String::new, |day| words.month(day))
    };
    let season = climate.season;
    season.map_or_else(String::new, |(first, last)| {
        format!("from {} to {}", name(first), name(last))
    })
}

/// `-3.4 C`.
fn degrees(t: Celsius) -> String {
    format!("{}\u{a0}C", rounded(t.0, 1))
}
