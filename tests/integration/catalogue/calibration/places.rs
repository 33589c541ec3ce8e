//! The places: five from the monthly means of real stations, three from the scenarios.

use chrono::Datelike;
use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::generator::generate;
use tureen::weather::monthly::{FrostDates, Monthly};
use tureen::weather::{Record, sun};

use super::season::median;
use crate::scenarios;

/// A place with its weather; days are counted from 1 January.
pub struct Place {
    pub name: String,
    pub latitude: Latitude,
    pub record: Record,
    /// The median last frost before July.
    pub last_frost: usize,
    /// The median first frost after June.
    pub first_frost: usize,
    /// The day after which autumn crops stand still: the first frost, or the last day of ten
    /// hours if that is earlier.
    pub season_end: usize,
    /// True if the warmest month has 19 C or more; where it has not, warm crops stand under
    /// glass (common practice; the figure from memory).
    pub warm: bool,
}

/// A station: latitude, median last and first frost, monthly means of the lowest and the
/// highest temperatures, January first.
struct Station {
    name: &'static str,
    latitude: f64,
    frosts: (usize, usize),
    tmin: [f64; 12],
    tmax: [f64; 12],
}

/// From the daily records that the Python package `aquacrop` 3.1.0 (Champion, Nebraska
/// 1982-2018; Cambridge 1991-2021; Brussels 1976-2005) and the npm package `vega-datasets` 3.2.1
/// (New York and Seattle 2012-2015) carry. `tests/reference/packet_days.py` looks at the
/// records themselves.
const STATIONS: [Station; 5] = [
    Station {
        name: "Champion",
        latitude: 40.4,
        frosts: (129, 270),
        tmin: [
            -10.8, -9.0, -4.7, 0.1, 6.8, 12.4, 15.1, 14.1, 8.1, 0.7, -6.0, -10.9,
        ],
        tmax: [
            5.1, 6.8, 12.6, 17.0, 22.4, 28.6, 32.1, 30.8, 26.4, 19.1, 11.3, 5.2,
        ],
    },
    Station {
        name: "New York",
        latitude: 40.8,
        frosts: (93, 318),
        tmin: [
            -3.4, -3.5, 0.8, 6.3, 12.7, 17.5, 21.5, 20.3, 16.6, 11.2, 4.2, 2.8,
        ],
        tmax: [
            4.4, 4.2, 9.1, 15.8, 21.4, 25.9, 29.5, 28.5, 25.3, 19.0, 12.1, 9.3,
        ],
    },
    Station {
        name: "Seattle",
        latitude: 47.5,
        frosts: (62, 324),
        tmin: [
            2.7, 4.1, 4.9, 6.4, 9.6, 12.2, 14.2, 14.8, 12.4, 9.4, 4.7, 3.3,
        ],
        tmax: [
            8.2, 9.9, 12.4, 15.0, 19.3, 22.4, 26.0, 26.1, 21.9, 16.4, 11.0, 8.2,
        ],
    },
    Station {
        name: "Cambridge",
        latitude: 52.2,
        frosts: (103, 320),
        tmin: [1.3, 1.2, 2.4, 4.0, 6.9, 9.9, 12.1, 12.1, 9.9, 7.2, 4.2, 2.2],
        tmax: [
            6.6, 7.6, 10.6, 13.5, 16.7, 19.7, 22.1, 22.0, 19.3, 14.8, 10.0, 7.0,
        ],
    },
    Station {
        name: "Brussels",
        latitude: 50.8,
        frosts: (100, 318),
        tmin: [
            0.7, 0.9, 3.4, 5.2, 8.9, 11.6, 13.6, 13.5, 11.0, 8.0, 4.0, 1.9,
        ],
        tmax: [
            5.4, 6.5, 10.2, 13.4, 17.8, 20.4, 22.5, 22.5, 18.8, 14.7, 9.3, 6.3,
        ],
    },
];

/// Enough for a median.
const GENERATED_YEARS: u32 = 21;

/// All places.
pub fn places() -> Vec<Place> {
    let stations = STATIONS.iter().map(|station| {
        let monthly = Monthly {
            tmin: station.tmin.map(Celsius),
            tmax: station.tmax.map(Celsius),
            rain: [Millimetres(0.0); 12],
            rain_days: [0.0; 12],
            frosts: FrostDates::default(),
        };
        let record = generate(&monthly, 2001, GENERATED_YEARS, 1);
        let latitude = Latitude(station.latitude);
        Place::with(station.name, latitude, record, station.frosts)
    });
    let scenarios = ["soup-day", "wrap-day", "nine-grades"].map(|name| {
        let garden = scenarios::load(name, "garden.toml");
        Place::new(name, garden.latitude, garden.weather)
    });
    stations.chain(scenarios).collect()
}

impl Place {
    /// A place whose frosts are those of its record.
    pub fn new(name: &str, latitude: Latitude, record: Record) -> Self {
        let (mut last, mut first) = (Vec::new(), Vec::new());
        for year in record.first().year()..record.first().year() + 100 {
            let days = days_of(&record, year);
            let frosts = days.iter().filter(|(_, tmin)| *tmin <= 0.0);
            let mut frosts = frosts.map(|(day, _)| *day as usize);
            last.extend(frosts.clone().rfind(|day| *day < 181));
            first.extend(frosts.find(|day| *day >= 181));
        }
        let frosts = (median(last), median(first));
        Self::with(name, latitude, record, frosts)
    }

    /// A place with its median last and first frost.
    fn with(name: &str, latitude: Latitude, record: Record, frosts: (usize, usize)) -> Self {
        let mut months = [(0.0, 0.0); 12];
        for (date, day) in record.first().iter_days().zip(record.days()) {
            let (sum, n) = &mut months[date.month0() as usize];
            *sum += day.mean().0;
            *n += 1.0;
        }
        let mut from_the_end = (182..365).rev();
        let ten_hours = from_the_end.find(|day| sun::day_length(latitude, *day).0 >= 10.0);
        let last_long_day = ten_hours.unwrap() as usize - 1;
        Self {
            name: name.to_owned(),
            latitude,
            record,
            last_frost: frosts.0,
            first_frost: frosts.1,
            season_end: frosts.1.min(last_long_day),
            warm: months.iter().any(|(sum, n)| sum / n >= 19.0),
        }
    }
}

/// Days of a calendar year from 0 with their lowest temperature; empty if not all are there.
fn days_of(record: &Record, year: i32) -> Vec<(u32, f64)> {
    let days: Vec<_> = record
        .first()
        .iter_days()
        .zip(record.days())
        .filter(|(date, _)| date.year() == year)
        .map(|(date, day)| (date.ordinal0(), day.tmin.0))
        .collect();
    if days.len() >= 365 { days } else { Vec::new() }
}
