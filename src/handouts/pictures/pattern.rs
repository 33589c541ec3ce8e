//! Patterns, which differ in grey as well. They are drawn line by line, not as SVG patterns: a
//! printed page is then a tenth as large and printed in a tenth of the time.

use maud::{Markup, html};

use super::sheet::{Area, n};

/// What an area is filled with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pattern {
    /// Slanted lines: no school, never planted.
    Hatch,
    /// Slanted lines both ways: cannot be used.
    Net,
}

/// Between two lines of a pattern. All lie on one grid over the whole picture, so neighbours meet.
const GRID: f64 = 6.0;

/// An area filled with a pattern, without an edge.
pub fn filled(area: Area, pattern: Pattern) -> Markup {
    html! {
        @match pattern {
            Pattern::Hatch => path.lines d=(rising(area, GRID)) stroke-width="0.7" {},
            Pattern::Net => path.lines d=(rising(area, GRID) + &falling(area, GRID)) stroke-width="0.6" {},
        }
    }
}

/// The places of a grid between two ends, each with its number.
pub fn between(from: f64, to: f64, grid: f64, shift: f64) -> impl Iterator<Item = (i64, f64)> {
    let first = ((from - shift) / grid).ceil() as i64;
    let last = ((to - shift) / grid).floor() as i64;
    (first..=last).map(move |at| (at, at as f64 * grid + shift))
}

/// A line of a path.
pub fn stroke(from: (f64, f64), to: (f64, f64)) -> String {
    format!("M{},{}L{},{}", n(from.0), n(from.1), n(to.0), n(to.1))
}

/// Lines on which x + y is the same, cut to the area.
pub fn rising(area: Area, grid: f64) -> String {
    let (right, bottom) = (area.right(), area.bottom());
    between(area.x + area.y, right + bottom, grid, 0.0)
        .map(|(_, sum)| {
            let (left, end) = (area.x.max(sum - bottom), right.min(sum - area.y));
            stroke((left, sum - left), (end, sum - end))
        })
        .collect()
}

/// Lines on which x - y is the same, cut to the area.
pub fn falling(area: Area, grid: f64) -> String {
    let (right, bottom) = (area.right(), area.bottom());
    between(area.x - bottom, right - area.y, grid, 0.0)
        .map(|(_, apart)| {
            let (left, end) = (area.x.max(apart + area.y), right.min(apart + bottom));
            stroke((left, left - apart), (end, end - apart))
        })
        .collect()
}

/// A box of a legend around a point, filled with a pattern.
pub fn swatch(pattern: Pattern, x: f64, y: f64) -> Markup {
    let (w, h) = (16.0, 9.0);
    let (x, y) = (x - w / 2.0, y - h / 2.0);
    html! {
        rect.bar x=(n(x)) y=(n(y)) width=(n(w)) height=(n(h)) {}
        (filled(Area { x, y, w, h }, pattern))
    }
}
