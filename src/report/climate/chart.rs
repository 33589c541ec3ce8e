//! The year as a picture: bars from the mean lowest to the mean highest temperature of each
//! week, under them how often it freezes and which crops the week suits.

use crate::facts::climate::{Column, Part};
use crate::units::rounded;

use crate::page::{Drawing, Page, bars};
use crate::words::Words;

/// Degrees that one line of the picture stands for.
const STEP: f64 = 2.5;

/// Columns for the scale on the left.
const SCALE: usize = 6;

/// Writes the picture; where 52 columns do not fit, a column is two weeks.
pub(super) fn write(weeks: &[Part], words: Words, page: &mut Page) {
    page.heading("The year week by week");
    page.drawing(Drawing {
        wide: (lines(weeks, 1, words), key("one week")),
        narrow: (lines(weeks, 2, words), key("two weeks")),
    });
}

/// The lines of the picture, so many weeks to a column.
fn lines(weeks: &[Part], together: usize, words: Words) -> Vec<String> {
    let columns = Column::all(weeks, together);
    let spans: Vec<(f64, f64)> = columns.iter().map(|c| (c.low.0, c.high.0)).collect();
    let bars = bars(&spans, STEP).into_iter();
    let mut lines: Vec<String> = bars.map(|bar| line(&scale(bar.step), &bar.marks)).collect();
    let row = |label: &str, mark: fn(&Column) -> char| {
        line(label, &columns.iter().map(mark).collect::<String>())
    };
    lines.push(line("", &months(&columns, words)));
    lines.push(row("frost", frost_mark));
    lines.push(row("warm", |c| if c.warm { 'w' } else { '.' }));
    lines.push(row("cool", |c| if c.cool { 'c' } else { '.' }));
    lines
}

fn key(column: &str) -> String {
    format!(
        "Each column is {column}. #: from the mean lowest to the mean highest temperature of the \
         day, in C. frost: in so many years of ten there is a frost in the week (* in all, . in \
         fewer than one of twenty). w: a week for warm-season crops, c: for cool-season crops, as \
         explained below."
    )
}

/// A label, and a mark for every column.
fn line(label: &str, marks: &str) -> String {
    format!("{label:<SCALE$}{marks}")
}

/// A number at every second line, where it is whole.
fn scale(step: i32) -> String {
    match step % 2 {
        0 => format!("{:>3} C", rounded(f64::from(step) * STEP, 0)),
        _ => String::new(),
    }
}

/// The first letters of the months, above the column in which each begins.
fn months(columns: &[Column], words: Words) -> String {
    let mut text = String::new();
    let mut last = 0;
    for (at, column) in columns.iter().enumerate() {
        let month = chrono::Datelike::month(&column.begins);
        if month != last && text.chars().count() <= at {
            let padding = at - text.chars().count();
            let name = words.short_month(column.begins);
            let name = if columns.len() > 40 {
                &name
            } else {
                &name[..1]
            };
            text.push_str(&" ".repeat(padding));
            text.push_str(name);
            last = month;
        }
    }
    text
}

/// `9`: in nine years of ten there is a frost in the week.
fn frost_mark(column: &Column) -> char {
    match (column.frost * 10.0).round() as u32 {
        0 => '.',
        tenths @ 1..=9 => char::from_digit(tenths, 10).unwrap_or('9'),
        _ => '*',
    }
}
