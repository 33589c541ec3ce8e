//! What `tureen crops NAME` prints: one crop with every figure, its unit and where it comes
//! from, and what it means for a project's place.

mod coming_up;
mod place;

use crate::catalogue::{Catalogue, Entry, MEMORY, PRACTICE, source_keys};
use crate::garden::{Crop, FrostResponse, Garden, Locale};

use crate::project::{self, Key, key_of_figure};

use super::crops::season;
use crate::page::Page;
use crate::words::figures::{self, Figure, way};
use crate::words::{Words, choice, list, sentence};

/// All that is known of a crop, in the locale of the garden. `garden` is the project for whose place it is told; the
/// project's own figures then take the place of the built-in ones.
#[must_use]
pub fn crop(catalogue: &Catalogue, entry: &Entry, garden: Option<&Garden>) -> Page {
    let own = garden.and_then(|garden| garden.crop_named(&entry.crop.name));
    told(catalogue, entry, own.unwrap_or(&entry.crop), garden)
}

/// All that is known of a crop that the project adds. `entry` is the crop that it is like.
#[must_use]
pub fn added_crop(catalogue: &Catalogue, entry: &Entry, added: &Crop, garden: &Garden) -> Page {
    told(catalogue, entry, added, Some(garden))
}

fn told(catalogue: &Catalogue, entry: &Entry, crop: &Crop, garden: Option<&Garden>) -> Page {
    let locale = garden.map_or_else(Locale::default, |garden| garden.locale);
    let words = Words::in_locale(locale);
    let mut page = Page::new();
    page.title(&match &crop.like {
        Some(like) => format!("{}, taken to be like {like}", sentence(&crop.name)),
        None => format!("{} ({})", sentence(&crop.name), crop.botanical),
    });
    if let Some(like) = &crop.like {
        page.paragraph(&format!(
            "The program does not know {0}: your file adds it under [crop]. Every figure is that of {like}, \
             unless it is marked as your own. So are the cautions: ask what else is to be known of {0}, above \
             all which of its parts are poisonous or cause allergies.",
            crop.name
        ));
    }
    page.paragraph(&in_short(entry, crop));
    page.paragraph(
        "In brackets: where a figure comes from. The works are named at the end. Before it: the key of \
         a figure that a section [crop.NAME] of the project file can replace.",
    );
    let keys = project::keys(catalogue);
    let mut sections = figures::by_heading(entry, crop, words).into_iter();
    for (heading, figures) in sections.by_ref().take(1) {
        write_figures(heading, figures, crop, &keys, &mut page);
    }
    if let Some(garden) = garden {
        place::write(garden, crop, has_own_figures(entry, crop), &mut page);
    }
    for (heading, figures) in sections {
        write_figures(heading, figures, crop, &keys, &mut page);
    }
    notes(entry, &mut page);
    sources(catalogue, entry, &mut page);
    page
}

/// True if a figure is not that of the entry.
fn has_own_figures(entry: &Entry, crop: &Crop) -> bool {
    let built_in = Crop {
        name: crop.name.clone(),
        like: crop.like.clone(),
        ..entry.crop.clone()
    };
    *crop != built_in
}

/// The crop in a few sentences.
fn in_short(entry: &Entry, crop: &Crop) -> String {
    let ways: Vec<String> = crop.methods.iter().map(|m| way(*m).to_owned()).collect();
    let started = if ways.is_empty() {
        "It stands for years in a patch of its own and is not sown for one day".to_owned()
    } else {
        format!("It is {}", choice(&ways))
    };
    let frost = match crop.frost {
        FrostResponse::Killed => format!("Air colder than {} C kills it.", crop.frost_limit.0),
        FrostResponse::SetBack { .. } => format!(
            "Air colder than {} C takes its leaves, and it grows again.",
            crop.frost_limit.0
        ),
    };
    let others = if entry.other_names.is_empty() || crop.like.is_some() {
        String::new()
    } else {
        format!(" It is also found as {}.", list(&entry.other_names))
    };
    format!(
        "A {}-season crop of the {} family. {started}. {frost}{others}",
        season(crop),
        crop.rotation.family
    )
}

/// Columns of the labels.
const LABELS: usize = 18;

/// The figures under one heading, each with its source in brackets, and its key.
fn write_figures(heading: &str, figures: Vec<Figure>, crop: &Crop, keys: &[Key], page: &mut Page) {
    if figures.is_empty() {
        return;
    }
    page.heading(heading);
    if heading == figures::TAKE_CARE {
        for figure in figures {
            page.item(&format!("{} [{}]", figure.text, figure.source));
        }
        return;
    }
    if heading == figures::COMING_UP {
        coming_up::table(crop, page);
        page.gap();
    }
    let row = |figure: Figure| {
        let mut fields = figure.fields.iter();
        let key = fields.find_map(|field| key_of_figure(keys, field));
        let key = key.map_or_else(String::new, |key| format!("{key} "));
        vec![
            figure.label.to_owned(),
            figure.text,
            format!("{key}[{}]", figure.source),
        ]
    };
    page.labelled(figures.into_iter().map(row).collect(), LABELS);
}

fn notes(entry: &Entry, page: &mut Page) {
    if entry.notes.is_empty() {
        return;
    }
    page.heading("Notes");
    for note in &entry.notes {
        page.item(note);
    }
}

/// The works behind the figures, each once, in full.
fn sources(catalogue: &Catalogue, entry: &Entry, page: &mut Page) {
    page.heading("Sources");
    let mut keys: Vec<&str> = entry.sources().flat_map(|(_, s)| source_keys(s)).collect();
    keys.sort_unstable();
    keys.dedup();
    for key in keys.iter().filter(|key| ![MEMORY, PRACTICE].contains(key)) {
        let citation = catalogue.citation(key).unwrap_or_default();
        page.item(&format!("{key}: {citation}"));
    }
    if keys.contains(&MEMORY) {
        page.item(
            "from memory: no work was looked up. Put what you have seen yourself, or what your \
             packet says, under [crop] in the project file.",
        );
    }
    page.item("worked out: follows from the other figures.");
}
