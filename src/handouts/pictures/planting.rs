//! The pattern of planting: a piece of bed to scale with its plants, and the distances between them.

use maud::{Markup, html};

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

/// Its width with the distance beside it, and its height with name and distance.
fn size(piece: &Piece<'_>) -> (f64, f64) {
    let scale = scale(piece);
    let wide = piece.pattern.length.0 * scale + 12.0 + width(&piece.apart);
    let name = SWATCH + bold_width(&piece.pattern.ingredient.name);
    (wide.max(name), OVER + piece.pattern.width.0 * scale + UNDER)
}

fn piece_at(piece: &Piece<'_>, (x, y): (f64, f64)) -> Markup {
    let (scale, of) = (scale(piece), &piece.pattern);
    let bed = Area {
        x: x + 1.0,
        y: y + OVER,
        w: of.length.0 * scale,
        h: of.width.0 * scale,
    };
    let (between, apart) = (
        of.between_rows.0 / 100.0 * scale,
        of.apart.0 / 100.0 * scale,
    );
    // Rows begin half a distance from the edge, and so do plants in a row; what is left is shared out at both ends.
    let spare = |room: f64, step: f64, count: u32| (room - step * f64::from(count)).max(0.0) / 2.0;
    let first = bed.x + spare(bed.w, between, of.rows) + between / 2.0;
    let top = bed.y + spare(bed.h, apart, of.in_row) + apart / 2.0;
    let size = (between.min(apart) * 0.28).clamp(1.0, 7.0);
    let next = if of.rows > 1 {
        first + between
    } else {
        bed.right()
    };
    let below = if of.in_row > 1 {
        top + apart
    } else {
        bed.bottom()
    };
    html! {
        g.planting.(hue(piece.cloth)) {
            (woven(piece.cloth, Area { x: x + 1.0, y: y + 2.0, w: SWATCH - 6.0, h: 9.0 }))
            (hued(x + SWATCH, y + LINE - 2.0, Anchor::Start, &of.ingredient.name))
            rect.ground x=(n(bed.x)) y=(n(bed.y)) width=(n(bed.w)) height=(n(bed.h)) {}
            @for row in 0..of.rows {
                @for plant in 0..of.in_row {
                    circle.cloth cx=(n(first + between * f64::from(row))) cy=(n(top + apart * f64::from(plant))) r=(n(size)) {}
                }
            }
            (bracket((first, bed.bottom() + 4.0), (next, bed.bottom() + 4.0), (0.0, -3.0)))
            (text(first, bed.bottom() + 5.0 + LINE, Anchor::Start, &piece.between_rows))
            (bracket((bed.right() + 4.0, top), (bed.right() + 4.0, below), (-3.0, 0.0)))
            (text(bed.right() + 8.0, (top + below) / 2.0 + 3.5, Anchor::Start, &piece.apart))
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
