//! What `tureen record` prints: what was read of a station's files, which years stay, and what they say of
//! the frosts.

use std::path::Path;

use crate::harmless;
use crate::page::Page;
use crate::project::station::{Counts, Station};
use crate::words::station::{file, name, spans};
use crate::words::{Words, count, list};

use super::frost;

/// Fewer years are told to be few.
const FEW_YEARS: usize = 10;

/// The page of a record that was read.
#[must_use]
pub fn record(station: &Station, out: &Path, words: Words) -> Page {
    let mut page = Page::new();
    page.title(&format!("The record of {}", name(station)));
    page.paragraph(&format!(
        "{} is written, with {}. To plan with it, write weather = \"{}\" under [place] of the project \
         file beside it.",
        harmless::path(out),
        count(station.days.len(), "day"),
        harmless::path(Path::new(out.file_name().unwrap_or_default())),
    ));
    page.heading("What was read");
    for one in &station.files {
        page.item(&file(one));
    }
    let ids = station.ids();
    if ids.len() > 1 {
        page.item(&format!(
            "Care: these are different stations: {}.",
            list(&ids)
        ));
    }
    values(station, &mut page);
    years(station, words, &mut page);
    page.heading("Frost");
    page.item(&frost::spring(&station.frosts, words));
    page.item(&frost::autumn(&station.frosts, words));
    page
}

/// How many values there are of each kind, and what was passed over.
fn values(station: &Station, page: &mut Page) {
    let names = ["lowest temperature", "highest temperature", "rain"];
    let row = |(name, counts): (&str, Counts)| {
        let counts = [counts.values, counts.flagged, counts.impossible];
        let counts = counts.iter().map(ToString::to_string);
        std::iter::once(name.to_owned()).chain(counts).collect()
    };
    let rows: Vec<Vec<String>> = names.into_iter().zip(station.counts()).map(row).collect();
    let header = [
        "Of each day",
        "Days with it",
        "Marked doubtful, passed over",
        "Cannot be true, passed over",
    ];
    page.table(&header, &rows, &[1, 2, 3]);
    if station.upside_down > 0 {
        page.item(&format!(
            "{} passed over, since the lowest temperature is above the highest.",
            count(station.upside_down, "day")
        ));
    }
    let repeated: usize = station.files.iter().map(|file| file.repeated).sum();
    if repeated > 0 {
        page.item(&format!(
            "{} stood there again, and the same.",
            count(repeated, "value")
        ));
    }
}

/// Which years stay.
fn years(station: &Station, words: Words, page: &mut Page) {
    page.heading("Years");
    let stay = station.years();
    let ends = station.days.first().zip(station.days.last());
    let days = ends.map_or_else(String::new, |((from, _), (to, _))| {
        format!(
            ", from {} to {}",
            words.full_day(*from),
            words.full_day(*to)
        )
    });
    page.item(&format!(
        "{} stay{}: {}{days}.",
        count(stay.len(), "year"),
        if stay.len() == 1 { "s" } else { "" },
        spans(&stay)
    ));
    let left_out: Vec<i32> = station.left_out.iter().map(|year| year.year).collect();
    if !left_out.is_empty() {
        let [low, high, rain] = station.lacking().map(|days| count(days, "day"));
        page.item(&format!(
            "{} left out, since more than five days in a row lack a value: {}. Of their days {low} lack the \
             lowest temperature, {high} the highest, {rain} the rain.",
            match left_out.len() {
                1 => "1 year is".to_owned(),
                n => format!("{n} years are"),
            },
            spans(&left_out)
        ));
    }
    let days = station
        .gaps
        .iter()
        .map(|(from, to)| (*to - *from).num_days() + 1);
    if !station.gaps.is_empty() {
        page.item(&format!(
            "{} of up to five days, {} in all: filled where the table is read; `tureen check` tells which.",
            count(station.gaps.len(), "gap"),
            count(days.sum::<i64>(), "day")
        ));
    }
    if stay.len() < FEW_YEARS {
        page.item(
            "Chances counted on so few years are rough; ten or more are better, thirty are good.",
        );
    }
}
