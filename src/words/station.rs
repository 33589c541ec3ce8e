//! What is said of a weather station's files: their kinds, their units, the station, spans of years.

use crate::project::station::{Kind, RainUnit, Station, StationFile, TemperatureUnit};

use super::list;

/// Spans of years that are named; further ones are counted.
const MOST_SPANS: usize = 12;

/// The station's name, or what the files call it.
#[must_use]
pub fn name(station: &Station) -> String {
    let told = station.files.iter().find_map(|file| file.station.as_ref());
    match told {
        Some((_, Some(name))) => name.clone(),
        Some((id, None)) => format!("station {id}"),
        None => {
            let names: Vec<&String> = station.files.iter().map(|file| &file.name).collect();
            list(&names)
        }
    }
}

/// What a file is, and in which units it was read.
#[must_use]
pub fn file(file: &StationFile) -> String {
    let kind = match file.kind {
        Kind::Fixed => "months of fixed width, as GHCN-Daily has them",
        Kind::Long => "a line for each value, as GHCN-Daily has them",
        Kind::Ecad => "a series of ECA&D",
        Kind::Other => "a table with a line for each day",
    };
    let [low, high, rain] = file.counts.map(|count| count.values > 0);
    let temperature = file.units.temperature.filter(|_| low || high).map(degrees);
    let rain = file.units.rain.filter(|_| rain).map(depth);
    let units: Vec<&str> = temperature.into_iter().chain(rain).collect();
    let guessed = file.guessed_by.map_or_else(String::new, |hottest| {
        format!(
            "; nothing says so but its greatest temperature, {hottest}: if that is wrong, say it with \
             --temperature and --rain"
        )
    });
    let units = match units.as_slice() {
        [] => "with nothing that is used".to_owned(),
        units => format!("in {}", list(units)),
    };
    format!("{}: {kind}, {units}{guessed}.", file.name)
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

/// `1998 to 2005, 2007 and 2009`, of years in order.
#[must_use]
pub fn spans(years: &[i32]) -> String {
    let span = |run: &[i32]| match run {
        [] => None,
        [one] => Some(one.to_string()),
        [first, .., last] => Some(format!("{first} to {last}")),
    };
    let runs = years.chunk_by(|a, b| a + 1 == *b);
    let spans: Vec<String> = runs.filter_map(span).collect();
    match spans.split_at_checked(MOST_SPANS) {
        Some((shown, more)) if !more.is_empty() => {
            format!("{} and {} spans more", shown.join(", "), more.len())
        }
        _ => list(&spans),
    }
}
