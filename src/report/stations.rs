//! What `tureen stations` prints: the stations nearest to a place, and what their months are like.

use crate::page::Page;
use crate::units::{Metres, rounded};
use crate::weather::normals::{Normals, SOURCE};

/// The stations, the nearest first.
#[must_use]
pub fn stations(near: &[(Metres, Normals)]) -> Page {
    let mut page = Page::new();
    page.title("The nearest weather stations whose monthly means the program knows");
    let months = |station: &Normals, month: usize| {
        let [low, high] = [station.low, station.high].map(|row| rounded(row[month].0, 0));
        format!("{low} to {high} C")
    };
    let row = |(at, (far, station)): (usize, &(Metres, Normals))| {
        vec![
            (at + 1).to_string(),
            format!("{}, {}", station.name, station.country),
            format!("{:.0} km", far.0 / 1000.0),
            format!("{:.0} m", station.height.0),
            months(station, 0),
            months(station, 6),
        ]
    };
    let rows: Vec<Vec<String>> = near.iter().enumerate().map(row).collect();
    page.table(
        &["No.", "Station", "Away", "Height", "January", "July"],
        &rows,
        &[2, 3],
    );
    page.paragraph(&format!(
        "Lowest to highest, on average. A hundred metres higher it is some 0.6 C colder; airports have colder nights \
         than towns. Better is the daily record of a station: tureen record. --out FILE writes these means as lines of \
         a project file, --take 2 those of the second. Source: {SOURCE}."
    ));
    page
}
