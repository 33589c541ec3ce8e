//! The year as a picture: bars from the mean lowest to the mean highest temperature of each
//! week, under them how often it freezes and which crops the week suits.

use crate::facts::climate::Part;
use crate::units::rounded;

use crate::page::{Drawing, Page};
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
    let columns: Vec<&[Part]> = weeks.chunks(together).collect();
    let mut lines = bars(&columns);
    lines.push(line("", &months(&columns, words)));
    lines.push(line("frost", &each(&columns, frost_mark)));
    lines.push(line("warm", &each(&columns, |c| mark(c, |w| w.warm, 'w'))));
    lines.push(line("cool", &each(&columns, |c| mark(c, |w| w.cool, 'c'))));
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

/// The bars, from the warmest line down.
fn bars(columns: &[&[Part]]) -> Vec<String> {
    let lows: Vec<f64> = columns.iter().map(|c| mean(c, |w| w.spell.low.0)).collect();
    let highs: Vec<f64> = columns
        .iter()
        .map(|c| mean(c, |w| w.spell.high.0))
        .collect();
    let steps = |t: f64| (t / STEP).round() as i32;
    let bottom = lows.iter().copied().map(steps).min().unwrap_or(0);
    let top = highs.iter().copied().map(steps).max().unwrap_or(0);
    (bottom..=top)
        .rev()
        .map(|at| {
            let degrees = f64::from(at) * STEP;
            // A number at every second line, where it is whole.
            let scale = if at % 2 == 0 {
                format!("{:>3} C", rounded(degrees, 0))
            } else {
                String::new()
            };
            let marks: String = lows
                .iter()
                .zip(&highs)
                .map(|(low, high)| match at {
                    _ if steps(*low) <= at && at <= steps(*high) => '#',
                    0 => '-',
                    _ => ' ',
                })
                .collect();
            line(&scale, &marks)
        })
        .collect()
}

/// The first letters of the months, above the column in which each begins.
fn months(columns: &[&[Part]], words: Words) -> String {
    let mut text = String::new();
    let mut last = 0;
    for (at, column) in columns.iter().enumerate() {
        let Some(week) = column.first() else { continue };
        let month = chrono::Datelike::month(&week.spell.last);
        if month != last && text.chars().count() <= at {
            let padding = at - text.chars().count();
            let name = words.short_month(week.spell.last);
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

fn each(columns: &[&[Part]], mark: impl Fn(&[Part]) -> char) -> String {
    columns.iter().map(|c| mark(c)).collect()
}

/// `9`: in nine years of ten there is a frost in the week.
fn frost_mark(column: &[Part]) -> char {
    let share = mean(column, |w| {
        w.spell.frost_years as f64 / w.spell.years.max(1) as f64
    });
    match (share * 10.0).round() as u32 {
        0 => '.',
        tenths @ 1..=9 => char::from_digit(tenths, 10).unwrap_or('9'),
        _ => '*',
    }
}

/// A mark where all weeks of a column suit; a dot elsewhere.
fn mark(column: &[Part], suits: impl Fn(&Part) -> bool, mark: char) -> char {
    if column.iter().all(suits) { mark } else { '.' }
}

fn mean(column: &[Part], value: impl Fn(&Part) -> f64) -> f64 {
    column.iter().map(value).sum::<f64>() / column.len().max(1) as f64
}
