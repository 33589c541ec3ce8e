//! Where beds, patches and areas go on the paper: those with a place to scale, north at the
//! top; those without under them, in rows.

use crate::facts::map::{Ground, Map};

use super::super::lettering::LINE;
use super::super::sheet::{Area, Paper};

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

/// A piece of ground in metres, `x` counted eastward and `y` southward, as on the paper.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Piece {
    x: f64,
    y: f64,
    wide: f64,
    high: f64,
}

impl Piece {
    /// Where a thing of the file lies, if that says so: it counts from the south-west corner,
    /// northward.
    fn placed(ground: &Ground) -> Option<Self> {
        let (wide, high) = (ground.extent.0.0, ground.extent.1.0);
        ground.at.map(|at| Self {
            x: at.x.0,
            y: -(at.y.0 + high),
            wide,
            high,
        })
    }
}

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
    /// The paper.
    paper: Paper,
}

impl Layout {
    /// Lays a map out.
    pub fn of(map: &Map, on: Paper) -> Self {
        let beds = map.beds.iter().map(|bed| &bed.ground);
        let all: Vec<&Ground> = beds.chain(&map.patches).chain(&map.areas).collect();
        let placed: Vec<Option<Piece>> = all.iter().map(|ground| Piece::placed(ground)).collect();
        let whole = bounds(placed.iter().flatten());
        let lost: Vec<&Ground> = all
            .into_iter()
            .filter(|ground| ground.at.is_none())
            .collect();
        let rows = in_rows(&lost, whole.wide.max(ROW));
        let beside = bounds(rows.iter());
        let room = HIGH - if whole.high > 0.0 { 2.0 } else { 1.0 } * HEADROOM;
        let scale = ((on.width() - 2.0 * MARGIN) / whole.wide.max(beside.wide).max(0.1))
            .min(room / (whole.high + beside.high).max(0.1))
            .min(LARGEST);
        let top = HEADROOM;
        let under = if whole.high > 0.0 {
            top + whole.high * scale + LINE
        } else {
            0.0
        };
        let note = (!rows.is_empty()).then_some(under + 2.0);
        let rows_top = under + LINE + HEADROOM + 2.0;
        let mut next = rows.iter();
        let mut paper = placed.iter().map(|piece| match piece {
            Some(piece) => on_paper(*piece, &whole, scale, top),
            None => {
                let piece = next.next().copied().unwrap_or_default();
                on_paper(piece, &Piece::default(), scale, rows_top)
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
            paper: on,
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
            w: self.paper.width(),
            h: self.bottom + LINE,
        }
    }
}

/// A piece on the paper, on which the corner of `whole` lies at the margin and at `top`.
fn on_paper(piece: Piece, whole: &Piece, scale: f64, top: f64) -> Area {
    Area {
        x: MARGIN + (piece.x - whole.x) * scale,
        y: top + (piece.y - whole.y) * scale,
        w: piece.wide * scale,
        h: piece.high * scale,
    }
}

/// The least piece that holds all pieces; nothing of none.
fn bounds<'p>(pieces: impl Iterator<Item = &'p Piece> + Clone) -> Piece {
    let least = |of: fn(&Piece) -> f64| pieces.clone().map(of).reduce(f64::min);
    let most = |of: fn(&Piece) -> f64| pieces.clone().map(of).reduce(f64::max);
    let (x, y) = (least(|p| p.x).unwrap_or(0.0), least(|p| p.y).unwrap_or(0.0));
    Piece {
        x,
        y,
        wide: most(|p| p.x + p.wide).unwrap_or(0.0) - x,
        high: most(|p| p.y + p.high).unwrap_or(0.0) - y,
    }
}

/// Grounds without a place side by side in rows of a width, in their order.
fn in_rows(grounds: &[&Ground], row: f64) -> Vec<Piece> {
    let (mut x, mut y, mut highest) = (0.0, 0.0, 0.0_f64);
    let mut pieces = Vec::new();
    for ground in grounds {
        let (wide, high) = (ground.extent.0.0, ground.extent.1.0);
        if x > 0.0 && x + wide > row {
            (x, y, highest) = (0.0, y + highest + GAP, 0.0);
        }
        pieces.push(Piece { x, y, wide, high });
        x += wide + GAP;
        highest = highest.max(high);
    }
    pieces
}
