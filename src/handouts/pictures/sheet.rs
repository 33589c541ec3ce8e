//! The sheet of a picture: its frame with title and description, its letters and
//! plain shapes. One unit is one point where the picture is printed 18 cm wide.

use maud::{Markup, html};

use crate::harmless::plain;
use crate::plan::Stand;
use crate::report::pictures::Said;

use super::super::safe::steady;
use super::lettering::{LINE, SIZE, shorten, width};

/// On how wide a paper a picture is drawn. On a narrow one it is laid out anew, so that its letters stay as large.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// A sheet, or a screen as wide: 18 cm in points of 1/72 inch.
    Sheet,
    /// A phone.
    Phone,
    /// A sheet of A3 on its side, for a wall.
    Wall,
}

impl Paper {
    /// Its width in units.
    pub fn width(self) -> f64 {
        match self {
            Self::Sheet => 510.0,
            Self::Phone => 320.0,
            Self::Wall => 900.0,
        }
    }

    /// Room for names before the weeks of beds and shelf.
    pub fn before_weeks(self) -> f64 {
        match self {
            Self::Sheet | Self::Wall => 92.0,
            Self::Phone => 62.0,
        }
    }

    /// The class of what is shown on it alone.
    pub fn class(self) -> &'static str {
        match self {
            Self::Sheet | Self::Wall => "on-sheet",
            Self::Phone => "on-phone",
        }
    }

    /// The name of a picture on it: a page holds both.
    pub fn name(self, picture: &str) -> String {
        match self {
            Self::Sheet | Self::Wall => picture.to_owned(),
            Self::Phone => format!("{picture}-phone"),
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

/// The picture of a name, which no other picture of the page has, over the whole paper.
pub fn frame(name: &str, said: &Said, (paper, height): (Paper, f64), body: &Markup) -> Markup {
    sized_frame((name, None), said, paper, (paper.width(), height), body)
}

/// The same, no wider than what is drawn; its letters are as large as those of the page.
pub fn narrow_frame(
    name: &str,
    said: &Said,
    paper: Paper,
    size: (f64, f64),
    body: &Markup,
) -> Markup {
    let wide = format!("{}pt", n(size.0));
    sized_frame((name, Some(wide)), said, paper, size, body)
}

/// A picture of a size in units, as wide as there is room or as it says.
fn sized_frame(
    (name, shown_wide): (&str, Option<String>),
    said: &Said,
    paper: Paper,
    (wide, high): (f64, f64),
    body: &Markup,
) -> Markup {
    let name = paper.name(name);
    let (title, description) = (format!("{name}-title"), format!("{name}-desc"));
    html! {
        svg.picture.(paper.class()) id=(name) role="img" viewBox=(format!("0 0 {} {}", n(wide), n(high)))
            width=[shown_wide] aria-labelledby=(title) aria-describedby=(description) {
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

/// A filled rectangle without an edge, of a class that colours it.
pub fn surface(area: Area, class: &str) -> Markup {
    html! { rect class=(class) x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {} }
}

/// A straight line in one of the colours of the page.
pub fn line(from: (f64, f64), to: (f64, f64), ink: &str, thick: f64) -> Markup {
    html! {
        line class=(ink) x1=(n(from.0)) y1=(n(from.1)) x2=(n(to.0)) y2=(n(to.1))
            stroke-width=(n(thick)) {}
    }
}

/// Paper under a word of a width that begins a little after a place; `y` is its base line.
pub fn plate(x: f64, y: f64, wide: f64) -> Markup {
    surface(
        Area {
            x,
            y: y - SIZE + 0.5,
            w: wide + 2.0,
            h: LINE,
        },
        "plate",
    )
}

/// A text in bold letters of the hue of its group.
pub fn hued(x: f64, y: f64, anchor: Anchor, content: &str) -> Markup {
    html! { text.hued x=(n(x)) y=(n(y)) text-anchor=(anchor.name()) { (steady(content)) } }
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
    paper: Paper,
    top: f64,
    entries: &[(K, &str)],
    sign: impl Fn(K, f64, f64) -> Markup,
) -> (Markup, f64) {
    let row = LINE + 5.0;
    let (mut x, mut y) = (0.0, top);
    let mut placed = Vec::new();
    for (key, said) in entries {
        let said = shorten(said, paper.width() - SIGN - 2.0);
        let wide = SIGN + width(&said) + 12.0;
        if x > 0.0 && x + wide - 12.0 > paper.width() {
            (x, y) = (0.0, y + row);
        }
        placed.push((*key, said, x, y + row / 2.0));
        x += wide;
    }
    let body = html! {
        @for (key, said, x, y) in placed {
            (sign(key, x + SIGN / 2.0 - 2.0, y))
            (text(x + SIGN, y + SIZE / 2.0 - 1.2, Anchor::Start, &said))
        }
    };
    (body, if entries.is_empty() { top } else { y + row })
}
