//! Names, keys, changes and days among the arguments: on one line and written as in a file.

use crate::calendar::Date;

/// Takes an argument that is on one line.
///
/// # Errors
/// What is wrong with one that is not, for the reader.
pub(super) fn one_line(text: &str) -> Result<String, String> {
    let breaks = |c| matches!(c, '\n' | '\r' | '\u{85}' | '\u{2028}' | '\u{2029}');
    match text.contains(breaks) {
        true => Err("it holds a line break; write it on one line".to_owned()),
        false => Ok(text.to_owned()),
    }
}

/// Takes an argument that is a day.
///
/// # Errors
/// How a day is written, where this is none.
pub(super) fn day(text: &str) -> Result<Date, String> {
    text.trim().parse().map_err(|_| {
        "the calendar has no such day; write year, month and day, such as 2027-04-28".to_owned()
    })
}
