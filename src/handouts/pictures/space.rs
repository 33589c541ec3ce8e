//! Shelf and beds by week: columns of flats or strips under the line of those that there are.

use maud::{Markup, html};

use crate::calendar::plus_days;
use crate::report::pictures::space::{Row, Space};

use super::lettering::{LINE, SIZE, shorten, width};
use super::pattern::{Pattern, filled, swatch};
use super::sheet::{Anchor, Area, Paper, frame, legend, line, n, text};
use super::weeks::{Scale, closed_sign, ground, head};

/// Height of a flat, if there is room, and of all of them at the most.
const FLAT: f64 = 10.0;
const MOST: f64 = 50.0;

/// Between shelf and mat.
const GAP: f64 = 14.0;

/// What the legend explains.
#[derive(Clone, Copy)]
enum Key {
    There,
    NoSchool,
    Closed,
}

/// The picture.
pub fn draw(name: &str, shown: &Space, paper: Paper) -> Markup {
    let scale = Scale::new(shown.weeks.along.horizon, paper.before_weeks(), paper);
    let (top, first) = head(&shown.weeks, &scale);
    let mut y = first + 8.0;
    let mut rows = Vec::new();
    for row in &shown.rows {
        let high = (FLAT * f64::from(row.used.capacity)).clamp(3.0 * LINE, MOST);
        rows.push(draw_row(row, &scale, (y, high)));
        y += high + GAP;
    }
    let bottom = y - GAP + 4.0;
    let mut entries = vec![(Key::There, shown.there)];
    entries.extend(shown.weeks.closed.map(|said| (Key::NoSchool, said)));
    entries.extend(shown.closed.map(|said| (Key::Closed, said)));
    let (key, end) = legend(paper, bottom + 6.0, &entries, |key, x, y| match key {
        Key::There => line((x - 8.0, y), (x + 8.0, y), "ink", 2.0),
        Key::NoSchool => closed_sign(x, y),
        Key::Closed => swatch(Pattern::Net, x, y),
    });
    let body = html! {
        (top)
        (ground(&shown.weeks, &scale, first, bottom))
        @for row in &rows { (row) }
        (key)
    };
    frame(name, &shown.said, (paper, end + 3.0), &body)
}

/// Neighbouring weeks with as many flats: first, one past the last, flats.
fn runs(weeks: &[u32]) -> Vec<(usize, usize, u32)> {
    let mut runs: Vec<(usize, usize, u32)> = Vec::new();
    for (week, flats) in weeks.iter().enumerate() {
        match runs.last_mut() {
            Some((_, to, same)) if same == flats => *to = week + 1,
            _ => runs.push((week, week + 1, *flats)),
        }
    }
    runs.retain(|(.., flats)| *flats > 0);
    runs
}

fn draw_row(row: &Row, scale: &Scale, (top, high): (f64, f64)) -> Markup {
    let flat = high / f64::from(row.used.capacity.max(1));
    let column = |(from, to, flats): (usize, usize, u32)| {
        let x = scale.week(from, 0.0, 0.0).x;
        let w = scale.week(to - 1, 0.0, 0.0).right() - x;
        let h = flat * f64::from(flats);
        Area {
            x,
            y: top + high - h,
            w,
            h,
        }
    };
    let there = runs(&row.there).into_iter().map(&column);
    let there: Vec<Area> = there.collect();
    let runs = runs(&row.used.weeks);
    let always = (scale.left, scale.right);
    let (open, until) = row.open.map_or(always, |(from, to)| {
        (scale.x(from), scale.x(plus_days(to, 1)))
    });
    let shut = |x: f64, to: f64| Area {
        x,
        y: top,
        w: to - x,
        h: high,
    };
    let room = scale.left - 18.0;
    html! {
        g.flats {
            (text(0.0, top + SIZE, Anchor::Start, &shorten(&row.name, room)))
            (text(0.0, top + SIZE + LINE, Anchor::Start, &shorten(&row.has, room)))
            (text(scale.left - 4.0, top + high, Anchor::End, "0"))
            @if open > scale.left { (filled(shut(scale.left, open), Pattern::Net)) }
            @if until < scale.right { (filled(shut(until, scale.right), Pattern::Net)) }
            @for run in &runs {
                @let area = column(*run);
                rect.stand x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h))
                    data-flats=(run.2) {}
            }
            @for run in &runs {
                @let area = column(*run);
                @let number = run.2.to_string();
                @if width(&number) + 2.0 <= area.w && area.h >= SIZE + 1.0 {
                    (text(area.x + area.w / 2.0, area.y + SIZE + 0.5, Anchor::Middle, &number))
                }
            }
            (line((scale.left, top + high), (scale.right, top + high), "ink", 0.8))
            @for (at, area) in there.iter().enumerate() {
                (line((area.x, area.y), (area.right(), area.y), "ink", 2.0))
                @if let Some(before) = at.checked_sub(1).and_then(|at| there.get(at)) {
                    (line((area.x, before.y), (area.x, area.y), "ink", 2.0))
                }
            }
        }
    }
}
