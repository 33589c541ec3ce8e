//! The map of the garden to scale: beds, strips, patches, areas, arrow and measure.

mod cells;
mod ground;
mod measure;
mod naming;

use maud::{Markup, html};

use crate::report::pictures::map::{Ground, Key, Map, MapBed};

use super::lettering::{LINE, SIZE};
use super::pattern::{Pattern, filled};
use super::sheet::{Anchor, Area, frame, legend, n, text};

use cells::{Cell, cells, trellis};
use ground::Layout;
use naming::Naming;

/// The picture.
pub fn draw(name: &str, map: &Map) -> Markup {
    let layout = Layout::of(map);
    let solid: Vec<Area> = layout.all().collect();
    let mut naming = Naming::new(solid, layout.edge());
    let note = layout.note.map(|top| (top, map.unplaced));
    if let Some((top, words)) = note {
        naming.reserve(0.0, top, words);
    }
    let beds = map.beds.iter().zip(&layout.beds);
    let cells: Vec<Vec<Cell<'_>>> = beds
        .clone()
        .map(|(bed, area)| cells(bed, *area, map.south))
        .collect();
    let captions: Vec<Markup> = beds
        .clone()
        .map(|(bed, area)| naming.caption(*area, &bed.names))
        .collect();
    let planted: Vec<Markup> = cells
        .iter()
        .flatten()
        .map(|cell| naming.planted(cell))
        .collect();
    let named = |naming: &mut Naming, of: &[Ground], areas: &[Area]| -> Vec<Markup> {
        let both = of.iter().zip(areas);
        both.map(|(ground, area)| naming.ground(*area, &ground.name))
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
    let (key, end) = legend(below + 4.0, &entries, sign);
    let body = html! {
        g.areas { @for area in &layout.areas { (area_of(*area)) } }
        g.patches { @for area in &layout.patches { (patch_of(*area)) } }
        @for ((bed, area), cells) in beds.zip(&cells) { (bed_of(map, bed, *area, cells)) }
        @for word in captions.iter().chain(&planted).chain(&patches).chain(&areas) { (word) }
        @if let Some((top, words)) = note { (text(0.0, top + SIZE, Anchor::Start, words)) }
        (measure)
        (key)
    };
    frame(name, &map.said, end + 3.0, &body)
}

fn bed_of(map: &Map, bed: &MapBed, area: Area, cells: &[Cell<'_>]) -> Markup {
    html! {
        g.bed {
            rect.ground x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h)) {}
            @for cell in cells.iter().filter(|cell| !cell.planted.ours) { (cell_of(cell)) }
            @for cell in cells.iter().filter(|cell| cell.planted.ours) { (cell_of(cell)) }
            (trellis(bed, area, map.south))
        }
    }
}

fn cell_of(cell: &Cell<'_>) -> Markup {
    let Area { x, y, w, h } = cell.area;
    let rect = |fill: &str, thick: &str| {
        html! {
            rect.strips x=(n(x)) y=(n(y)) width=(n(w)) height=(n(h)) fill=(fill)
                stroke-width=(thick) data-planting=(cell.planted.shown.positions()) {}
        }
    };
    html! {
        @if cell.planted.ours { (rect("#fff", "2.6")) (filled(cell.area, Pattern::Dots)) }
        @else { (rect("#dcdcdc", "0.8")) }
    }
}

fn area_of(area: Area) -> Markup {
    html! {
        rect.area x=(n(area.x)) y=(n(area.y)) width=(n(area.w)) height=(n(area.h))
            fill="#fff" {}
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
            rect.strips x=(n(area.x)) y=(n(area.y)) width=(n(w)) height=(n(h))
                fill="#fff" stroke-width="2.6" {}
            (filled(area, Pattern::Dots))
        },
    }
}
