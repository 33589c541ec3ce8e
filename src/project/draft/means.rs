//! A town's monthly means as they are typed or pasted: twelve figures in a line, in either unit.

use super::figures::{Measures, Quantity, figures};
use crate::weather::normals::Normals;

/// One of the three rows of means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Element {
    /// Mean daily lowest temperature.
    Low,
    /// Mean daily highest temperature.
    High,
    /// Rain of the month.
    Rain,
}

/// Twelve figures each, January first, in the person's unit; `None` as long as they were not said.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Means {
    /// Mean daily lowest temperature.
    pub low: Option<[f64; 12]>,
    /// Mean daily highest temperature.
    pub high: Option<[f64; 12]>,
    /// Rain of the month.
    pub rain: Option<[f64; 12]>,
}

/// An invented place with a cold winter and a warm summer: degrees C and millimetres.
const INVENTED: [[f64; 12]; 3] = [
    [
        -9.0, -8.0, -4.0, 1.0, 7.0, 12.0, 15.0, 14.0, 9.0, 4.0, -1.0, -6.0,
    ],
    [
        0.0, 2.0, 7.0, 14.0, 20.0, 25.0, 28.0, 26.0, 22.0, 15.0, 8.0, 2.0,
    ],
    [
        60.0, 55.0, 65.0, 75.0, 80.0, 90.0, 90.0, 90.0, 80.0, 75.0, 75.0, 65.0,
    ],
];

impl Means {
    /// True if all three rows were said.
    #[must_use]
    pub const fn is_said(&self) -> bool {
        self.low.is_some() && self.high.is_some() && self.rain.is_some()
    }

    /// The three rows: each as said; else that of a station, else that of an invented place, half a year later
    /// in the south.
    pub(super) fn rows(
        &self,
        station: Option<&Normals>,
        south: bool,
        measures: Measures,
    ) -> [[f64; 12]; 3] {
        let [low, high, rain] = match station {
            Some(near) => [
                near.low.map(|t| t.0),
                near.high.map(|t| t.0),
                near.rain.map(|rain| rain.0),
            ],
            None => INVENTED.map(|mut row| {
                row.rotate_left(if south { 6 } else { 0 });
                row
            }),
        };
        let [low, high, rain] = match measures {
            Measures::Metric => [low, high, rain],
            Measures::Feet => {
                let fahrenheit = |c: f64| ((c * 1.8 + 32.0) * 10.0).round() / 10.0;
                let inches = |mm: f64| (mm / 0.254).round() / 100.0;
                [low.map(fahrenheit), high.map(fahrenheit), rain.map(inches)]
            }
        };
        [
            self.low.unwrap_or(low),
            self.high.unwrap_or(high),
            self.rain.unwrap_or(rain),
        ]
    }

    /// Takes a row as it was typed.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn take(&mut self, element: Element, line: &str, measures: Measures) -> Result<(), String> {
        let row = row(element, line, measures)?;
        match element {
            Element::Low => self.low = Some(row),
            Element::High => {
                let pairs = || self.low.into_iter().flatten().zip(row);
                if let Some(month) = pairs().position(|(low, high)| high < low) {
                    return Err(format!(
                        "in month {} the highest is under the lowest; does the line begin with January?",
                        month + 1
                    ));
                }
                self.high = Some(row);
            }
            Element::Rain => self.rain = Some(row),
        }
        Ok(())
    }
}

/// Twelve figures of a line. A unit behind the last one, or behind each, is that of all.
fn row(element: Element, line: &str, measures: Measures) -> Result<[f64; 12], String> {
    let mut found = figures(line);
    if found.len() != 12 {
        // Perhaps commas part them, and no blanks.
        found = figures(&line.replace(',', " "));
    }
    let count = found.len();
    let unit = found
        .last()
        .map(|(_, unit)| unit.clone())
        .unwrap_or_default();
    let quantity = match element {
        Element::Low | Element::High => Quantity::Temperature,
        Element::Rain => Quantity::Rain,
    };
    let read = found.into_iter().map(|(figure, own)| {
        let unit = if own.is_empty() { &unit } else { &own };
        quantity.read(figure, unit, measures)
    });
    let read: Option<Vec<f64>> = read.collect();
    let read = read.ok_or_else(|| format!("these are not in a unit of it: {unit}"))?;
    <[f64; 12]>::try_from(read)
        .map_err(|_| format!("twelve figures are needed, January first; these are {count}"))
}
