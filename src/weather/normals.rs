//! Monthly means of weather stations over the world, and the ones nearest to a place. Sources and limits:
//! `normals.csv`, `normals.md`.

use crate::units::{Celsius, Latitude, Metres, Millimetres};

const TABLE: &str = include_str!("normals.csv");

/// Who published them, in short.
pub const SOURCE: &str = "World Meteorological Organization, normals of 1991-2020, and Deutscher Wetterdienst (CC BY 4.0)";

/// Lines that begin so are remarks.
const REMARK: char = '#';

/// Cells before the figures: id, name, country, latitude, longitude, height, source, years.
const BEFORE: usize = 8;

/// The mean radius of the earth (IUGG), in metres.
const EARTH: f64 = 6_371_008.8;

/// Degrees to the east; negative to the west.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Longitude(pub f64);

/// A station with its means.
#[derive(Debug, Clone, PartialEq)]
pub struct Normals {
    /// Its name.
    pub name: &'static str,
    /// The country whose weather service it belongs to.
    pub country: &'static str,
    /// Degrees to the north.
    pub latitude: Latitude,
    /// Degrees to the east.
    pub longitude: Longitude,
    /// Above the sea.
    pub height: Metres,
    /// Of so many years, at the least.
    pub years: u32,
    /// Mean daily lowest temperature, January first.
    pub low: [Celsius; 12],
    /// Mean daily highest temperature.
    pub high: [Celsius; 12],
    /// Rain of the month.
    pub rain: [Millimetres; 12],
    /// Days with a millimetre of rain or more, where they are published.
    pub rain_days: Option<[f64; 12]>,
}

/// All stations, in the order of the table. A line that cannot be read is passed over; a test finds none.
#[must_use]
pub fn all() -> Vec<Normals> {
    let lines = TABLE.lines().filter(|line| !line.starts_with(REMARK));
    lines.skip(1).filter_map(station).collect()
}

/// The stations nearest to a place, the nearest first, each with its distance.
#[must_use]
pub fn nearest(latitude: Latitude, longitude: Longitude, count: usize) -> Vec<(Metres, Normals)> {
    let mut far: Vec<(Metres, Normals)> = all()
        .into_iter()
        .map(|station| {
            let there = (station.latitude, station.longitude);
            (distance((latitude, longitude), there), station)
        })
        .collect();
    far.sort_by(|a, b| a.0.0.total_cmp(&b.0.0));
    far.truncate(count);
    far
}

/// The way along the earth from place to place (haversine formula, on a sphere).
#[must_use]
pub fn distance(from: (Latitude, Longitude), to: (Latitude, Longitude)) -> Metres {
    let (north, east) = (from.0.0.to_radians(), from.1.0.to_radians());
    let (to_north, to_east) = (to.0.0.to_radians(), to.1.0.to_radians());
    let half = |angle: f64| (angle / 2.0).sin().powi(2);
    let across = half(to_north - north) + north.cos() * to_north.cos() * half(to_east - east);
    Metres(2.0 * EARTH * across.clamp(0.0, 1.0).sqrt().asin())
}

fn station(line: &'static str) -> Option<Normals> {
    let cells: Vec<&str> = line.split(',').collect();
    let number = |at: usize| cells.get(at)?.parse::<f64>().ok();
    let row = |row: usize| -> Option<[f64; 12]> {
        let figures: Option<Vec<f64>> = (0..12)
            .map(|month| number(BEFORE + 12 * row + month))
            .collect();
        figures?.try_into().ok()
    };
    Some(Normals {
        name: cells.get(1)?,
        country: cells.get(2)?,
        latitude: Latitude(number(3)?),
        longitude: Longitude(number(4)?),
        height: Metres(number(5)?),
        years: cells.get(7)?.parse().ok()?,
        low: row(0)?.map(Celsius),
        high: row(1)?.map(Celsius),
        rain: row(2)?.map(Millimetres),
        rain_days: row(3),
    })
}
