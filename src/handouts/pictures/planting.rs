//! The pattern of planting: a piece of bed to scale with its plants, and the distances between them.

use maud::{Markup, html};

use crate::facts::pattern::Lie;
use crate::report::pictures::pattern::{Patterns, Piece};

use super::lettering::{LINE, bold_width, width};
use super::sheet::{Anchor, Area, Paper, hued, line, n, narrow_frame, text};
use super::weave::{hue, woven};

/// The largest scale, in points a metre.
const LARGEST: f64 = 150.0;

/// Room for the cloth before a name.
const SWATCH: f64 = 22.0;

/// The highest piece.
const HIGHEST: f64 = 130.0;

/// The widest row of pieces, so that a map has room beside them.
const MOST: f64 = 196.0;

/// Room under a piece for its distance, and over it for its name.
const UNDER: f64 = LINE + 8.0;
const OVER: f64 = LINE + 4.0;

/// Pieces side by side, in rows.
pub fn draw(name: &str, shown: &Patterns<'_>, paper: Paper) -> Markup {
    let (mut x, mut y, mut lowest, mut widest) = (0.0, 0.0, 0.0_f64, 0.0_f64);
    let mut drawn = Vec::new();
    for piece in &shown.pieces {
        let (wide, high) = size(piece);
        if x > 0.0 && x + wide > paper.width().min(MOST) {
            (x, y) = (0.0, lowest + 8.0);
        }
        drawn.push(piece_at(piece, (x, y)));
        widest = widest.max(x + wide);
        x += wide + 24.0;
        lowest = lowest.max(y + high);
    }
    let body = html! { @for piece in &drawn { (piece) } };
    narrow_frame(
        name,
        &shown.said,
        paper,
        (widest + 2.0, lowest + 2.0),
        &body,
    )
}

/// Points a metre takes.
fn scale(piece: &Piece<'_>) -> f64 {
    let fits = |metres: f64, room: f64| room / metres.max(0.1);
    let high = fits(piece.pattern.width.0, HIGHEST);
    high.min(fits(piece.pattern.length.0, 140.0)).min(LARGEST)
}

/// The words beside a piece: from plant to plant over the width of the bed.
fn beside<'p>(piece: &'p Piece<'_>) -> Option<&'p str> {
    piece.between_rows.is_some().then_some(piece.apart.as_str())
}

/// The words under a piece: from row to row, or from plant to plant of the one row along a trellis.
fn under<'p>(piece: &'p Piece<'_>) -> &'p str {
    piece.between_rows.as_deref().unwrap_or(&piece.apart)
}

/// Its width with the distance beside it, and its height with name and distance.
fn size(piece: &Piece<'_>) -> (f64, f64) {
    let scale = scale(piece);
    let wide = piece.pattern.length.0 * scale + 12.0 + beside(piece).map_or(0.0, width);
    let name = SWATCH + bold_width(&piece.pattern.ingredient.name);
    (wide.max(name), OVER + piece.pattern.width.0 * scale + UNDER)
}

/// Plants in a line over a length: how many, and from one to the next.
struct Line {
    count: u32,
    step: f64,
}

impl Line {
    /// The first of them, half a step from the edge; what is left of the room is shared out at both ends.
    fn first(&self, edge: f64, room: f64) -> f64 {
        let spare = (room - self.step * f64::from(self.count)).max(0.0) / 2.0;
        edge + spare + self.step / 2.0
    }

    /// The second of them, or the other edge.
    fn second(&self, edge: f64, room: f64) -> f64 {
        match self.count {
            0 | 1 => edge + room,
            _ => self.first(edge, room) + self.step,
        }
    }
}

/// The plants along the length of a piece, and over its width.
fn lines(piece: &Piece<'_>, scale: f64) -> (Line, Line) {
    let of = &piece.pattern;
    let apart = Line {
        count: of.in_row,
        step: of.apart.0 / 100.0 * scale,
    };
    match of.lie {
        Lie::Across { rows, between } => {
            let step = between.0 / 100.0 * scale;
            (Line { count: rows, step }, apart)
        }
        Lie::AlongTrellis => {
            let step = of.width.0 * scale;
            (apart, Line { count: 1, step })
        }
    }
}

fn piece_at(piece: &Piece<'_>, (x, y): (f64, f64)) -> Markup {
    let (scale, of) = (scale(piece), &piece.pattern);
    let bed = Area {
        x: x + 1.0,
        y: y + OVER,
        w: of.length.0 * scale,
        h: of.width.0 * scale,
    };
    let (along, over) = lines(piece, scale);
    let (first, next) = (along.first(bed.x, bed.w), along.second(bed.x, bed.w));
    let (top, below) = (over.first(bed.y, bed.h), over.second(bed.y, bed.h));
    let size = (along.step.min(over.step) * 0.28).clamp(1.0, 7.0);
    html! {
        g.planting.(hue(piece.cloth)) {
            (woven(piece.cloth, Area { x: x + 1.0, y: y + 2.0, w: SWATCH - 6.0, h: 9.0 }))
            (hued(x + SWATCH, y + LINE - 2.0, Anchor::Start, &of.ingredient.name))
            rect.ground x=(n(bed.x)) y=(n(bed.y)) width=(n(bed.w)) height=(n(bed.h)) {}
            @for column in 0..along.count {
                @for plant in 0..over.count {
                    circle.cloth cx=(n(first + along.step * f64::from(column))) cy=(n(top + over.step * f64::from(plant))) r=(n(size)) {}
                }
            }
            (bracket((first, bed.bottom() + 4.0), (next, bed.bottom() + 4.0), (0.0, -3.0)))
            (text(first, bed.bottom() + 5.0 + LINE, Anchor::Start, under(piece)))
            @if let Some(beside) = beside(piece) {
                (bracket((bed.right() + 4.0, top), (bed.right() + 4.0, below), (-3.0, 0.0)))
                (text(bed.right() + 8.0, (top + below) / 2.0 + 3.5, Anchor::Start, beside))
            }
        }
    }
}

/// A line with short ends to one side.
fn bracket(from: (f64, f64), to: (f64, f64), out: (f64, f64)) -> Markup {
    html! {
        (line(from, to, "ink", 0.9))
        @for at in [from, to] { (line(at, (at.0 + out.0, at.1 + out.1), "ink", 0.9)) }
    }
}
