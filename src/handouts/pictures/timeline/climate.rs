//! Frost and warmth of the past years: tints behind the rows, and two bands under them. The tints
//! are ten steps of lightness (CIE L*) apart, so that a copier keeps them apart.

use maud::{Markup, html};

use crate::words::warmth::Climate;

use super::super::lettering::{LINE, SIZE};
use super::super::sheet::{Anchor, Area, line, n, points, surface, text};
use super::super::weeks::Scale;

/// Behind weeks with frost in half of the years.
const LIKELY: &str = "likely";

/// Behind weeks with frost in one year of ten.
const POSSIBLE: &str = "possible";

/// Height of the band of frost.
const FROST: f64 = 22.0;

/// The tints behind the rows.
pub fn behind(seen: &Climate, scale: &Scale, top: f64, bottom: f64) -> Markup {
    let tint = |frost: f64| match frost {
        f if f >= 0.5 => Some(LIKELY),
        f if f >= 0.1 => Some(POSSIBLE),
        _ => None,
    };
    html! {
        g.frosty {
            @for (week, of) in seen.weeks.iter().enumerate() {
                @if let Some(tint) = tint(of.frost) {
                    (surface(scale.week(week, top, bottom - top), tint))
                }
            }
        }
    }
}

/// The sign of the legend: both tints.
pub fn sign(x: f64, y: f64) -> Markup {
    let both = |x: f64| Area {
        x,
        y: y - 4.5,
        w: 8.0,
        h: 9.0,
    };
    html! {
        g.frosty { (surface(both(x - 8.0), POSSIBLE)) (surface(both(x), LIKELY)) }
        rect.frame x=(n(x - 8.0)) y=(n(y - 4.5)) width="16" height="9" {}
    }
}

/// Both bands from a height on, and the height under them.
pub fn bands(seen: &Climate, scale: &Scale, top: f64) -> (Markup, f64) {
    let warmth = top + FROST + 10.0;
    let steps = seen.ticks.len().saturating_sub(1).max(1) as f64;
    let high = LINE * steps.max(2.0);
    let body = html! {
        (frost(seen, scale, top))
        (warm(seen, scale, warmth, high))
    };
    (body, warmth + high + 2.0)
}

/// Two lines of a label.
fn label(top: f64, lines: [&str; 2]) -> Markup {
    html! {
        @for (at, words) in lines.iter().enumerate() {
            (text(0.0, top + SIZE - 1.0 + LINE * at as f64, Anchor::Start, words))
        }
    }
}

fn frame(scale: &Scale, top: f64, high: f64) -> Markup {
    html! {
        rect.frame x=(n(scale.left)) y=(n(top)) width=(n(scale.right - scale.left))
            height=(n(high)) {}
    }
}

fn frost(seen: &Climate, scale: &Scale, top: f64) -> Markup {
    let column = |week: usize, share: f64| {
        let high = FROST * share;
        scale.week(week, top + FROST - high, high)
    };
    let half = top + FROST / 2.0;
    let [all, none] = seen.frost_ticks;
    html! {
        (label(top, seen.frost_label))
        (text(scale.left - 4.0, top + SIZE - 2.0, Anchor::End, all))
        (text(scale.left - 4.0, top + FROST + 1.0, Anchor::End, none))
        g.frost {
            @for (week, of) in seen.weeks.iter().enumerate() {
                (surface(column(week, of.frost), "share"))
            }
        }
        (line((scale.left, half), (scale.right, half), "ink", 0.5))
        (frame(scale, top, FROST))
    }
}

fn warm(seen: &Climate, scale: &Scale, top: f64, high: f64) -> Markup {
    let low = seen.ticks.first().map_or(0.0, |(low, _)| low.0);
    let all = seen.ticks.last().map_or(1.0, |(high, _)| high.0) - low;
    let y = |c: f64| top + high - high * (c - low) / all;
    let middle = |week: usize| {
        let Area { x, w, .. } = scale.week(week, 0.0, 0.0);
        x + w / 2.0
    };
    let along = |of: &dyn Fn(usize) -> f64| -> Vec<(f64, f64)> {
        let weeks = 0..seen.weeks.len();
        weeks.map(|week| (middle(week), y(of(week)))).collect()
    };
    let mut edge = along(&|week| seen.weeks[week].warm.0);
    edge.extend(along(&|week| seen.weeks[week].cold.0).into_iter().rev());
    let line_of = along(&|week| seen.weeks[week].middle.0);
    html! {
        (label(top, seen.warmth_label))
        @for (c, said) in &seen.ticks {
            (text(scale.left - 4.0, y(c.0) + 3.0, Anchor::End, said))
        }
        g.warmth {
            polygon.band points=(points(&edge)) {}
            @for (c, _) in &seen.ticks {
                (line((scale.left, y(c.0)), (scale.right, y(c.0)), "rule", 0.4))
            }
            polyline.middle points=(points(&line_of)) {}
        }
        (frame(scale, top, high))
    }
}
