//! What `tureen record` prints: what was read of a station's files, which years stay, and what they say of
//! the frosts.

use std::path::Path;

use chrono::Datelike;

use crate::harmless;
use crate::page::Page;
use crate::project::station::{Kind, RainUnit, Station, StationFile, TemperatureUnit};
use crate::words::{Words, count, list};

use super::frost;

/// Spans of years that are named; further ones are counted.
const MOST_SPANS: usize = 12;

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
    for file in &station.files {
        page.item(&read(file));
    }
    let stations = stations(station);
    if stations.len() > 1 {
        page.item(&format!(
            "Care: these are different stations: {}.",
            list(&stations)
        ));
    }
    values(station, &mut page);
    years(station, words, &mut page);
    page.heading("Frost");
    page.item(&frost::spring(&station.frosts, words));
    page.item(&frost::autumn(&station.frosts, words));
    page
}

/// The station's name, or what the file calls it.
fn name(station: &Station) -> String {
    let told = station.files.iter().find_map(|file| file.station.as_ref());
    match told {
        Some((_, Some(name))) => name.clone(),
        Some((id, None)) => format!("station {id}"),
        None => list(
            &station
                .files
                .iter()
                .map(|file| &file.name)
                .collect::<Vec<_>>(),
        ),
    }
}

/// The numbers of all stations, each once.
fn stations(station: &Station) -> Vec<String> {
    let mut ids: Vec<String> = Vec::new();
    for (id, _) in station
        .files
        .iter()
        .filter_map(|file| file.station.as_ref())
    {
        if !ids.contains(id) {
            ids.push(id.clone());
        }
    }
    ids
}

/// What a file is.
fn read(file: &StationFile) -> String {
    let kind = match file.kind {
        Kind::Fixed => "months of fixed width, as GHCN-Daily has them",
        Kind::Long => "a line for each value, as GHCN-Daily has them",
        Kind::Ecad => "a series of ECA&D",
        Kind::Other => "a table with a line for each day",
    };
    let has = |elements: &[usize]| {
        let values = elements.iter().filter_map(|at| file.counts.get(*at));
        values.map(|count| count.values).sum::<usize>() > 0
    };
    let temperature = file.units.temperature.filter(|_| has(&[0, 1]));
    let rain = file.units.rain.filter(|_| has(&[2]));
    let units: Vec<&str> = temperature
        .map(degrees)
        .into_iter()
        .chain(rain.map(depth))
        .collect();
    let guessed = file.guessed_by.map_or_else(String::new, |hottest| {
        format!(
            "; nothing says so but its greatest temperature, {hottest}: if that is wrong, say it with \
             --temperature and --rain"
        )
    });
    let units = match units.is_empty() {
        true => "nothing that is used".to_owned(),
        false => list(&units),
    };
    format!("{}: {kind}, in {units}{guessed}.", file.name)
}

fn degrees(unit: TemperatureUnit) -> &'static str {
    match unit {
        TemperatureUnit::Celsius => "degrees Celsius",
        TemperatureUnit::Fahrenheit => "degrees Fahrenheit",
        TemperatureUnit::TenthsOfCelsius => "tenths of a degree Celsius",
    }
}

fn depth(unit: RainUnit) -> &'static str {
    match unit {
        RainUnit::Millimetres => "millimetres",
        RainUnit::Inches => "inches",
        RainUnit::TenthsOfMillimetre => "tenths of a millimetre",
    }
}

/// How many values there are of each kind, and what was passed over.
fn values(station: &Station, page: &mut Page) {
    let names = ["lowest temperature", "highest temperature", "rain"];
    let rows: Vec<Vec<String>> = names
        .iter()
        .enumerate()
        .map(|(at, name)| {
            let counts = || station.files.iter().filter_map(|file| file.counts.get(at));
            vec![
                (*name).to_owned(),
                counts().map(|c| c.values).sum::<usize>().to_string(),
                counts().map(|c| c.flagged).sum::<usize>().to_string(),
                counts().map(|c| c.impossible).sum::<usize>().to_string(),
            ]
        })
        .collect();
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
            "{} twice, and the same both times.",
            count(repeated, "value")
        ));
    }
}

/// Which years stay.
fn years(station: &Station, words: Words, page: &mut Page) {
    page.heading("Years");
    let mut stay: Vec<i32> = station.days.iter().map(|(date, _)| date.year()).collect();
    stay.dedup();
    page.item(&format!(
        "{}: {}. {}",
        match stay.len() {
            1 => "1 year stays".to_owned(),
            n => format!("{n} years stay"),
        },
        spans(&stay),
        ends(station, words)
    ));
    if !station.left_out.is_empty() {
        let years: Vec<i32> = station.left_out.iter().map(|year| year.year).collect();
        let lacking = |at: usize| {
            let days = station
                .left_out
                .iter()
                .filter_map(|year| year.lacking.get(at));
            count(days.sum::<usize>(), "day")
        };
        page.item(&format!(
            "{} left out, since more than five days in a row lack a value: {}. Of these years' days {} lack \
             the lowest temperature, {} the highest, {} the rain.",
            match years.len() {
                1 => "1 year is".to_owned(),
                n => format!("{n} years are"),
            },
            spans(&years),
            lacking(0),
            lacking(1),
            lacking(2)
        ));
    }
    if !station.gaps.is_empty() {
        let days = station
            .gaps
            .iter()
            .map(|(from, to)| (*to - *from).num_days() + 1);
        page.item(&format!(
            "{} of up to five days, {} in all: they are filled where the table is read, and `tureen check` tells which.",
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

/// Fewer years are told to be few.
const FEW_YEARS: usize = 10;

/// The first and the last day, where they are within a year.
fn ends(station: &Station, words: Words) -> String {
    let ends = station.days.first().zip(station.days.last());
    ends.map_or_else(String::new, |((first, _), (last, _))| {
        format!(
            "The days run from {} to {}.",
            words.full_day(*first),
            words.full_day(*last)
        )
    })
}

/// `1998 to 2005, 2007 and 2009`.
fn spans(years: &[i32]) -> String {
    let spans: Vec<String> = years
        .chunk_by(|a, b| a + 1 == *b)
        .filter_map(|run| {
            let (first, last) = (run.first()?, run.last()?);
            Some(match first == last {
                true => first.to_string(),
                false => format!("{first} to {last}"),
            })
        })
        .collect();
    let shown = spans.get(..MOST_SPANS.min(spans.len())).unwrap_or_default();
    match spans.len() - shown.len() {
        0 => list(shown),
        more => format!("{} and {more} spans more", shown.join(", ")),
    }
}
