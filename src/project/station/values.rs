//! A cell as a value, or as one of the ways to say that there is none.

use super::element::Element;

/// What a cell holds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reading {
    /// A number, in the unit of the file.
    Number(f64),
    /// Nothing was measured.
    Missing,
    /// Neither a number nor a word for none.
    Unreadable,
}

/// Words for a value that is missing (common practice).
const NONE: [&str; 10] = [
    "", "-", "--", "na", "n/a", "nan", "null", "none", "m", "missing",
];

/// Words for so little rain that it cannot be measured: a trace (GHCN-Daily and others).
const TRACE: [&str; 2] = ["t", "trace"];

/// Reads a cell. A comma in a number is a decimal comma: no value of a day's weather has thousands.
pub fn reading(text: &str, element: Element) -> Reading {
    if let Ok(number) = text.parse::<f64>()
        && number.is_finite()
    {
        return Reading::Number(number);
    }
    let word = text.to_lowercase();
    if NONE.contains(&word.as_str()) {
        return Reading::Missing;
    }
    if element == Element::Rain && TRACE.contains(&word.as_str()) {
        return Reading::Number(0.0);
    }
    let digits = text.contains(',') && !text.contains('.');
    match digits.then(|| text.replacen(',', ".", 1).parse::<f64>().ok()) {
        Some(Some(number)) if number.is_finite() => Reading::Number(number),
        _ => Reading::Unreadable,
    }
}

/// True for a number that stands for a missing value: nines throughout, beyond what can be measured. In
/// tenths -999 is a cold night and 999 much rain, so there they are four.
pub fn is_code(number: f64, tenths: bool) -> bool {
    let digits = number.abs().to_string();
    let nines = digits.bytes().all(|b| b == b'9' || b == b'.');
    nines
        && match tenths {
            true => number.abs() >= 9999.0,
            false => number <= -99.0 || number >= 999.0,
        }
}
