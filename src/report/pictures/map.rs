//! The map of the garden: beds with what stands in them, patches, areas, and how it is named.
//! Lengths are in metres; where things go on the paper is for the drawing.

use crate::garden::{Bed, GradeAt, Position, Runs};
use crate::report::view::View;
use crate::report::words::Words;
use crate::units::{Metres, STRIP};

use super::beds::{Shown, stands, strips};
use super::{Said, Table, shown_signs};

/// A planting on the map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Planted {
    /// Where it stands, and when.
    pub shown: Shown,
    /// From when to when, in short.
    pub dates: String,
    /// Its number in the table, where its name does not fit.
    pub number: String,
    /// True if it is of the grade that the map stresses.
    pub ours: bool,
}

/// A bed on the map.
#[derive(Debug, Clone, PartialEq)]
pub struct MapBed {
    /// Its names from the longest to the shortest.
    pub names: Vec<String>,
    /// Its south-west corner, if the file gives one.
    pub at: Option<Position>,
    /// How far it reaches east and north.
    pub extent: (Metres, Metres),
    /// Which way its length runs.
    pub runs: Runs,
    /// The length of its part with a trellis.
    pub trellis: Metres,
    /// What stands there, in the order in which it comes.
    pub planted: Vec<Planted>,
}

/// A patch or an area on the map.
#[derive(Debug, Clone, PartialEq)]
pub struct Ground {
    /// Its name.
    pub name: String,
    /// Its south-west corner, if the file gives one.
    pub at: Option<Position>,
    /// How far it reaches east and north.
    pub extent: (Metres, Metres),
}

/// What the legend explains.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// A part of a bed with a trellis.
    Trellis,
    /// Ground that is never planted.
    Area,
    /// A perennial patch.
    Patch,
    /// What the stressed grade grows.
    Ours,
}

/// The whole map.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    /// Title, description, table.
    pub said: Said,
    /// The beds in the order of the file.
    pub beds: Vec<MapBed>,
    /// Perennial patches.
    pub patches: Vec<Ground>,
    /// Areas that are never planted.
    pub areas: Vec<Ground>,
    /// True if the sun is in the north.
    pub south: bool,
    /// The letter at the arrow.
    pub north: &'static str,
    /// Units of the scale: metres and feet.
    pub units: [&'static str; 2],
    /// The legend.
    pub legend: Vec<(Key, String)>,
    /// What stands over the beds and patches to which the file gives no place.
    pub unplaced: &'static str,
}

/// Length and width of a patch of which the file gives no size.
const PATCH: (Metres, Metres) = (Metres(1.0), Metres(1.0));

/// The map; `None` if there is neither bed nor patch.
#[must_use]
pub fn map(view: &View<'_>, stressed: Option<GradeAt>) -> Option<Map> {
    let garden = view.garden;
    let beds: Vec<MapBed> = garden
        .beds
        .iter()
        .zip(stands(view))
        .map(|(b, stands)| bed(view, b, stands, stressed))
        .collect();
    let patches = garden.patches.iter().map(|patch| Ground {
        name: patch.id.clone(),
        at: patch.at,
        extent: patch.size.unwrap_or(PATCH),
    });
    let patches: Vec<Ground> = patches.collect();
    if beds.is_empty() && patches.is_empty() {
        return None;
    }
    let areas = garden.areas.iter().map(|area| Ground {
        name: area.name.clone(),
        at: Some(area.at),
        extent: area.size,
    });
    let areas: Vec<Ground> = areas.collect();
    let south = garden.latitude.0 < 0.0;
    let legend = legend(view, &beds, &patches, &areas, stressed);
    let signs = shown_signs(legend.iter().map(|(_, said)| said.as_str()));
    Some(Map {
        said: Said {
            title: match stressed {
                Some(grade) => format!("Map of the garden: the beds of {}", view.grade_name(grade)),
                None => "Map of the garden".to_owned(),
            },
            description: description(view.words, &beds, &patches, &areas, south) + &signs,
            table: table(view, &beds, &patches, &areas),
        },
        legend,
        beds,
        patches,
        areas,
        south,
        north: "N",
        units: ["m", "ft"],
        unplaced: "The file gives no place for these: their order here is not the real one.",
    })
}

fn bed(view: &View<'_>, bed: &Bed, stands: Vec<Shown>, stressed: Option<GradeAt>) -> MapBed {
    let planted = stands.into_iter().map(|stand| Planted {
        dates: view.words.span(stand.from, stand.to),
        number: stand.numbers(),
        ours: stressed.is_some_and(|own| stand.grades(view).contains(&own)),
        shown: stand,
    });
    MapBed {
        names: vec![
            format!(
                "Bed {}: {}",
                bed.id,
                view.words.ground(bed.length, bed.width)
            ),
            format!("Bed {}", bed.id),
            bed.id.clone(),
        ],
        at: bed.at,
        extent: bed.extent(),
        runs: bed.runs,
        trellis: bed.trellis,
        planted: planted.collect(),
    }
}

fn description(
    words: Words,
    beds: &[MapBed],
    patches: &[Ground],
    areas: &[Ground],
    south: bool,
) -> String {
    let mut text = format!(
        "The garden to scale, north at the top. Strips of {} are counted from the west end of a \
         bed; in a bed that runs north to south from its ",
        words.short_length_in_both(STRIP.to_centimetres())
    );
    let away = if south { "south" } else { "north" };
    text.push_str(&format!("{away} end. "));
    if beds.iter().any(|bed| bed.trellis.0 > 0.0) {
        text.push_str(&format!(
            "A trellis stands on the side away from the sun, the {away} side. "
        ));
    }
    let parted = |bed: &&MapBed| {
        bed.planted.iter().enumerate().any(|(n, p)| {
            bed.planted
                .iter()
                .take(n)
                .any(|other| p.shown.stand.shares_strips(&other.shown.stand))
        })
    };
    if beds.iter().any(|bed| parted(&bed)) {
        text.push_str("Where one planting follows another, the bed is parted: the first is above, or to the left. ");
    }
    let lost = beds.iter().filter(|bed| bed.at.is_none()).count()
        + patches.iter().filter(|patch| patch.at.is_none()).count();
    if lost == beds.len() + patches.len() {
        text.push_str("The file gives no places, so the order of the beds is not the real one. ");
    } else if lost > 0 {
        text.push_str(
            "What has no place in the file stands apart below, in an order that is not the real \
             one. ",
        );
    }
    if !areas.is_empty() {
        text.push_str("Hatched ground is never planted. ");
    }
    text.push_str(
        "Where a name does not fit, its number in the table stands. The table tells sizes, strips \
         and days.",
    );
    text
}

fn legend(
    view: &View<'_>,
    beds: &[MapBed],
    patches: &[Ground],
    areas: &[Ground],
    stressed: Option<GradeAt>,
) -> Vec<(Key, String)> {
    let trellis = beds.iter().any(|bed| bed.trellis.0 > 0.0);
    let ours = stressed.map(|grade| (Key::Ours, view.grade_name(grade).to_owned()));
    ours.into_iter()
        .chain(trellis.then(|| (Key::Trellis, "Trellis".to_owned())))
        .chain((!areas.is_empty()).then(|| (Key::Area, "Never planted".to_owned())))
        .chain((!patches.is_empty()).then(|| (Key::Patch, "Comes every year".to_owned())))
        .collect()
}

fn table(view: &View<'_>, beds: &[MapBed], patches: &[Ground], areas: &[Ground]) -> Table {
    let mut table = Table::under(&[
        "Number", "Where", "Size", "What", "Grade", "Strips", "From", "To",
    ]);
    let garden = view.garden;
    for (bed, on_map) in garden.beds.iter().zip(beds) {
        let place = [
            format!("Bed {}", bed.id),
            view.words.ground_in_both(bed.length, bed.width),
        ];
        for planted in &on_map.planted {
            let stand = &planted.shown;
            let [name, size] = place.clone();
            table.rows.push(vec![
                planted.number.clone(),
                name,
                size,
                stand.name.clone(),
                stand.grade_names(view),
                strips(stand.stand.strips),
                view.words.short(stand.from),
                view.words.short(stand.to),
            ]);
        }
        if on_map.planted.is_empty() {
            let nothing = "nothing of this dish".to_owned();
            let [name, size] = place;
            table.rows.push(row([String::new(), name, size, nothing]));
        }
    }
    for (patch, ground) in garden.patches.iter().zip(patches) {
        let size = match patch.size {
            Some((length, width)) => view.words.ground_in_both(length, width),
            None => "not in the file".to_owned(),
        };
        let place = format!("Patch {}", ground.name);
        table
            .rows
            .push(row([String::new(), place, size, patch.crop.clone()]));
    }
    for area in areas {
        let size = view.words.ground_in_both(area.extent.0, area.extent.1);
        let place = format!("Area {}", area.name);
        let never = "never planted".to_owned();
        table.rows.push(row([String::new(), place, size, never]));
    }
    table
}

/// A row of which nothing more is known.
fn row(first: [String; 4]) -> Vec<String> {
    let mut row = first.to_vec();
    row.resize(8, String::new());
    row
}
