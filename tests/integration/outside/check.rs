//! One published figure against ours, with its tolerance and its source.

use tureen::calendar::Date;

/// Equal but for the rounding of arithmetic.
pub const EXACT: f64 = 1e-9;

/// One published figure and what the program has for it.
#[derive(Debug, Clone)]
pub struct Check {
    /// What the figure is of.
    pub what: String,
    /// Keys of `sources`, parted by ", ".
    pub source: &'static str,
    /// The figures of the catalogue that it is about: crop, and path in the data files.
    pub catalogue: Vec<(String, &'static str)>,
    figure: Figure,
}

#[derive(Debug, Clone)]
enum Figure {
    /// `None`: there is no such figure (seed that does not come up).
    Number {
        found: Option<f64>,
        expected: Option<f64>,
        tolerance: f64,
    },
    /// The work prints a range, or a limit; ours must lie within.
    Range {
        found: f64,
        within: (f64, f64),
    },
    Day {
        found: Option<Date>,
        expected: Date,
    },
    /// Words that ours must hold.
    Words {
        found: String,
        expected: &'static str,
    },
}

impl Check {
    fn new(what: &str, source: &'static str, figure: Figure) -> Self {
        Self {
            what: what.to_owned(),
            source,
            catalogue: Vec::new(),
            figure,
        }
    }

    /// The same check, said to be about a figure of these crops in the catalogue.
    pub fn of(mut self, crops: &[&str], path: &'static str) -> Self {
        let figures = crops.iter().map(|name| ((*name).to_owned(), path));
        self.catalogue.extend(figures);
        self
    }

    /// A number with the tolerance to which the work prints it, or our catalogue rounds it.
    pub fn number(
        what: &str,
        found: f64,
        expected: f64,
        tolerance: f64,
        source: &'static str,
    ) -> Self {
        Self::maybe(what, Some(found), Some(expected), tolerance, source)
    }

    /// A number that may not be there, in ours or in the work.
    pub fn maybe(
        what: &str,
        found: Option<f64>,
        expected: Option<f64>,
        tolerance: f64,
        source: &'static str,
    ) -> Self {
        let figure = Figure::Number {
            found,
            expected,
            tolerance,
        };
        Self::new(what, source, figure)
    }

    /// A range, both ends included, but for the rounding of arithmetic.
    pub fn range(what: &str, found: f64, low: f64, high: f64, source: &'static str) -> Self {
        let within = (low, high);
        Self::new(what, source, Figure::Range { found, within })
    }

    /// A day, exactly.
    pub fn day(what: &str, found: Option<Date>, expected: Date, source: &'static str) -> Self {
        Self::new(what, source, Figure::Day { found, expected })
    }

    /// Words that must stand in ours, whatever the line breaks and capitals.
    pub fn words(what: &str, found: &str, expected: &'static str, source: &'static str) -> Self {
        let found = found.to_owned();
        Self::new(what, source, Figure::Words { found, expected })
    }

    /// How far a number is off, as a part of its tolerance; `None` where it is a matter of
    /// yes or no.
    pub fn deviation(&self) -> Option<f64> {
        match self.figure {
            Figure::Number {
                found: Some(found),
                expected: Some(expected),
                tolerance,
            } => Some((found - expected).abs() / tolerance),
            _ => None,
        }
    }

    /// What is wrong, in words; `None` if it agrees.
    pub fn wrong(&self) -> Option<String> {
        let told = match &self.figure {
            Figure::Number {
                found,
                expected,
                tolerance,
            } => {
                let agrees = match (found, expected) {
                    (Some(found), Some(expected)) => (found - expected).abs() <= *tolerance,
                    (found, expected) => found.is_none() && expected.is_none(),
                };
                (!agrees).then(|| format!("{found:?}, not {expected:?} to {tolerance}"))
            }
            Figure::Range { found, within } => {
                let agrees = within.0 - EXACT <= *found && *found <= within.1 + EXACT;
                (!agrees).then(|| format!("{found}, not within {within:?}"))
            }
            Figure::Day { found, expected } => {
                (*found != Some(*expected)).then(|| format!("{found:?}, not {expected}"))
            }
            Figure::Words { found, expected } => (!plain(found).contains(&plain(expected)))
                .then(|| format!("{found:?}: no {expected:?}")),
        };
        told.map(|told| format!("{}: {told} ({})", self.what, self.source))
    }
}

/// Words in small letters with single spaces.
fn plain(text: &str) -> String {
    let words: Vec<&str> = text.split_whitespace().collect();
    words.join(" ").to_lowercase()
}
