//! What `tests/reference/packet_days.py` compares with its own computation.

use std::fmt::Write;
use std::path::PathBuf;

use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::{Daily, Record};

use super::packets::Way;
use super::places::Place;
use super::rows;

/// A record from a file as the program reads it; every row is `date,tmin,tmax,rain`.
fn record(text: &str) -> Record {
    let mut first = None;
    let mut days = Vec::new();
    for row in text.lines().skip(1) {
        let cells: Vec<&str> = row.split(',').collect();
        first.get_or_insert_with(|| cells[0].parse().unwrap());
        let number = |at: usize| cells[at].parse::<f64>().unwrap();
        days.push(Daily {
            tmin: Celsius(number(1)),
            tmax: Celsius(number(2)),
            rain: Millimetres(number(3)),
        });
    }
    Record::new(first.unwrap(), days, false)
}

/// Reads `stations.txt` (lines `name latitude`) and the records beside it, and writes
/// `packet_days.csv`: for every crop, way and station the days on which it is begun and the
/// median days that it takes.
#[test]
#[ignore = "writes files for tests/reference"]
fn days_at_the_stations() {
    let folder = PathBuf::from(std::env::var("TUREEN_EXPORT").unwrap());
    let read = |name: &str| std::fs::read_to_string(folder.join(name)).unwrap();
    let list = read("stations.txt");
    let places: Vec<Place> = list
        .lines()
        .map(|line| {
            let (name, latitude) = line.split_once(' ').unwrap();
            let record = record(&read(&format!("{name}.csv")));
            Place::new(name, Latitude(latitude.parse().unwrap()), record)
        })
        .collect();
    let mut table = String::from("crop,way,low,high,station,start,days\n");
    for row in rows(&places) {
        for (place, days) in places.iter().zip(&row.by_place) {
            let Some(days) = days else { continue };
            let starts = row.packet.starts(&row.crop, row.way, place);
            for (start, days) in starts.iter().zip(days) {
                let way = match row.way {
                    Way::Planted => "planted",
                    Way::Sown => "sown",
                };
                let (low, high) = row.range;
                let days = *days as i64;
                let (crop, place) = (row.packet.crop, &place.name);
                writeln!(table, "{crop},{way},{low},{high},{place},{start},{days}").unwrap();
            }
        }
    }
    std::fs::write(folder.join("packet_days.csv"), table).unwrap();
}
