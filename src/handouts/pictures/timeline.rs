//! The timeline: rows of cloth with what is done on flags over them, frost behind them, frost and warmth under them.

mod climate;
mod marks;

use maud::{Markup, html};

use crate::facts::life::SpanKind;
use crate::report::pictures::timeline::{Row, Timeline};

use super::drawings::within;
use super::lettering::{LINE, SIZE, bold_width, shorten, width};
use super::sheet::{Anchor, Area, Paper, frame, hued, legend, line, n, text};
use super::weave::{dashed, hue, plain, threads, woven};
use super::weeks::{Scale, ground, head};

use marks::Placed;

/// Where the weeks begin on a sheet: left of it is the room for names. On a phone names stand over the rows.
pub const LEFT: f64 = 120.0;

/// Height of what grows in a bed, and of its woven foot.
const BAR: f64 = 15.0;
const FOOT: f64 = 5.0;

/// Height of what is on the shelf or dries.
const THIN: f64 = 11.5;

/// Between two rows.
const GAP: f64 = 5.0;

/// From row to row where there are so many that none has words: 36 of them fit on a sheet.
const CLOSE: f64 = 13.9;

/// The highest picture that fits on a sheet, and on one for a wall.
const HIGHEST: f64 = 672.0;
const HIGHEST_ON_WALL: f64 = 500.0;

/// By how much a row on a wall may be higher than its words ask for.
const ROOMIER: f64 = 16.0;

/// Room for the drawing of a plant beside its name on a wall, and its height at the most.
const DRAWING: f64 = 44.0;

/// A row as it is laid out.
struct Laid<'r> {
    row: &'r Row,
    marks: Vec<Placed<'r>>,
    /// How high it is, and how far its bar begins under its top.
    high: f64,
    bar: f64,
}

/// The picture.
pub fn draw(name: &str, shown: &Timeline, paper: Paper) -> Markup {
    let left = match paper {
        Paper::Sheet => LEFT,
        Paper::Wall => LEFT + DRAWING,
        Paper::Phone => 1.0,
    };
    let scale = Scale::new(shown.weeks.along.horizon, left, paper);
    let (top, first) = head(&shown.weeks, &scale);
    let seen = shown
        .climate
        .as_ref()
        .filter(|_| shown.bands && paper == Paper::Sheet);
    let highest = match paper {
        Paper::Wall => HIGHEST_ON_WALL,
        Paper::Sheet | Paper::Phone => HIGHEST,
    };
    let (_, bands) = under(shown, seen, &scale, 0.0, paper);
    let rows = laid(&shown.rows, &scale, paper, highest - first - bands);
    let last = first + rows.iter().map(|row| row.high).sum::<f64>();
    let (below, bottom) = under(shown, seen, &scale, last, paper);
    let tops = rows.iter().scan(first, |top, row| {
        let own = *top;
        *top += row.high;
        Some(own)
    });
    let body = html! {
        (top)
        @if let Some(seen) = &shown.climate { (climate::behind(seen, &scale, first, last)) }
        (ground(&shown.weeks, &scale, first, last))
        @for (row, top) in rows.iter().zip(tops) { (draw_row(row, &scale, top, paper)) }
        (below)
    };
    frame(name, &shown.said, (paper, bottom + 3.0), &body)
}

/// What stands under the rows, and the height under it.
fn under(
    shown: &Timeline,
    seen: Option<&crate::words::warmth::Climate>,
    scale: &Scale,
    top: f64,
    paper: Paper,
) -> (Markup, f64) {
    let (bands, bottom) = match seen {
        Some(seen) => climate::bands(seen, scale, top + 8.0),
        None => (html! {}, top),
    };
    let frost = shown.climate.as_ref().map(|_| ((), shown.frost));
    let frost: Vec<((), &str)> = frost.into_iter().collect();
    let (key, end) = legend(paper, bottom + 6.0, &frost, |(), x, y| climate::sign(x, y));
    (html! { (bands) (key) }, end)
}

/// All rows with as many lines of words as there is room for.
fn laid<'r>(rows: &'r [Row], scale: &Scale, paper: Paper, room: f64) -> Vec<Laid<'r>> {
    let with = |most: usize| -> Vec<Laid<'r>> {
        let row = |row| lay(row, scale, paper, most);
        rows.iter().map(row).collect()
    };
    let fits = |rows: &Vec<Laid<'r>>| {
        paper == Paper::Phone || rows.iter().map(|row| row.high).sum::<f64>() <= room
    };
    let mut tries = [4, 3, 2, 1].into_iter().map(with);
    let mut laid = tries.find(fits).unwrap_or_else(|| with(0));
    if paper == Paper::Wall {
        let used: f64 = laid.iter().map(|row| row.high).sum();
        let more = ((room - used) / rows.len() as f64).clamp(0.0, ROOMIER);
        for row in &mut laid {
            row.high += more;
            row.bar += more / 2.0;
        }
    }
    laid
}

fn lay<'r>(row: &'r Row, scale: &Scale, paper: Paper, most: usize) -> Laid<'r> {
    let marks = marks::placed(&row.marks, scale, most);
    let words = LINE * marks::lines(&marks) as f64;
    let (bar, least) = match (paper, most) {
        (Paper::Sheet | Paper::Wall, 0) => {
            return Laid {
                row,
                marks,
                high: CLOSE,
                bar: 1.0,
            };
        }
        (Paper::Sheet | Paper::Wall, _) => (words + 3.0, 2.0 * LINE + 2.0),
        (Paper::Phone, _) => (LINE + words + 3.0, 0.0),
    };
    let high = (bar + BAR + GAP).max(least);
    Laid {
        row,
        marks,
        high,
        bar,
    }
}

/// One planting.
fn draw_row(laid: &Laid<'_>, scale: &Scale, top: f64, paper: Paper) -> Markup {
    let Laid { row, marks, .. } = laid;
    let high = BAR.min(laid.high - laid.bar);
    let bar = Area {
        x: scale.left,
        y: top + laid.bar,
        w: scale.right - scale.left,
        h: high,
    };
    html! {
        g.row.(hue(row.cloth)) {
            (line((0.0, top), (scale.right, top), "rule", 0.5))
            (names(row, (top, laid.high), paper))
            @for span in &row.life.spans {
                @let area = scale.span(span.from, span.to, bar.y, bar.h);
                g.span data-from=(span.from) data-to=(span.to) { (span_of(row, span.kind, area)) }
            }
            (marks::draw(marks, bar))
            @for (span, said) in row.life.spans.iter().zip(&row.said) {
                @let area = scale.span(span.from, span.to, bar.y, bar.h);
                @let next = row.life.spans.iter().filter(|other| other.from > span.from);
                @let end = next.map(|other| scale.x(other.from)).fold(area.right(), f64::min);
                @let room = end - area.x - 5.0;
                @if let Some(said) = said.iter().find(|said| width(said) <= room && bar.h >= SIZE + 2.0) {
                    (text(area.x + 3.5, bar.y + 8.8, Anchor::Start, said))
                }
            }
        }
    }
}

/// The names of a row: beside it, or over it on a phone.
fn names(row: &Row, (top, high): (f64, f64), paper: Paper) -> Markup {
    let room = LEFT - 6.0;
    let x = match paper {
        Paper::Wall => DRAWING,
        Paper::Sheet | Paper::Phone => 0.0,
    };
    match paper {
        Paper::Sheet | Paper::Wall if high >= 2.0 * LINE => {
            let base = top + high / 2.0 - 2.0;
            let size = (high - 2.0).min(DRAWING - 6.0);
            html! {
                @if paper == Paper::Wall { (within(row.form, (0.0, top + (high - size) / 2.0, size))) }
                (hued(x, base, Anchor::Start, &shorten(&row.name, room / 1.12)))
                (text(x, base + LINE, Anchor::Start, &shorten(&row.grade, room)))
            }
        }
        Paper::Sheet | Paper::Wall => text(
            x,
            top + high / 2.0 + SIZE / 2.0 - 1.2,
            Anchor::Start,
            &shorten(&row.short, room),
        ),
        Paper::Phone => {
            let name = shorten(&row.name, 180.0);
            let after = bold_width(&name) + 6.0;
            html! {
                (hued(1.0, top + SIZE + 1.0, Anchor::Start, &name))
                (text(1.0 + after, top + SIZE + 1.0, Anchor::Start, &shorten(&row.grade, paper.width() - after - 8.0)))
            }
        }
    }
}

/// A span: dashed where it is not in a bed, with a woven foot where it is, woven all over while it may be picked.
fn span_of(row: &Row, kind: SpanKind, area: Area) -> Markup {
    let thin = Area {
        y: area.bottom() - THIN.min(area.h),
        h: THIN.min(area.h),
        ..area
    };
    let foot = FOOT.min(area.h / 2.0);
    match kind {
        SpanKind::Shelf | SpanKind::Cure => dashed(thin),
        SpanKind::Bed => html! {
            (plain(area))
            (threads(row.cloth, Area { y: area.bottom() - foot, h: foot, ..area }))
        },
        SpanKind::Pick => html! {
            (woven(row.cloth, area))
            rect.edge x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {}
        },
    }
}
