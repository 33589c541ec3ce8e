//! Beds by week: a row as high as a bed has strips, what stands on them as boxes with names.

use maud::{Markup, html};

use crate::facts::cloth::Cloth;
use crate::facts::stands::Dated;
use crate::garden::Strips;
use crate::report::pictures::beds::{Beds, Row};

use super::lettering::{LINE, SIZE, shorten, width};
use super::pattern::{Pattern, filled, swatch};
use super::sheet::{Anchor, Area, Paper, frame, legend, line, n, plate, positions, text};
use super::weave::{hue, threads};
use super::weeks::{Scale, closed_sign, ground, head};

/// Height of all beds together, at the most: a sheet with head and legend.
const MOST: f64 = 570.0;

/// Height of a strip, if there is room.
const STRIP: f64 = 3.2;

/// The lowest and the highest bed.
const HIGH: (f64, f64) = (24.0, 45.0);

/// Between beds.
const GAP: f64 = 6.0;

/// A name that does not fit into its box stands over the bed.
struct Over<'s> {
    stand: &'s Dated,
    name: Option<String>,
    x: f64,
    line: usize,
}

/// The picture.
pub fn draw(name: &str, shown: &Beds, paper: Paper) -> Markup {
    let scale = Scale::new(shown.weeks.along.horizon, paper.before_weeks(), paper);
    let (top, first) = head(&shown.weeks, &scale);
    let squeeze = squeeze(&shown.rows, &scale);
    let mut y = first + 2.0;
    let mut rows = Vec::new();
    for row in &shown.rows {
        let high = wanted(row) * squeeze;
        let (drawn, below) = draw_row(row, &scale, y, high);
        rows.push(drawn);
        y = below + GAP;
    }
    let bottom = y - GAP + 2.0;
    let closed = shown.weeks.closed.map(|said| (false, said));
    let not_free = shown.not_free.map(|said| (true, said));
    let entries: Vec<(bool, &str)> = closed.into_iter().chain(not_free).collect();
    let (key, end) = legend(paper, bottom + 6.0, &entries, |taken, x, y| match taken {
        true => swatch(Pattern::Net, x, y),
        false => closed_sign(x, y),
    });
    let body = html! {
        (top)
        (ground(&shown.weeks, &scale, first, bottom))
        @for row in &rows { (row) }
        (key)
    };
    frame(name, &shown.said, (paper, end + 3.0), &body)
}

/// The height of a bed, if there is room.
fn wanted(row: &Row) -> f64 {
    (f64::from(row.carries.strips) * STRIP).clamp(HIGH.0, HIGH.1)
}

/// By how much beds must be lower, so that all of them and the names over them fit on a sheet.
fn squeeze(rows: &[Row], scale: &Scale) -> f64 {
    let all: f64 = rows.iter().map(wanted).sum();
    let room = MOST - GAP * rows.len() as f64;
    let without = (room / all).min(1.0);
    let lines = rows.iter().map(|row| {
        let high = wanted(row) * without;
        lines(&over(row, scale, high))
    });
    ((room - LINE * lines.sum::<usize>() as f64) / all).clamp(0.2, 1.0)
}

/// How many lines of names stand over a bed.
fn lines(over: &[Over<'_>]) -> usize {
    over.iter().map(|o| o.line + 1).max().unwrap_or(0)
}

/// What stands in a bed, with its names.
fn named(row: &Row) -> impl Iterator<Item = (&Dated, &str)> {
    let names = row.names.iter().map(String::as_str);
    row.carries.stands.iter().zip(names)
}

/// True if the name of a stand fits into its box, in a bed of a height.
fn fits((stand, name): (&Dated, &str), row: &Row, scale: &Scale, high: f64) -> bool {
    let bed = Area {
        x: 0.0,
        y: 0.0,
        w: 0.0,
        h: high,
    };
    let area = place(stand, row, scale, bed);
    area.h >= SIZE + 2.0 && width(name) + 8.0 <= area.w
}

/// The box of a stand in a bed whose box is given.
fn place(stand: &Dated, row: &Row, scale: &Scale, bed: Area) -> Area {
    let area = height(stand.stand.strips, row, bed);
    scale.span(stand.from, stand.to, area.y, area.h)
}

/// Some strips of a bed whose box is given, over all weeks.
fn height(strips: Strips, row: &Row, bed: Area) -> Area {
    let strip = bed.h / f64::from(row.carries.strips.max(1));
    Area {
        y: bed.y + strip * f64::from(strips.first.0),
        h: strip * f64::from(strips.count),
        ..bed
    }
}

/// One bed, and the height under it.
fn draw_row(row: &Row, scale: &Scale, top: f64, high: f64) -> (Markup, f64) {
    let over = over(row, scale, high);
    let y = top + LINE * lines(&over) as f64;
    let bed = Area {
        x: scale.left,
        y,
        w: scale.right - scale.left,
        h: high,
    };
    let room = scale.left - 5.0;
    let two = high + GAP >= 2.0 * LINE;
    let label = [&row.name, &row.has].into_iter().take(1 + usize::from(two));
    let base = y + high / 2.0 - if two { LINE / 2.0 } else { 0.0 } + SIZE / 2.0 - 1.2;
    let body = html! {
        g.bed {
            @for (at, words) in label.enumerate() {
                (text(0.0, base + LINE * at as f64, Anchor::Start, &shorten(words, room)))
            }
            rect.there x=(n(bed.x)) y=(n(bed.y)) width=(n(bed.w)) height=(n(bed.h)) {}
            @for (strips, free) in &row.carries.not_free {
                @let area = Area { w: scale.x(*free) - bed.x, ..height(*strips, row, bed) };
                (filled(area, Pattern::Net))
                (line((scale.x(*free), area.y), (scale.x(*free), area.y + area.h), "ink", 1.0))
            }
            @for (stand, cloth) in row.carries.stands.iter().zip(&row.cloths) {
                (draw_stand(stand, *cloth, place(stand, row, scale, bed)))
            }
            @for o in &over {
                @let area = place(o.stand, row, scale, bed);
                @let base = y - 2.0 - LINE * o.line as f64;
                (line((area.x, base + 1.0), (area.x, area.y), "ink", 0.6))
            }
            @for (stand, name) in named(row).filter(|named| fits(*named, row, scale, high)) {
                @let area = place(stand, row, scale, bed);
                @let base = area.y + area.h / 2.0 + SIZE / 2.0 - 1.3;
                (plate(area.x + 3.5, base, width(name)))
                (text(area.x + 4.5, base, Anchor::Start, name))
            }
            @for o in &over {
                @if let Some(name) = &o.name {
                    (text(o.x, y - 2.5 - LINE * o.line as f64, Anchor::Start, name))
                }
            }
        }
    };
    (body, y + high)
}

fn draw_stand(stand: &Dated, cloth: Cloth, area: Area) -> Markup {
    html! {
        g.(hue(cloth)) {
            rect.stand x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h))
                data-from=(stand.from) data-to=(stand.to) data-planting=(positions(&stand.stand))
                data-strips=(stand.stand.strips.count) {}
            (threads(cloth, area))
        }
    }
}

/// Names over a bed of a height, each on the lowest line on which it meets no other. Parts of one planting
/// share a name.
fn over<'s>(row: &'s Row, scale: &Scale, high: f64) -> Vec<Over<'s>> {
    let mut ends: Vec<f64> = Vec::new();
    let mut placed: Vec<Over<'s>> = Vec::new();
    for (stand, name) in named(row).filter(|named| !fits(*named, row, scale, high)) {
        let same = |o: &&Over<'s>| o.stand.stand.plantings == stand.stand.plantings;
        if let Some(Over { x, line, .. }) = placed.iter().find(same) {
            let (x, line, name) = (*x, *line, None);
            placed.push(Over {
                stand,
                name,
                x,
                line,
            });
            continue;
        }
        let name = shorten(name, (scale.right - scale.left) / 2.0);
        let wide = width(&name);
        let x = scale.x(stand.from).min(scale.right - wide);
        let free = ends.iter().position(|end| *end + 5.0 <= x);
        let line = free.unwrap_or(ends.len());
        if line == ends.len() {
            ends.push(0.0);
        }
        if let Some(end) = ends.get_mut(line) {
            *end = x + wide;
        }
        let name = Some(name);
        placed.push(Over {
            stand,
            name,
            x,
            line,
        });
    }
    placed
}
