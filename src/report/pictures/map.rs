//! The words of the map of the garden: beds with what stands in them, patches, areas.

use crate::facts::cloth::Cloth;
use crate::facts::map::{Ground, Map as Drawn, MapBed, Planted, Unplaced};
use crate::garden::GradeAt;
use crate::plan::Stand;
use crate::units::STRIP;
use crate::words::view::View;
use crate::words::{Words, list};

use super::beds::{names_of, strips};
use super::{Said, Table, shown_signs};

/// What is written at a planting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlantedWords {
    /// The ingredient, with the number of the sowing where there are several.
    pub name: String,
    /// From when to when, in short.
    pub dates: String,
    /// Its number in the table, where its name does not fit.
    pub number: String,
    /// Its look.
    pub cloth: Cloth,
}

/// What is written at a bed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BedWords {
    /// Its names from the longest to the shortest.
    pub names: Vec<String>,
    /// What is written at each of its plantings.
    pub planted: Vec<PlantedWords>,
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
    /// What is drawn.
    pub drawn: Drawn,
    /// What is written at the beds.
    pub beds: Vec<BedWords>,
    /// The names of the patches.
    pub patches: Vec<String>,
    /// The names of the areas.
    pub areas: Vec<String>,
    /// The letter at the arrow.
    pub north: &'static str,
    /// Units of the scale: metres and feet.
    pub units: [&'static str; 2],
    /// The legend.
    pub legend: Vec<(Key, String)>,
    /// What stands over the beds and patches to which the file gives no place.
    pub unplaced: &'static str,
}

/// The map; `None` if there is neither bed nor patch.
#[must_use]
pub fn map(view: &View<'_>, stressed: Option<GradeAt>) -> Option<Map> {
    let garden = view.garden;
    let drawn = view.map(stressed)?;
    let legend = legend(view, &drawn, stressed);
    let signs = shown_signs(legend.iter().map(|(_, said)| said.as_str()));
    let beds: Vec<BedWords> = drawn.beds.iter().map(|bed| bed_words(view, bed)).collect();
    Some(Map {
        said: Said {
            title: match stressed {
                Some(grade) => format!("Map of the garden: the beds of {}", view.grade_name(grade)),
                None => "Map of the garden".to_owned(),
            },
            description: description(view.words, &drawn) + &signs,
            table: table(view, &drawn, &beds),
        },
        legend,
        drawn,
        beds,
        patches: garden.patches.iter().map(|p| p.id.clone()).collect(),
        areas: garden.areas.iter().map(|a| a.name.clone()).collect(),
        north: "N",
        units: ["m", "ft"],
        unplaced: "The file gives no place for these: their order here is not the real one.",
    })
}

/// The numbers of plantings in the table, counted from 1.
fn numbers(stand: &Stand) -> String {
    let plantings = stand.plantings.iter();
    list(
        &plantings
            .map(|at| at.number().to_string())
            .collect::<Vec<_>>(),
    )
}

fn bed_words(view: &View<'_>, on_map: &MapBed) -> BedWords {
    let bed = &view.garden[on_map.bed];
    let planted = on_map
        .planted
        .iter()
        .map(|Planted { dated, .. }| PlantedWords {
            name: names_of(view, &dated.stand),
            dates: view.words.span(dated.from, dated.to),
            number: numbers(&dated.stand),
            cloth: view.cloth_of_stand(&dated.stand),
        });
    let ground = view.words.ground(bed.length, bed.width);
    BedWords {
        names: vec![
            format!("Bed {}: {ground}", bed.id),
            format!("Bed {}", bed.id),
            bed.id.clone(),
        ],
        planted: planted.collect(),
    }
}

fn description(words: Words, map: &Drawn) -> String {
    let mut text = format!(
        "The garden to scale, north at the top. Strips of {} are counted from the west end of a \
         bed; in a bed that runs north to south from its ",
        words.short_length_in_both(STRIP.to_centimetres())
    );
    let away = if map.south { "south" } else { "north" };
    text.push_str(&format!("{away} end. "));
    if map.has_trellis() {
        text.push_str(&format!(
            "A trellis stands on the side away from the sun, the {away} side. "
        ));
    }
    if map.has_followers() {
        text.push_str("Where one planting follows another, the bed is parted: the first is above, or to the left. ");
    }
    text.push_str(match map.unplaced {
        Unplaced::All => "The file gives no places, so the order of the beds is not the real one. ",
        Unplaced::Some => {
            "What has no place in the file stands apart below, in an order that is not the real \
             one. "
        }
        Unplaced::None => "",
    });
    if !map.areas.is_empty() {
        text.push_str("Hatched ground is never planted. ");
    }
    text.push_str(
        "Where a name does not fit, its number in the table stands. The table tells sizes, strips \
         and days.",
    );
    text
}

fn legend(view: &View<'_>, map: &Drawn, stressed: Option<GradeAt>) -> Vec<(Key, String)> {
    let ours = stressed.map(|grade| (Key::Ours, view.grade_name(grade).to_owned()));
    let shown = |shown: bool, key, said: &str| shown.then(|| (key, said.to_owned()));
    ours.into_iter()
        .chain(shown(map.has_trellis(), Key::Trellis, "Trellis"))
        .chain(shown(!map.areas.is_empty(), Key::Area, "Never planted"))
        .chain(shown(
            !map.patches.is_empty(),
            Key::Patch,
            "Comes every year",
        ))
        .collect()
}

fn table(view: &View<'_>, map: &Drawn, words: &[BedWords]) -> Table {
    let mut table = Table::under(&[
        "Number", "Where", "Size", "What", "Grade", "Strips", "From", "To",
    ]);
    let garden = view.garden;
    for (bed, words) in map.beds.iter().zip(words) {
        table.rows.extend(bed_rows(view, bed, words));
    }
    for patch in &garden.patches {
        let size = match patch.size {
            Some((length, width)) => view.words.ground_in_both(length, width),
            None => "not in the file".to_owned(),
        };
        let place = format!("Patch {}", patch.id);
        table.rows.push(row([place, size, patch.crop.clone()]));
    }
    for (area, Ground { extent, .. }) in garden.areas.iter().zip(&map.areas) {
        let size = view.words.ground_in_both(extent.0, extent.1);
        let place = format!("Area {}", area.name);
        table
            .rows
            .push(row([place, size, "never planted".to_owned()]));
    }
    table
}

/// The rows of a bed: one for each planting.
fn bed_rows(view: &View<'_>, on_map: &MapBed, words: &BedWords) -> Vec<Vec<String>> {
    let bed = &view.garden[on_map.bed];
    let name = format!("Bed {}", bed.id);
    let size = view.words.ground_in_both(bed.length, bed.width);
    if on_map.planted.is_empty() {
        return vec![row([name, size, "nothing of this dish".to_owned()])];
    }
    let planted = on_map.planted.iter().zip(&words.planted);
    planted
        .map(|(Planted { dated, .. }, words)| {
            vec![
                words.number.clone(),
                name.clone(),
                size.clone(),
                words.name.clone(),
                super::grades_of(view, &dated.stand),
                strips(dated.stand.strips),
                view.words.short(dated.from),
                view.words.short(dated.to),
            ]
        })
        .collect()
}

/// A row of which only place, size and name are known.
fn row(known: [String; 3]) -> Vec<String> {
    let mut row = vec![String::new()];
    row.extend(known);
    row.resize(8, String::new());
    row
}
