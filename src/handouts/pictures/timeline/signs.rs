//! Marks, told apart by shape and letter, and spans, told apart by pattern.

use maud::{Markup, html};

use crate::calendar::Date;
use crate::facts::life::{Span, SpanKind};
use crate::report::pictures::timeline::{Key, Sign};

use super::super::pattern::{Pattern, filled, swatch};
use super::super::sheet::{Area, line, n, points};
use super::super::weeks::Scale;
use super::climate::{LIKELY, POSSIBLE};

/// The widest sign, with the gap to the next.
pub const WIDE: f64 = 15.5;

/// Height of the spans.
const HIGH: f64 = 9.0;

/// A step: a line at its day (the first of the two places), its sign at the second.
pub fn mark(shape: Sign, letter: &str, day: Date, places: (f64, f64), y: f64) -> Markup {
    let (at, x) = places;
    html! {
        g.mark data-step=(letter) data-day=(day) {
            (line((at, y - 6.9), (at, y + 6.9), "#000", 1.0))
            (sign(shape, letter, x, y))
        }
    }
}

fn sign(shape: Sign, letter: &str, x: f64, y: f64) -> Markup {
    let around = |corners: &[(f64, f64)]| {
        let moved: Vec<_> = corners.iter().map(|(dx, dy)| (x + dx, y + dy)).collect();
        points(&moved)
    };
    html! {
        @match shape {
            Sign::Disc => circle.sign cx=(n(x)) cy=(n(y)) r="6.3" {},
            Sign::Square => polygon.sign points=(around(&[(-5.8, -5.8), (5.8, -5.8), (5.8, 5.8), (-5.8, 5.8)])) {},
            Sign::Diamond => polygon.sign points=(around(&[(0.0, -6.9), (6.9, 0.0), (0.0, 6.9), (-6.9, 0.0)])) {},
            Sign::Shield => polygon.sign points=(around(&[(-5.8, -6.2), (5.8, -6.2), (5.8, 2.6), (0.0, 6.9), (-5.8, 2.6)])) {},
            Sign::Hexagon => polygon.sign
                points=(around(&[(-3.6, -6.2), (3.6, -6.2), (7.0, 0.0), (3.6, 6.2), (-3.6, 6.2), (-7.0, 0.0)])) {},
        }
        text.letter x=(n(x)) y=(n(y + 3.2)) text-anchor="middle" { (letter) }
    }
}

/// A span of days.
pub fn span(span: &Span, scale: &Scale, middle: f64) -> Markup {
    let area = scale.span(span.from, span.to, middle - HIGH / 2.0, HIGH);
    html! { g.span data-from=(span.from) data-to=(span.to) { (bar(span.kind, area)) } }
}

fn bar(kind: SpanKind, area: Area) -> Markup {
    let (fill, pattern) = match kind {
        SpanKind::Shelf => ("#fff", Some(Pattern::Dots)),
        SpanKind::Bed => ("#fff", None),
        SpanKind::Pick => ("#333", None),
        SpanKind::Cure => ("#fff", Some(Pattern::Level)),
    };
    html! { (rect(area, fill)) @if let Some(pattern) = pattern { (filled(area, pattern)) } }
}

fn rect(area: Area, fill: &str) -> Markup {
    html! {
        rect.bar x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) fill=(fill) {}
    }
}

/// The sign of an entry of the legend.
pub fn in_legend(key: Key, x: f64, y: f64) -> Markup {
    let box_of = |w: f64| Area {
        x: x - w / 2.0,
        y: y - HIGH / 2.0,
        w,
        h: HIGH,
    };
    match key {
        Key::Mark(shape, letter) => sign(shape, letter, x, y),
        Key::Span(kind) => bar(kind, box_of(16.0)),
        Key::Closed => swatch(Pattern::Hatch, x, y),
        Key::Frost => html! {
            (rect(box_of(16.0), POSSIBLE))
            (rect(Area { w: 8.0, ..box_of(16.0) }, LIKELY))
        },
    }
}
