//! The weeks along a picture: from a day to its place, the head with months and Mondays, and
//! the bands of breaks and days off behind it.

use maud::{Markup, html};

use crate::calendar::{Date, Horizon, plus_days};
use crate::words::along::Weeks;

use super::lettering::{LINE, SIZE, WIDER, shorten, width};
use super::sheet::{Anchor, Area, Paper, line, n, surface, text};

/// The longest name over a band.
const NAME: f64 = 150.0;

/// From days to places along the picture.
#[derive(Debug, Clone, Copy)]
pub struct Scale {
    horizon: Horizon,
    /// Where the first day begins.
    pub left: f64,
    /// Where the last day ends.
    pub right: f64,
}

impl Scale {
    /// The days of a plan from a place on to the right edge.
    pub fn new(horizon: Horizon, left: f64, paper: Paper) -> Self {
        let right = paper.width() - 1.0;
        Self {
            horizon,
            left,
            right,
        }
    }

    /// Where a day begins; days outside the plan lie on its edge.
    pub fn x(&self, day: Date) -> f64 {
        let days = (day - self.horizon.first()).num_days() as f64;
        let all = self.horizon.days() as f64;
        self.left + (self.right - self.left) * (days / all).clamp(0.0, 1.0)
    }

    /// The middle of a day.
    pub fn middle(&self, day: Date) -> f64 {
        (self.x(day) + self.x(plus_days(day, 1))) / 2.0
    }

    /// From the beginning of a day to the end of another.
    pub fn span(&self, from: Date, to: Date, y: f64, h: f64) -> Area {
        let x = self.x(from);
        let w = self.x(plus_days(to, 1)) - x;
        Area { x, y, w, h }
    }

    /// One week.
    pub fn week(&self, week: usize, y: f64, h: f64) -> Area {
        let monday = self.horizon.monday(week);
        self.span(monday, plus_days(monday, 6), y, h)
    }
}

/// A name over a band: where it begins, on which line, and the middle of its band.
struct Name {
    text: String,
    x: f64,
    line: usize,
    middle: f64,
}

/// Names over bands and lines: each on the lowest line on which it meets no other.
fn names(weeks: &Weeks, scale: &Scale) -> Vec<Name> {
    let bands = weeks.along.breaks.iter().map(|b| {
        let area = scale.span(b.from, b.to, 0.0, 0.0);
        (area.x + area.w / 2.0, b.name.as_str())
    });
    let days = weeks.marked.iter();
    let days = days.map(|day| (scale.middle(day.day), day.name.as_str()));
    let mut all: Vec<(f64, &str)> = bands.chain(days).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut ends: Vec<f64> = Vec::new();
    let place = |(middle, name): (f64, &str)| {
        let text = shorten(name, NAME);
        let wide = width(&text);
        let last = scale.right - wide * WIDER;
        let x = (middle - wide / 2.0).clamp(scale.left, last.max(scale.left));
        let line = ends.iter().position(|end| *end + 6.0 <= x);
        let line = line.unwrap_or(ends.len());
        if line == ends.len() {
            ends.push(0.0);
        }
        if let Some(end) = ends.get_mut(line) {
            *end = x + wide;
        }
        Name {
            text,
            x,
            line,
            middle,
        }
    };
    all.into_iter().map(place).collect()
}

/// The head of a picture and its height: names, months, Mondays.
pub fn head(weeks: &Weeks, scale: &Scale) -> (Markup, f64) {
    let names = names(weeks, scale);
    let lines = names.iter().map(|name| name.line + 1).max().unwrap_or(0);
    let under = LINE * lines as f64 + 2.0;
    let base = |at: usize| LINE * (lines - at) as f64 - 2.0;
    let top = under + 2.0 * LINE + 4.0;
    let body = html! {
        @for name in &names {
            (line((name.middle, base(name.line) + 1.0), (name.middle, under), "soft", 0.6))
        }
        @for name in &names { (text(name.x, base(name.line), Anchor::Start, &name.text)) }
        (months(weeks, scale, under + SIZE))
        @if width(weeks.label) + 4.0 <= scale.left {
            (text(scale.left - 4.0, under + LINE + SIZE, Anchor::End, weeks.label))
        }
        (mondays(weeks, scale, under + LINE + SIZE))
    };
    (body, top)
}

/// The longest name of every month that fits before the next one.
fn months(weeks: &Weeks, scale: &Scale, base: f64) -> Markup {
    let ends = weeks.months.iter().skip(1).map(|month| scale.x(month.from));
    let ends = ends.chain([scale.right]);
    html! {
        @for (month, end) in weeks.months.iter().zip(ends) {
            @let x = scale.x(month.from);
            @if let Some(name) = month.names.iter().find(|name| x + width(name) + 4.0 <= end) {
                (text(x + 1.0, base, Anchor::Start, name))
            }
        }
    }
}

/// Mondays, as many as there is room for.
fn mondays(weeks: &Weeks, scale: &Scale, base: f64) -> Markup {
    let one = scale.week(0, 0.0, 0.0).w;
    let step = (16.0 / one).ceil().max(1.0) as usize;
    html! {
        @for (week, day) in weeks.mondays.iter().enumerate() {
            @let x = scale.week(week, 0.0, 0.0).x;
            @let named = week % step == 0 && x + width(day) <= scale.right;
            @if named { (text(x, base, Anchor::Start, day)) }
            (line((x, base + 2.0), (x, base + if named { 5.0 } else { 4.0 }), "ink", 0.6))
        }
    }
}

/// Behind the rows between two heights: months, breaks, days off, feast and rain date, and the frame.
pub fn ground(weeks: &Weeks, scale: &Scale, top: f64, bottom: f64) -> Markup {
    html! {
        g.closed {
            @for span in &weeks.along.breaks {
                (closed(scale.span(span.from, span.to, top, bottom - top)))
            }
            @for day in &weeks.along.days_off {
                (closed(scale.span(*day, *day, top, bottom - top)))
            }
        }
        @for month in &weeks.months {
            (line((scale.x(month.from), top), (scale.x(month.from), bottom), "rule", 0.5))
        }
        g.marked {
            @for day in &weeks.marked {
                @let x = n(scale.middle(day.day));
                line x1=(x) y1=(n(top)) x2=(x) y2=(n(bottom)) class="feast" data-day=(day.day) {}
            }
        }
        rect.frame x=(n(scale.left)) y=(n(top)) width=(n(scale.right - scale.left))
            height=(n(bottom - top)) {}
    }
}

/// A band of days without school: a tint between two thin lines, which stay in grey.
fn closed(area: Area) -> Markup {
    html! {
        (surface(area, "rest"))
        (line((area.x, area.y), (area.x, area.bottom()), "soft", 0.5))
        (line((area.right(), area.y), (area.right(), area.bottom()), "soft", 0.5))
    }
}

/// The sign of such a band in a legend.
pub fn closed_sign(x: f64, y: f64) -> Markup {
    let area = Area {
        x: x - 8.0,
        y: y - 4.5,
        w: 16.0,
        h: 9.0,
    };
    html! { g.closed { (closed(area)) } }
}
