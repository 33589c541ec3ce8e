//! Where beds, patches and areas go on the paper: those with a place to scale, north at the
//! top; those without under them, in rows.

use crate::facts::map::{Ground, Map};

use super::super::lettering::LINE;
use super::super::sheet::{Area, WIDTH};

/// The highest map, so that it fits on a sheet with its legend.
const HIGH: f64 = 540.0;

/// Points a metre takes at the most: a single bed need not fill the sheet.
const LARGEST: f64 = 90.0;

/// Room at the edge, and over the uppermost beds for their names.
const MARGIN: f64 = 6.0;
const HEADROOM: f64 = LINE + 8.0;

/// Metres between things without a place, and the width of their rows if nothing else gives it.
const GAP: f64 = 0.9;
const ROW: f64 = 12.0;

/// A piece in metres: from the west, from the north (downward), width, height.
type Piece = (f64, f64, f64, f64);

/// Everything in points of the paper.
pub struct Layout {
    /// Beds in their order.
    pub beds: Vec<Area>,
    /// Patches in their order.
    pub patches: Vec<Area>,
    /// Areas in their order.
    pub areas: Vec<Area>,
    /// Points a metre takes.
    pub scale: f64,
    /// The lowest edge of all.
    pub bottom: f64,
    /// Where the note stands over those without a place.
    pub note: Option<f64>,
}

impl Layout {
    /// Lays a map out.
    pub fn of(map: &Map) -> Self {
        let beds = map.beds.iter().map(|bed| &bed.ground);
        let all: Vec<&Ground> = beds.chain(&map.patches).chain(&map.areas).collect();
        let placed: Vec<Option<Piece>> = all
            .iter()
            .map(|Ground { at, extent: (w, h) }| at.map(|at| (at.x.0, -(at.y.0 + h.0), w.0, h.0)))
            .collect();
        let (west, north, wide, high) = bounds(placed.iter().flatten());
        let lost = all.iter().filter(|ground| ground.at.is_none());
        let sizes: Vec<(f64, f64)> = lost.map(|g| (g.extent.0.0, g.extent.1.0)).collect();
        let rows = in_rows(&sizes, wide.max(ROW));
        let (_, _, rows_wide, rows_high) = bounds(rows.iter());
        let room = HIGH - if high > 0.0 { 2.0 } else { 1.0 } * HEADROOM;
        let scale = ((WIDTH - 2.0 * MARGIN) / wide.max(rows_wide).max(0.1))
            .min(room / (high + rows_high).max(0.1))
            .min(LARGEST);
        let top = HEADROOM;
        let under = if high > 0.0 {
            top + high * scale + LINE
        } else {
            0.0
        };
        let note = (!rows.is_empty()).then_some(under + 2.0);
        let rows_top = under + LINE + HEADROOM + 2.0;
        let mut next = rows.iter();
        let mut paper = placed.iter().map(|piece| match piece {
            Some(piece) => on_paper(*piece, (west, north), scale, top),
            None => {
                let piece = next.next().copied().unwrap_or_default();
                on_paper(piece, (0.0, 0.0), scale, rows_top)
            }
        });
        let beds: Vec<Area> = paper.by_ref().take(map.beds.len()).collect();
        let patches: Vec<Area> = paper.by_ref().take(map.patches.len()).collect();
        let areas: Vec<Area> = paper.collect();
        let all = beds.iter().chain(&patches).chain(&areas);
        let bottom = all.map(|area| area.bottom()).fold(0.0, f64::max);
        Self {
            beds,
            patches,
            areas,
            scale,
            bottom,
            note,
        }
    }

    /// All pieces.
    pub fn all(&self) -> impl Iterator<Item = Area> + '_ {
        let all = self.beds.iter().chain(&self.patches).chain(&self.areas);
        all.copied()
    }

    /// The paper within which names may stand.
    pub fn edge(&self) -> Area {
        Area {
            x: 0.0,
            y: 0.0,
            w: WIDTH,
            h: self.bottom + LINE,
        }
    }
}

fn on_paper((x, y, w, h): Piece, (west, north): (f64, f64), scale: f64, top: f64) -> Area {
    Area {
        x: MARGIN + (x - west) * scale,
        y: top + (y - north) * scale,
        w: w * scale,
        h: h * scale,
    }
}

/// West, north, width and height of all pieces; nothing of none.
fn bounds<'p>(pieces: impl Iterator<Item = &'p Piece> + Clone) -> Piece {
    let least = |of: &dyn Fn(&Piece) -> f64| pieces.clone().map(of).reduce(f64::min);
    let most = |of: &dyn Fn(&Piece) -> f64| pieces.clone().map(of).reduce(f64::max);
    let (west, north) = (
        least(&|p| p.0).unwrap_or(0.0),
        least(&|p| p.1).unwrap_or(0.0),
    );
    let east = most(&|p| p.0 + p.2).unwrap_or(0.0);
    let south = most(&|p| p.1 + p.3).unwrap_or(0.0);
    (west, north, east - west, south - north)
}

/// Things side by side in rows of a width, in their order.
fn in_rows(sizes: &[(f64, f64)], wide: f64) -> Vec<Piece> {
    let (mut x, mut y, mut high) = (0.0, 0.0, 0.0_f64);
    let mut pieces = Vec::new();
    for (w, h) in sizes {
        if x > 0.0 && x + w > wide {
            (x, y, high) = (0.0, y + high + GAP, 0.0);
        }
        pieces.push((x, y, *w, *h));
        x += w + GAP;
        high = high.max(*h);
    }
    pieces
}
