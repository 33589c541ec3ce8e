//! The cloth of a crop: a tint with an edge in its hue, and a weave over it that tells it in grey too. Weaves are drawn
//! line by line, as patterns are, and lie on one grid over the whole picture.

use maud::{Markup, html};

use crate::facts::cloth::Cloth;

use super::pattern::{between, falling, rising, stroke};
use super::sheet::{Area, n};

/// Between two threads.
const GRID: f64 = 4.0;

/// Between two slanted ones.
const SLANT: f64 = GRID + 1.0;

/// The class that gives a group its hue.
pub fn hue(cloth: Cloth) -> String {
    format!("c{}", cloth.hue + 1)
}

/// The strip across the top of every page: all crops in their order.
#[must_use]
pub fn hem(cloths: &[Cloth]) -> Markup {
    let one = 600.0 / cloths.len().max(1) as f64;
    let areas = cloths.iter().enumerate().map(|(at, cloth)| {
        let area = Area {
            x: one * at as f64,
            y: 0.0,
            w: one,
            h: 9.0,
        };
        (*cloth, area)
    });
    html! {
        svg.hem viewBox="0 0 600 9" aria-hidden="true" {
            @for (cloth, area) in areas { g.(hue(cloth)) { (woven(cloth, area)) } }
        }
    }
}

/// The cloth of a crop before its name in a list.
#[must_use]
pub fn chip(cloth: Cloth) -> Markup {
    let area = Area {
        x: 0.5,
        y: 0.5,
        w: 24.0,
        h: 14.0,
    };
    html! {
        svg.chip.(hue(cloth)) viewBox="0 0 25 15" aria-hidden="true" { (woven(cloth, area)) }
    }
}

/// An area of cloth, woven over all of it.
pub fn woven(cloth: Cloth, area: Area) -> Markup {
    html! { (plain(area)) (threads(cloth, area)) }
}

/// An area of cloth without a weave.
pub fn plain(area: Area) -> Markup {
    html! { rect.cloth x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {} }
}

/// An area of thin cloth with a dashed edge: not in a bed.
pub fn dashed(area: Area) -> Markup {
    html! {
        rect.cloth x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h))
            stroke-dasharray="3 2" {}
    }
}

/// The weave alone.
pub fn threads(cloth: Cloth, area: Area) -> Markup {
    let inner = Area {
        x: area.x + 0.4,
        y: area.y + 0.4,
        w: (area.w - 0.8).max(0.0),
        h: (area.h - 0.8).max(0.0),
    };
    let drawn = match cloth.weave {
        0 => rising(inner, SLANT),
        1 => bricks(inner),
        2 => upright(inner),
        3 => level(inner),
        4 => stitches(inner, 0.7, "h0"),
        5 => zigzag(inner, GRID - 0.5),
        6 => falling(inner, SLANT),
        7 => rising(inner, SLANT) + &falling(inner, SLANT),
        8 => zigzag(inner, GRID / 2.0),
        9 => stitches(
            inner,
            1.4,
            "m-1.4,0a1.4,1.4 0 1 0 2.8,0a1.4,1.4 0 1 0 -2.8,0",
        ),
        10 => stitches(inner, 1.5, "m-1.5,0h3m-1.5,-1.5v3"),
        _ => upright(inner) + &level(inner),
    };
    let dots = if cloth.weave == 4 { "dots" } else { "threads" };
    html! { path class=(dots) d=(drawn) data-weave=(cloth.weave) {} }
}

/// Rows from the top of an area on, as many as have their height in it, with what is left over shared out.
fn rows(area: Area, high: f64, step: f64) -> impl Iterator<Item = (i64, f64)> {
    let most = ((area.h - high) / step).floor() as i64;
    let first = area.y + ((area.h - high) - most.max(0) as f64 * step) / 2.0;
    (0..=most).map(move |at| (at, first + at as f64 * step))
}

fn upright(area: Area) -> String {
    between(area.x, area.right(), GRID, GRID / 2.0)
        .map(|(_, x)| stroke((x, area.y), (x, area.bottom())))
        .collect()
}

fn level(area: Area) -> String {
    rows(area, 0.0, GRID)
        .map(|(_, y)| stroke((area.x, y), (area.right(), y)))
        .collect()
}

/// Level lines with joints between them, which every second row has at other places.
fn bricks(area: Area) -> String {
    let rows: Vec<(i64, f64)> = rows(area, 0.0, GRID).collect();
    let joints = rows.iter().map(|(row, y)| {
        let (top, foot) = (area.y.max(*y), area.bottom().min(*y + GRID));
        let shift = if row.rem_euclid(2) == 0 { 0.0 } else { GRID };
        between(area.x, area.right(), 2.0 * GRID, shift)
            .map(|(_, x)| stroke((x, top), (x, foot)))
            .collect::<String>()
    });
    level(area) + &joints.collect::<String>()
}

/// The same stitch at every second place of a grid, where all of it lies in the area.
fn stitches(area: Area, edge: f64, stitch: &str) -> String {
    let rows = rows(area, 2.0 * edge, GRID);
    rows.flat_map(|(row, y)| {
        let y = y + edge;
        let shift = if row.rem_euclid(2) == 0 { 0.0 } else { GRID };
        between(area.x + edge, area.right() - edge, 2.0 * GRID, shift)
            .map(|(_, x)| format!("M{},{}{stitch}", n(x), n(y)))
            .collect::<Vec<_>>()
    })
    .collect()
}

/// Lines that go up and down by a height, one under the other.
fn zigzag(area: Area, high: f64) -> String {
    let rows = rows(area, high, GRID + 1.0);
    rows.map(|(_, y)| {
        let points = between(area.x, area.right(), GRID, 0.0);
        let line: Vec<String> = points
            .map(|(at, x)| {
                let down = if at.rem_euclid(2) == 0 { 0.0 } else { high };
                format!("{},{}", n(x), n(y + down))
            })
            .collect();
        match line.len() {
            0 | 1 => String::new(),
            _ => format!("M{}", line.join("L")),
        }
    })
    .collect()
}
