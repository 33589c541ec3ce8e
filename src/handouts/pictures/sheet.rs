//! The sheet of a picture: its frame with title and description, its patterns, its letters and
//! plain shapes. One unit is one point where the picture is printed 18 cm wide.

use maud::{Markup, html};

use crate::report::pictures::Said;

use super::super::safe::{plain, steady};
use super::lettering::{LINE, SIZE, width, wrap};

/// 18 cm in points of 1/72 inch.
pub const WIDTH: f64 = 510.0;

/// A pattern that tells a surface by lines or dots instead of a colour.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pattern {
    /// Slanting lines: no school.
    Hatch,
    /// Lines both ways: not to be used.
    Net,
    /// Dots: on the shelf, or a grade's own.
    Dots,
    /// Level lines: drying.
    Level,
}

/// All patterns.
const ALL: [Pattern; 4] = [Pattern::Hatch, Pattern::Net, Pattern::Dots, Pattern::Level];

impl Pattern {
    fn name(self) -> &'static str {
        match self {
            Pattern::Hatch => "hatch",
            Pattern::Net => "net",
            Pattern::Dots => "dots",
            Pattern::Level => "level",
        }
    }

    fn draw(self) -> Markup {
        html! {
            @match self {
                Pattern::Hatch => path d="M-1,1l2,-2M0,6l6,-6M5,7l2,-2" stroke="#767676" stroke-width="0.7" fill="none" {},
                Pattern::Net => path d="M0,6l6,-6M0,0l6,6" stroke="#767676" stroke-width="0.6" fill="none" {},
                Pattern::Dots => circle cx="3" cy="3" r="0.9" fill="#444" {},
                Pattern::Level => path d="M0,1.5h6M0,4.5h6" stroke="#444" stroke-width="0.8" fill="none" {},
            }
        }
    }
}

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
            defs {
                @for pattern in ALL {
                    pattern id=(format!("{name}-{}", pattern.name())) width="6" height="6"
                        patternUnits="userSpaceOnUse" { (pattern.draw()) }
                }
            }
            (body)
        }
    }
}

/// What a shape is filled with.
pub fn fill(name: &str, pattern: Pattern) -> String {
    format!("url(#{name}-{})", pattern.name())
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

/// A wrapped text over the whole width from a height on, and the height under it.
pub fn paragraph(top: f64, content: &str) -> (Markup, f64) {
    let lines = wrap(content, 0.95 * WIDTH, usize::MAX).unwrap_or_default();
    let base = |at: usize| top + SIZE + LINE * at as f64;
    let below = top + LINE * lines.len() as f64;
    let body = html! {
        @for (at, line) in lines.iter().enumerate() {
            (text(0.0, base(at), Anchor::Start, line))
        }
    };
    (body, below)
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
