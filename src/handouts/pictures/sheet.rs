//! The sheet of a picture: its frame with title and description, its letters and
//! plain shapes. One unit is one point where the picture is printed 18 cm wide.

use maud::{Markup, html};

use crate::harmless::plain;
use crate::plan::Stand;
use crate::report::pictures::Said;

use super::super::safe::steady;
use super::lettering::{LINE, SIZE, width};

/// 18 cm in points of 1/72 inch.
pub const WIDTH: f64 = 510.0;

/// Where a text stands on its point.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

impl Anchor {
    fn name(self) -> &'static str {
        match self {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        }
    }
}

/// A rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub w: f64,
    /// Height.
    pub h: f64,
}

impl Area {
    /// The right edge.
    pub fn right(self) -> f64 {
        self.x + self.w
    }

    /// The lower edge.
    pub fn bottom(self) -> f64 {
        self.y + self.h
    }

    /// True if two share more than an edge.
    pub fn meets(self, other: Self) -> bool {
        let apart = 0.01;
        self.x + apart < other.right()
            && other.x + apart < self.right()
            && self.y + apart < other.bottom()
            && other.y + apart < self.bottom()
    }
}

/// The positions of plantings that stand together, as the drawing holds them.
pub fn positions(stand: &Stand) -> String {
    let plantings = stand.plantings.iter();
    let positions: Vec<String> = plantings.map(|at| at.0.to_string()).collect();
    positions.join(" ")
}

/// A number as the drawing holds it: hundredths of a point.
pub fn n(number: f64) -> String {
    let text = format!("{:.2}", number + 0.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// The picture of a name, which no other picture of the page has.
pub fn frame(name: &str, said: &Said, height: f64, body: &Markup) -> Markup {
    let (title, description) = (format!("{name}-title"), format!("{name}-desc"));
    html! {
        svg.picture id=(name) role="img" viewBox=(format!("0 0 {} {}", n(WIDTH), n(height)))
            aria-labelledby=(title) aria-describedby=(description) {
            title id=(title) { (plain(&said.title)) }
            desc id=(description) { (plain(&said.description)) }
            (body)
        }
    }
}

/// A text on one line; `y` is its base line.
pub fn text(x: f64, y: f64, anchor: Anchor, content: &str) -> Markup {
    html! { text x=(n(x)) y=(n(y)) text-anchor=(anchor.name()) { (steady(content)) } }
}

/// The same in bold letters.
pub fn bold(x: f64, y: f64, anchor: Anchor, content: &str) -> Markup {
    html! { text.bold x=(n(x)) y=(n(y)) text-anchor=(anchor.name()) { (steady(content)) } }
}

/// A filled rectangle without an edge.
pub fn surface(area: Area, fill: &str) -> Markup {
    html! { rect x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) fill=(fill) {} }
}

/// A straight line.
pub fn line(from: (f64, f64), to: (f64, f64), stroke: &str, thick: f64) -> Markup {
    html! {
        line x1=(n(from.0)) y1=(n(from.1)) x2=(n(to.0)) y2=(n(to.1)) stroke=(stroke)
            stroke-width=(n(thick)) {}
    }
}

/// Points as the drawing holds them.
pub fn points(all: &[(f64, f64)]) -> String {
    let point = |(x, y): &(f64, f64)| format!("{},{}", n(*x), n(*y));
    all.iter().map(point).collect::<Vec<_>>().join(" ")
}

/// Room for a sign of a legend.
const SIGN: f64 = 20.0;

/// Entries of a legend in rows over the whole width from a height on, each a sign about a point
/// with its meaning, and the height under them.
pub fn legend<K: Copy>(
    top: f64,
    entries: &[(K, &str)],
    sign: impl Fn(K, f64, f64) -> Markup,
) -> (Markup, f64) {
    let row = LINE + 5.0;
    let (mut x, mut y) = (0.0, top);
    let mut placed = Vec::new();
    for (key, said) in entries {
        let wide = SIGN + width(said) + 12.0;
        if x > 0.0 && x + wide > WIDTH {
            (x, y) = (0.0, y + row);
        }
        placed.push((*key, *said, x, y + row / 2.0));
        x += wide;
    }
    let body = html! {
        @for (key, said, x, y) in placed {
            (sign(key, x + SIGN / 2.0 - 2.0, y))
            (text(x + SIGN, y + SIZE / 2.0 - 1.2, Anchor::Start, said))
        }
    };
    (body, if entries.is_empty() { top } else { y + row })
}
