//! Figures as a person types them, with or without a unit of their own.

use crate::project::meant;

/// In which units a person thinks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Measures {
    /// Metres, grams, degrees Celsius.
    Metric,
    /// Feet, ounces, degrees Fahrenheit; dates as in the United States.
    Feet,
}

/// What a figure measures, and how the two systems call its unit.
#[derive(Debug, Clone, Copy)]
pub(super) enum Quantity {
    Length,
    Temperature,
    Rain,
}

impl Quantity {
    /// Its unit in a system, as `meant` names it.
    const fn unit(self, measures: Measures) -> &'static str {
        match (self, measures) {
            (Self::Length, Measures::Metric) => "m",
            (Self::Length, Measures::Feet) => "feet",
            (Self::Temperature, Measures::Metric) => "degrees C",
            (Self::Temperature, Measures::Feet) => "degrees F",
            (Self::Rain, Measures::Metric) => "mm",
            (Self::Rain, Measures::Feet) => "inches",
        }
    }

    /// A figure in the system's unit; `unit` is what stands behind it, perhaps nothing.
    pub fn read(self, figure: f64, unit: &str, measures: Measures) -> Option<f64> {
        match unit {
            "" => Some(figure),
            unit => meant::converted(figure, unit, Some(self.unit(measures))),
        }
    }
}

/// The figures of a line, each with its unit if it has one: `4 beds 12 ft x 4 ft` is 4, 12 ft, 4 ft.
pub(super) fn figures(line: &str) -> Vec<(f64, String)> {
    let line = line.replace('\u{2212}', "-").replace('\u{d7}', "x");
    let mut found: Vec<(f64, String)> = Vec::new();
    for word in line.split(|c: char| c.is_whitespace() || c == ';') {
        for part in split_at_x(word) {
            let part = part.trim_end_matches(',');
            match meant::figure(part) {
                Some((figure, unit)) => found.push((figure, unit.to_lowercase())),
                None => {
                    // A unit that stands apart belongs to the figure before it.
                    if let Some((_, unit)) = found.last_mut()
                        && unit.is_empty()
                        && meant::is_unit(&part.to_lowercase())
                    {
                        *unit = part.to_lowercase();
                    }
                }
            }
        }
    }
    found
}

/// `3.6x1.2` as 3.6 and 1.2.
fn split_at_x(word: &str) -> impl Iterator<Item = &str> {
    word.split(['x', 'X', '*']).filter(|part| !part.is_empty())
}
