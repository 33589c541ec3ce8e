//! The timeline: rows with spans and marks, frost behind them, frost and warmth under them.

mod climate;
mod signs;

use maud::{Markup, html};

use crate::report::pictures::timeline::{Mark, Row, Timeline};

use super::lettering::{LINE, SIZE, shorten};
use super::sheet::{Anchor, frame, legend, line, text};
use super::weeks::{Scale, before, behind, head};

/// Where the weeks begin: left of it is the room for names.
pub const LEFT: f64 = 120.0;

/// More rows than this are drawn closer, with names on one line.
const ROOMY: usize = 18;

/// From row to row then: as close as the signs allow, so that 36 rows fit on a sheet.
const CLOSE: f64 = 13.9;

/// The picture.
pub fn draw(name: &str, shown: &Timeline) -> Markup {
    let scale = Scale::new(shown.weeks.along.horizon, LEFT);
    let (top, first) = head(&shown.weeks, &scale);
    let pitch = if shown.rows.len() > ROOMY {
        CLOSE
    } else {
        26.0
    };
    let last = first + pitch * shown.rows.len() as f64;
    let (bands, bottom) = match shown.climate.as_ref().filter(|_| shown.bands) {
        Some(seen) => climate::bands(seen, &scale, last + 8.0),
        None => (html! {}, last),
    };
    let (key, under) = legend(bottom + 8.0, &shown.legend, |key, x, y| {
        signs::in_legend(key, x, y)
    });
    let body = html! {
        (top)
        @if let Some(seen) = &shown.climate { (climate::behind(seen, &scale, first, last)) }
        (behind(&shown.weeks, &scale, first, last))
        (before(&shown.weeks, &scale, first, last))
        @for (at, row) in shown.rows.iter().enumerate() {
            (draw_row(row, &scale, first + pitch * at as f64, pitch))
        }
        (bands)
        (key)
    };
    frame(name, &shown.said, under + 3.0, &body)
}

/// One planting.
fn draw_row(row: &Row, scale: &Scale, top: f64, pitch: f64) -> Markup {
    let middle = top + pitch / 2.0;
    let room = LEFT - 6.0;
    let lines = match pitch >= 2.0 * LINE {
        true => vec![&row.grade, &row.name],
        false => vec![&row.short],
    };
    let base = middle - LINE * (lines.len() as f64 - 1.0) / 2.0 + SIZE / 2.0 - 1.2;
    html! {
        g.row {
            (line((0.0, top), (scale.right, top), "#bbb", 0.5))
            @for (at, text_line) in lines.iter().enumerate() {
                (text(0.0, base + LINE * at as f64, Anchor::Start, &shorten(text_line, room)))
            }
            @for span in &row.life.spans { (signs::span(span, scale, middle)) }
            @for (mark, x) in apart(row, scale) {
                (signs::mark(mark.sign, mark.letter, mark.day, (scale.middle(mark.day), x), middle))
            }
        }
    }
}

/// The marks of a row with the places of their signs: at their day, or beside it where two would
/// lie on each other or one would leave the picture.
fn apart(row: &Row, scale: &Scale) -> Vec<(Mark, f64)> {
    let mut free = f64::MIN;
    let mut places: Vec<(Mark, f64)> = Vec::new();
    for mark in &row.marks {
        let x = scale.middle(mark.day).max(free);
        free = x + signs::WIDE;
        places.push((*mark, x));
    }
    let mut free = scale.right - signs::WIDE / 2.0;
    for (_, x) in places.iter_mut().rev() {
        *x = x.min(free);
        free = *x - signs::WIDE;
    }
    places
}
