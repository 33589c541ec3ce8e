//! The days of a file with what was measured on them, and what was passed over.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::units::{Celsius, Millimetres};
use crate::weather::Daily;

use super::super::weather::{RAINS, TEMPERATURES};
use super::element::Element;
use super::units::{RainUnit, TemperatureUnit, Units};
use super::values::is_code;

/// Values of one kind, counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts {
    /// Days with a value that is used.
    pub values: usize,
    /// Values that the publisher marks as doubtful, passed over.
    pub flagged: usize,
    /// Values that cannot be true, passed over.
    pub impossible: usize,
}

/// A value as it stands in the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Given {
    /// In the unit of the file.
    pub number: f64,
    /// The line in which it stands.
    pub line: usize,
}

/// What a day has of each element.
pub type Day<T> = [Option<T>; 3];

/// The days of one file.
#[derive(Debug, Default)]
pub struct Days {
    days: BTreeMap<Date, Day<Given>>,
    /// Values that the publisher marks as doubtful.
    pub flagged: [usize; 3],
    /// Values that stand twice, and are the same.
    pub repeated: usize,
}

impl Days {
    /// Notes a value; gives the line of another one that stands for the same.
    pub fn put(&mut self, date: Date, element: Element, given: Given) -> Result<(), usize> {
        let day = self.days.entry(date).or_default();
        let Some(place) = day.get_mut(element as usize) else {
            return Ok(());
        };
        match place {
            Some(before) if before.number != given.number => return Err(before.line),
            Some(_) => self.repeated += 1,
            None => *place = Some(given),
        }
        Ok(())
    }

    /// Counts a value that is marked as doubtful.
    pub fn flag(&mut self, element: Element) {
        if let Some(count) = self.flagged.get_mut(element as usize) {
            *count += 1;
        }
    }

    /// The greatest temperature, as the file gives it; what stands for a missing value left out.
    pub fn hottest(&self) -> Option<f64> {
        let temperatures = self.days.values().flat_map(|[low, high, _]| [low, high]);
        let numbers = temperatures.flatten().map(|given| given.number);
        numbers.filter(|n| !is_code(*n, false)).reduce(f64::max)
    }

    /// All days in degrees Celsius and millimetres.
    pub fn converted(&self, units: Units) -> (BTreeMap<Date, Day<f64>>, [Counts; 3]) {
        let mut counts = self.flagged.map(|flagged| Counts {
            flagged,
            ..Counts::default()
        });
        let temperature = units.temperature.unwrap_or(TemperatureUnit::Celsius);
        let rain = units.rain.unwrap_or(RainUnit::Millimetres);
        let in_tenths = temperature == TemperatureUnit::TenthsOfCelsius;
        let rain_in_tenths = rain == RainUnit::TenthsOfMillimetre;
        let mut days = BTreeMap::new();
        for (date, given) in &self.days {
            let mut day: Day<f64> = [None; 3];
            for (element, count) in Element::ALL.into_iter().zip(&mut counts) {
                let at = element as usize;
                let Some(Some(Given { number, .. })) = given.get(at) else {
                    continue;
                };
                let (tenths, value, range) = match element {
                    Element::Low | Element::High => {
                        (in_tenths, temperature.celsius(*number), TEMPERATURES)
                    }
                    Element::Rain => (rain_in_tenths, rain.millimetres(*number), RAINS),
                };
                match () {
                    () if is_code(*number, tenths) => {}
                    () if !range.contains(&value) => count.impossible += 1,
                    () => {
                        count.values += 1;
                        if let Some(place) = day.get_mut(at) {
                            *place = Some(value);
                        }
                    }
                }
            }
            days.insert(*date, day);
        }
        (days, counts)
    }
}

/// A day that has all three, to the tenths that a table of the project holds.
pub fn daily(day: &Day<f64>) -> Option<Daily> {
    let tenths = |value: f64| (value * 10.0).round() / 10.0;
    let [Some(low), Some(high), Some(rain)] = *day else {
        return None;
    };
    Some(Daily {
        tmin: Celsius(tenths(low)),
        tmax: Celsius(tenths(high)),
        rain: Millimetres(tenths(rain)),
    })
}
