//! The monthly means of stations: sound rows, all over the world, and the nearest of a place.

use std::collections::BTreeSet;

use tureen::units::{Latitude, Metres};
use tureen::weather::normals::{Longitude, Normals, all, distance, nearest};

const TABLE: &str = include_str!("../../../src/weather/normals.csv");

fn place(latitude: f64, longitude: f64) -> (Latitude, Longitude) {
    (Latitude(latitude), Longitude(longitude))
}

fn of(station: &Normals) -> (Latitude, Longitude) {
    (station.latitude, station.longitude)
}

#[test]
fn every_line_is_read_and_can_be() {
    let stations = all();
    let lines = TABLE.lines().filter(|line| !line.starts_with('#')).count();
    assert_eq!(stations.len(), lines - 1);
    assert!(stations.len() > 700 && TABLE.len() < 200_000);
    for station in &stations {
        let name = &station.name;
        assert!((-60.0..=67.0).contains(&station.latitude.0), "{name}");
        assert!(station.years >= 4, "{name}");
        for month in 0..12 {
            let (low, high) = (station.low[month].0, station.high[month].0);
            assert!(
                (-60.0..50.0).contains(&low) && low < high && high < 50.0,
                "{name}: {low} {high}"
            );
            assert!((0.0..2000.0).contains(&station.rain[month].0), "{name}");
            let wet = station.rain_days.map_or(0.0, |days| days[month]);
            assert!((0.0..=31.0).contains(&wet), "{name}");
        }
        // The warm half of the year is that of its half of the earth, but for the tropics.
        let mean = |months: [usize; 3]| {
            months
                .iter()
                .map(|m| station.high[*m].0 + station.low[*m].0)
                .sum::<f64>()
        };
        let (winter, summer) = (mean([11, 0, 1]), mean([5, 6, 7]));
        if station.latitude.0.abs() > 25.0 {
            assert_eq!(summer > winter, station.latitude.0 > 0.0, "{name}");
        }
    }
}

#[test]
fn there_is_one_on_every_inhabited_continent_and_none_twice() {
    let stations = all();
    for (what, latitude, longitude) in [
        ("Europe", 50.0, 10.0),
        ("Africa south", -26.0, 28.0),
        ("Africa west", 6.5, 3.4),
        ("India", 23.0, 79.0),
        ("Japan", 36.0, 138.0),
        ("North America", 40.0, -90.0),
        ("Brazil", -23.0, -46.0),
        ("Chile", -33.0, -71.0),
        ("Australia", -34.0, 151.0),
        ("New Zealand", -41.0, 175.0),
    ] {
        let near = nearest(Latitude(latitude), Longitude(longitude), 3);
        assert_eq!(near.len(), 3);
        assert!(near[0].0.0 < 300_000.0, "{what}: {:?}", near[0].0);
        assert!(near.is_sorted_by(|a, b| a.0.0 <= b.0.0));
    }
    let names: BTreeSet<String> = stations
        .iter()
        .map(|s| format!("{} {}", s.name, s.country))
        .collect();
    assert!(names.len() > stations.len() - 10, "{}", names.len());
    let countries: BTreeSet<&str> = stations.iter().map(|s| s.country).collect();
    assert!(countries.len() > 150, "{}", countries.len());
}

/// Ways on the sphere that can be worked out by hand: a degree of a great circle is a 360th of its length.
#[test]
fn ways_are_those_of_a_sphere() {
    let degree = 2.0 * std::f64::consts::PI * 6_371_008.8 / 360.0;
    for (from, to, degrees) in [
        (place(0.0, 0.0), place(1.0, 0.0), 1.0),
        (place(0.0, 179.5), place(0.0, -179.5), 1.0),
        (place(60.0, 10.0), place(60.0, -170.0), 60.0),
        (place(-45.0, 0.0), place(45.0, 180.0), 180.0),
        (place(12.0, 34.0), place(12.0, 34.0), 0.0),
    ] {
        let Metres(way) = distance(from, to);
        assert!(
            (way - degrees * degree).abs() < 1.0,
            "{from:?} {to:?}: {way}"
        );
    }
    let stations = all();
    let near = nearest(stations[7].latitude, stations[7].longitude, 1);
    assert_eq!((near[0].0, of(&near[0].1)), (Metres(0.0), of(&stations[7])));
}

/// Averages of 1991 to 2020 for London, Sydney and Tokyo as their weather services print them, from memory and
/// rounded: the limits are those of memory.
#[test]
fn known_places_are_as_people_know_them() {
    for (latitude, longitude, january, july, rain) in [
        (51.48, -0.45, (2.7, 8.4), (14.2, 23.9), 615.0),
        (-33.95, 151.17, (20.0, 27.0), (8.7, 17.5), 1000.0),
        (35.69, 139.75, (1.2, 9.8), (22.4, 29.9), 1598.0),
    ] {
        let near = nearest(Latitude(latitude), Longitude(longitude), 1);
        let (Metres(far), station) = &near[0];
        assert!(*far < 30_000.0, "{} {far}", station.name);
        for (month, (low, high)) in [(0, january), (6, july)] {
            let off = (station.low[month].0 - low)
                .abs()
                .max((station.high[month].0 - high).abs());
            assert!(off < 1.0, "{} month {month}: {off}", station.name);
        }
        let year: f64 = station.rain.iter().map(|rain| rain.0).sum();
        assert!((year - rain).abs() < 0.1 * rain, "{}: {year}", station.name);
    }
}
