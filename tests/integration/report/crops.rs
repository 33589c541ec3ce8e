//! The screens of `crops`: the list, one crop with every figure and its source, and what it
//! means for a place.

use std::collections::BTreeSet;

use tureen::catalogue::{Catalogue, Entry, MEMORY, PRACTICE, source_keys};
use tureen::garden::{Garden, Locale};
use tureen::report::{self, crops};
use tureen::units::Celsius;
use tureen::words::Words;
use tureen::words::figures::figures;

use super::plain;
use super::screens::compare;
use crate::support::gardens::tiny_garden;

fn catalogue() -> Catalogue {
    Catalogue::load().unwrap()
}

/// Wide enough that nothing is broken into lines.
const WIDE: usize = 1000;

fn entries(catalogue: &Catalogue) -> Vec<&Entry> {
    catalogue
        .names()
        .filter_map(|n| catalogue.entry(n))
        .collect()
}

/// The page of a crop, for a garden or for nobody's.
fn page(name: &str, garden: Option<&Garden>, width: usize) -> String {
    let catalogue = catalogue();
    let entry = catalogue.entry(name).unwrap();
    report::crop(&catalogue, entry, garden).text(plain(width))
}

/// The tiny garden, in which the tomato is that of the catalogue, changed by `change`.
fn garden(change: impl Fn(&mut tureen::garden::Crop)) -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients[1].crop = catalogue().get("tomato").unwrap().clone();
    change(&mut garden.ingredients[1].crop);
    garden
}

#[test]
fn the_list_of_all_crops() {
    let text = crops(&catalogue()).text(plain(100));
    compare("crops", &text);
    for entry in entries(&catalogue()) {
        let name = tureen::words::sentence(&entry.crop.name);
        let lines = text.lines().filter(|l| {
            l.strip_prefix(&format!("  {name}"))
                .is_some_and(|rest| rest.starts_with("  "))
        });
        assert_eq!(lines.count(), 1, "{name} has one line");
    }
}

#[test]
fn one_crop() {
    compare("crop", &page("dry bean", None, 100));
}

#[test]
fn one_crop_at_a_place() {
    let text = page("tomato", Some(&garden(|_| {})), 100);
    let (place, _) = text.split_once("\nSTARTING IT").unwrap();
    compare("crop-at-a-place", place);
}

/// The fields of an entry that are no groups of others.
fn single_fields(entry: &Entry) -> Vec<(&str, &str)> {
    let all: Vec<(&str, &str)> = entry.sources().collect();
    let is_group = |field: &str| {
        let within = format!("{field}.");
        all.iter().any(|(other, _)| other.starts_with(&within))
    };
    all.iter()
        .copied()
        .filter(|(field, _)| !is_group(field))
        .collect()
}

#[test]
fn every_figure_of_every_crop_is_shown_once_with_its_source() {
    let catalogue = catalogue();
    for entry in entries(&catalogue) {
        let name = &entry.crop.name;
        let page = report::crop(&catalogue, entry, None).text(plain(WIDE));
        let shown = figures(entry, Words::in_locale(Locale::British));
        for (field, source) in single_fields(entry) {
            let showing: Vec<_> = shown.iter().filter(|f| f.fields.contains(&field)).collect();
            assert_eq!(showing.len(), 1, "{name}: {field} is shown once");
            let figure = showing[0];
            let named = source.replace(MEMORY, "from memory");
            assert!(figure.source.contains(&named), "{name}: {field}: {source}");
            let on_page = page.lines().any(|line| {
                line.contains(&figure.text.replace('\u{a0}', " "))
                    && line.ends_with(&format!("[{}]", figure.source))
            });
            assert!(on_page, "{name}: {field}: {} in\n{page}", figure.text);
        }
    }
}

#[test]
fn every_work_is_cited_once_in_full_and_no_other() {
    let catalogue = catalogue();
    for entry in entries(&catalogue) {
        let page = report::crop(&catalogue, entry, None).text(plain(WIDE));
        let (_, sources) = page.split_once("\nSOURCES\n").unwrap();
        let used: BTreeSet<&str> = entry.sources().flat_map(|(_, s)| source_keys(s)).collect();
        let cited: Vec<&str> = sources
            .lines()
            .filter_map(|l| l.trim_start().strip_prefix("- ")?.split_once(": "))
            .map(|(key, _)| key)
            .filter(|key| *key != "worked out")
            .collect();
        let wanted: Vec<&str> = used
            .iter()
            .copied()
            .filter(|key| ![MEMORY, PRACTICE].contains(key))
            .chain(used.contains(MEMORY).then_some("from memory"))
            .collect();
        assert_eq!(cited, wanted, "{}", entry.crop.name);
        for key in used.iter().filter(|key| ![MEMORY, PRACTICE].contains(key)) {
            let citation = catalogue.citation(key).unwrap();
            assert_eq!(page.matches(citation).count(), 1, "{key}");
        }
    }
}

#[test]
fn cautions_notes_and_other_names_are_told() {
    let catalogue = catalogue();
    for entry in entries(&catalogue) {
        let page = report::crop(&catalogue, entry, None).text(plain(WIDE));
        let caution = &entry.crop.caution;
        assert!(page.contains(&caution.text), "{}", entry.crop.name);
        if let Some(allergen) = &caution.allergen {
            assert!(page.contains(&format!("ask the school nurse about {allergen}")));
        }
        for text in entry.notes.iter().chain(&entry.other_names) {
            assert!(page.contains(text), "{}: {text}", entry.crop.name);
        }
    }
}

#[test]
fn days_to_come_up_stand_under_the_warmth_of_the_soil() {
    // HM1954, tomato: 43, 14, 8, 6, 6, 9 days at 10 to 35 C; at 5 C and 40 C it does not come up.
    let page = page("tomato", None, 100);
    let row = |start: &str| -> Vec<String> {
        let line = page
            .lines()
            .find(|l| l.trim_start().starts_with(start))
            .unwrap();
        line.split_whitespace().map(str::to_owned).collect()
    };
    assert_eq!(
        row("Days  ")[1..],
        ["none", "none", "43", "14", "8", "6", "6", "9", "none"]
    );
    assert_eq!(row("Soil of")[2..6], ["0", "C", "5", "C"]);
    assert!(page.contains("none: it does not come up"), "{page}");
}

#[test]
fn figures_of_the_project_take_the_place_of_the_built_in_ones_and_are_marked() {
    let own = garden(|crop| {
        crop.ripening.days_from_planting = Some(60.0);
        crop.frost_limit = Celsius(1.0);
        crop.picking.cure_days = 2;
    });
    let text = page("tomato", Some(&own), WIDE);
    for part in [
        "60 days, as packets say",
        "[your own; built in: 72 days, as packets say]",
        "Air colder than 1 C kills it",
        "2 days of drying",
        "with your own figures from the project file",
    ] {
        assert!(text.contains(part), "\"{part}\" is missing in\n{text}");
    }
    let built_in = page("tomato", Some(&garden(|_| {})), WIDE);
    assert!(!built_in.contains("your own"), "{built_in}");
    assert!(!built_in.contains("drying"), "{built_in}");
    // A crop that the project does not grow is told with the built-in figures.
    assert!(!page("leek", Some(&own), WIDE).contains("your own"));
}

#[test]
fn a_perennial_has_no_day_to_sow_it_on() {
    let text = page("rhubarb", Some(&tiny_garden()), 100);
    assert!(text.contains("there is no day to sow it on"), "{text}");
    assert!(!text.contains("Gets ripe"), "{text}");
}

#[test]
fn a_record_too_short_to_grow_a_start_of_any_day_is_told() {
    let mut short = tiny_garden();
    let days = short.weather.days()[..500].to_vec();
    short.weather = tureen::weather::Record::new(short.weather.first(), days, false);
    let text = page("radish", Some(&short), 100);
    assert!(text.contains("it takes two whole years"), "{text}");
}
