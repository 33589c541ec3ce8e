//! The lines of a weather file and their values, each with its place.

use crate::diagnostic::Span;

/// How a comment begins; comments stand before the header.
pub const COMMENT: &str = "#";

/// The names of the columns.
pub const HEADER: [&str; 4] = ["date", "tmin_c", "tmax_c", "rain_mm"];

/// The lines with their places, without line breaks.
pub fn lines(text: &str) -> impl Iterator<Item = (&str, Span)> {
    let mut start = 0;
    text.split('\n').map(move |line| {
        let from = start;
        start += line.len() + 1;
        let line = line.trim_end_matches('\r');
        (line, Span::from(from..from + line.len()))
    })
}

/// The values of a line with their places.
pub fn cells(line: &str, span: Span) -> Vec<(&str, Span)> {
    let mut start = span.start;
    line.split(',')
        .map(|cell| {
            let from = start + (cell.len() - cell.trim_start().len());
            start += cell.len() + 1;
            let cell = cell.trim();
            (cell, Span::from(from..from + cell.len()))
        })
        .collect()
}
