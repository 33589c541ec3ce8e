//! GHCN-Daily's tables with a line for each value: station, day, element, value, and marks of measurement,
//! quality and source. Source: NOAA, readme of the folder by_station of GHCN-Daily.

use std::ops::Range;

use crate::diagnostic::{Code, Problem};

use super::cells::{Cell, Separator, cells};
use super::days::Given;
use super::fixed::element;
use super::intake::Intake;
use super::lines::Line;
use super::names::{Named, named};
use super::order::Order;
use super::values::{Reading, reading};

/// Where the columns are.
#[derive(Debug, Clone, Copy)]
pub struct Long {
    /// Lines before it and itself name the columns.
    header: usize,
    station: usize,
    date: usize,
    element: usize,
    value: usize,
    quality: Option<usize>,
}

impl Long {
    /// The layout of a line that names the columns.
    pub fn named(line: Line<'_>) -> Option<Self> {
        let cells = cells(line.text, Separator::Comma);
        let of = |wanted| {
            cells
                .iter()
                .position(|cell| named(cell.text) == Some(wanted))
        };
        Some(Self {
            header: line.number,
            station: of(Named::Station)?,
            date: of(Named::Date)?,
            element: of(Named::ElementName)?,
            value: of(Named::ElementValue)?,
            quality: of(Named::QualityFlag),
        })
    }

    /// The layout where the columns are not named and a line is one of values.
    pub fn unnamed(line: Line<'_>) -> Option<Self> {
        let cells = cells(line.text, Separator::Comma);
        let text = |at: usize| cells.get(at).map(|cell| cell.text);
        let is_element = |name: &str| {
            name.len() == 4
                && name
                    .bytes()
                    .all(|b| b.is_ascii_uppercase() || b.is_ascii_digit())
        };
        let fits = Order::YearFirst.day(text(1)?).is_some()
            && is_element(text(2)?)
            && text(3)?.parse::<i64>().is_ok();
        fits.then_some(Self {
            header: line.number - 1,
            station: 0,
            date: 1,
            element: 2,
            value: 3,
            quality: Some(5),
        })
    }

    /// Reads a line.
    pub fn read(&self, line: Line<'_>, into: &mut Intake<'_>) {
        if line.number <= self.header || line.text.trim().is_empty() {
            return;
        }
        let cells = cells(line.text, Separator::Comma);
        let cell = |at: usize| cells.get(at);
        let needed = [self.station, self.date, self.element, self.value];
        let [Some(station), Some(date), Some(name), Some(value)] = needed.map(cell) else {
            let cause = format!(
                "this line should have at least {} values, but has {}",
                needed.into_iter().max().unwrap_or(0) + 1,
                cells.len()
            );
            let problem = Problem::new(Code::WeatherColumns, cause).remedy(
                "station, day, element, value, with commas between; the file may be cut: download it \
                 again, or remove this line",
            );
            into.wrong(line, 0..line.text.len(), problem);
            return;
        };
        if !into.is_station(line, station.text, station.at.clone(), None) {
            return;
        }
        let Some(element) = element(name.text) else {
            return;
        };
        let Some(date) = into.day(line, date, Some(Order::YearFirst)) else {
            return;
        };
        let flagged = self.quality.and_then(cell);
        if flagged.is_some_and(|cell| !cell.text.is_empty()) {
            into.days.flag(element);
            return;
        }
        match reading(value.text, element) {
            Reading::Missing => {}
            Reading::Unreadable => into.no_number(line, value.at.clone(), value.text, element),
            Reading::Number(number) => {
                let given = Given {
                    number,
                    line: line.number,
                };
                into.put(line, place(value), date, element, given);
            }
        }
    }
}

fn place(cell: &Cell<'_>) -> Range<usize> {
    cell.at.clone()
}
