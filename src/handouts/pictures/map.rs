//! The map of the garden to scale: beds, strips, patches, areas, arrow and measure.

mod cells;
mod ground;
mod measure;
mod naming;

use maud::{Markup, html};

use crate::facts::map::MapBed;
use crate::report::pictures::map::{Key, Map};

use super::lettering::{LINE, SIZE};
use super::pattern::{Pattern, filled};
use super::sheet::{Anchor, Area, Paper, frame, legend, n, positions, text};
use super::weave::{hue, woven};

use cells::{Cell, cells, trellis};
use ground::Layout;
use naming::Naming;

/// The picture.
pub fn draw(name: &str, map: &Map, paper: Paper) -> Markup {
    let layout = Layout::of(&map.drawn, paper);
    let solid: Vec<Area> = layout.all().collect();
    let mut naming = Naming::new(solid, layout.edge());
    let note = layout.note.map(|top| (top, map.unplaced));
    if let Some((top, words)) = note {
        naming.reserve(0.0, top, words);
    }
    let south = map.drawn.south;
    let beds = map.drawn.beds.iter().zip(&layout.beds);
    let worded = beds.clone().zip(&map.beds);
    let cells: Vec<Vec<Cell<'_>>> = worded
        .clone()
        .map(|((bed, area), words)| cells(bed, words, *area, south))
        .collect();
    let captions: Vec<Markup> = worded
        .map(|((_, area), words)| naming.caption(*area, &words.names))
        .collect();
    let planted: Vec<Markup> = cells
        .iter()
        .flatten()
        .map(|cell| naming.planted(cell))
        .collect();
    let named = |naming: &mut Naming, names: &[String], areas: &[Area]| -> Vec<Markup> {
        let both = names.iter().zip(areas);
        both.map(|(name, area)| naming.ground(*area, name))
            .collect()
    };
    let patches = named(&mut naming, &map.patches, &layout.patches);
    let areas = named(&mut naming, &map.areas, &layout.areas);
    let (measure, below) = measure::draw(map, layout.scale, layout.bottom + 12.0);
    let entries: Vec<(Key, &str)> = map
        .legend
        .iter()
        .map(|(key, said)| (*key, said.as_str()))
        .collect();
    let (key, end) = legend(paper, below + 4.0, &entries, sign);
    let body = html! {
        g.areas { @for area in &layout.areas { (area_of(*area)) } }
        g.patches { @for area in &layout.patches { (patch_of(*area)) } }
        @for ((bed, area), cells) in beds.zip(&cells) { (bed_of(bed, *area, cells, south)) }
        @for word in captions.iter().chain(&planted).chain(&patches).chain(&areas) { (word) }
        @if let Some((top, words)) = note { (text(0.0, top + SIZE, Anchor::Start, words)) }
        (measure)
        (key)
    };
    frame(name, &map.said, (paper, end + 3.0), &body)
}

fn bed_of(bed: &MapBed, area: Area, cells: &[Cell<'_>], south: bool) -> Markup {
    html! {
        g.bed {
            rect.ground x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {}
            @for cell in cells.iter().filter(|cell| !cell.planted.ours) { (cell_of(cell)) }
            @for cell in cells.iter().filter(|cell| cell.planted.ours) { (cell_of(cell)) }
            (trellis(bed, area, south))
        }
    }
}

/// The class of what another grade grows.
const OTHERS: &str = "others";

/// What stands on strips: woven where it grows for the dish of whoever reads, plain where it is another's.
fn cell_of(cell: &Cell<'_>) -> Markup {
    let Area { x, y, w, h } = cell.area;
    html! {
        g.(if cell.planted.ours { hue(cell.words.cloth) } else { OTHERS.to_owned() }) {
            @if cell.planted.ours { (woven(cell.words.cloth, cell.area)) }
            rect class="strips" x=(n(x)) y=(n(y)) width=(n(w)) height=(n(h)) fill="none"
                stroke-width=(if cell.planted.ours { "2" } else { "0.8" })
                data-planting=(positions(&cell.planted.dated.stand)) {}
        }
    }
}

fn area_of(area: Area) -> Markup {
    html! {
        rect.area x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {}
        (filled(area, Pattern::Hatch))
    }
}

fn patch_of(area: Area) -> Markup {
    html! {
        rect.patch x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {}
    }
}

/// The sign of an entry of the legend.
fn sign(key: Key, x: f64, y: f64) -> Markup {
    let (w, h) = (16.0, LINE - 2.0);
    let area = Area {
        x: x - w / 2.0,
        y: y - h / 2.0,
        w,
        h,
    };
    match key {
        Key::Trellis => cells::rail((area.x, y + 2.0), (area.right(), y + 2.0), (0.0, -1.0)),
        Key::Area => area_of(area),
        Key::Patch => patch_of(area),
        Key::Ours => html! {
            rect.strips x=(n(area.x)) y=(n(area.y)) width=(n(w)) height=(n(h)) fill="none" stroke-width="2" {}
        },
    }
}
