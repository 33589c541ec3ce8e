//! Marks, told apart by shape and letter, and spans, told apart by pattern.

use maud::{Markup, html};

use crate::calendar::Date;
use crate::plan::StepKind;
use crate::report::pictures::timeline::{Key, Span, SpanKind};

use super::super::sheet::{Area, Pattern, fill, line, n, points};
use super::super::weeks::Scale;
use super::climate::{LIKELY, POSSIBLE};

/// The widest sign, with the gap to the next.
pub const WIDE: f64 = 15.5;

/// Height of the spans.
const HIGH: f64 = 9.0;

/// A step: a line at its day (the first of the two places), its sign at the second.
pub fn mark(kind: StepKind, letter: &str, day: Date, places: (f64, f64), y: f64) -> Markup {
    let (at, x) = places;
    html! {
        g.mark data-step=(letter) data-day=(day) {
            (line((at, y - 6.9), (at, y + 6.9), "#000", 1.0))
            (sign(kind, letter, x, y))
        }
    }
}

fn sign(kind: StepKind, letter: &str, x: f64, y: f64) -> Markup {
    let around = |shape: &[(f64, f64)]| {
        let moved: Vec<_> = shape.iter().map(|(dx, dy)| (x + dx, y + dy)).collect();
        points(&moved)
    };
    html! {
        @match kind {
            StepKind::Sow => circle.sign cx=(n(x)) cy=(n(y)) r="6.3" {},
            StepKind::PotUp => polygon.sign points=(around(&[(-5.8, -5.8), (5.8, -5.8), (5.8, 5.8), (-5.8, 5.8)])) {},
            StepKind::PlantOut => polygon.sign points=(around(&[(0.0, -6.9), (6.9, 0.0), (0.0, 6.9), (-6.9, 0.0)])) {},
            StepKind::Pick => polygon.sign points=(around(&[(-5.8, -6.2), (5.8, -6.2), (5.8, 2.6), (0.0, 6.9), (-5.8, 2.6)])) {},
            StepKind::Thin | StepKind::Harden | StepKind::Cure => polygon.sign
                points=(around(&[(-3.6, -6.2), (3.6, -6.2), (7.0, 0.0), (3.6, 6.2), (-3.6, 6.2), (-7.0, 0.0)])) {},
        }
        text.letter x=(n(x)) y=(n(y + 3.2)) text-anchor="middle" { (letter) }
    }
}

/// A span of days.
pub fn span(name: &str, span: &Span, scale: &Scale, middle: f64) -> Markup {
    let area = scale.span(span.from, span.to, middle - HIGH / 2.0, HIGH);
    html! { g.span data-from=(span.from) data-to=(span.to) { (bar(name, span.kind, area)) } }
}

fn bar(name: &str, kind: SpanKind, area: Area) -> Markup {
    let pattern = match kind {
        SpanKind::Shelf => fill(name, Pattern::Dots),
        SpanKind::Bed => "#fff".to_owned(),
        SpanKind::Pick => "#333".to_owned(),
        SpanKind::Cure => fill(name, Pattern::Level),
    };
    let rect = |fill: &str| {
        html! {
            rect.bar x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) fill=(fill) {}
        }
    };
    html! { (rect("#fff")) (rect(&pattern)) }
}

/// The sign of an entry of the legend.
pub fn in_legend(name: &str, key: Key, x: f64, y: f64) -> Markup {
    let box_of = |w: f64| Area {
        x: x - w / 2.0,
        y: y - HIGH / 2.0,
        w,
        h: HIGH,
    };
    let surface = |area: Area, fill: &str| {
        html! {
            rect.bar x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) fill=(fill) {}
        }
    };
    match key {
        Key::Mark(kind, letter) => sign(kind, letter, x, y),
        Key::Span(kind) => bar(name, kind, box_of(16.0)),
        Key::Closed => surface(box_of(16.0), &fill(name, Pattern::Hatch)),
        Key::Frost => html! {
            (surface(box_of(16.0), POSSIBLE))
            (surface(Area { w: 8.0, ..box_of(16.0) }, LIKELY))
        },
    }
}
