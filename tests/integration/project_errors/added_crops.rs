//! Crops that the file adds with `like`: their figures, and where they may be named.

use tureen::catalogue::Catalogue;
use tureen::diagnostic::Code;
use tureen::garden::{Crop, DayLengthKind, Garden};
use tureen::page::Look;
use tureen::project;
use tureen::report;
use tureen::units::Hours;

use super::{AUTUMN, MINIMAL, catalogue};

/// The smallest file with this crop in its dish, and these sections.
fn with(crop: &str, sections: &str) -> String {
    let file = MINIMAL.replacen("\"carrot\"", &format!("{crop:?}"), 1);
    format!("{file}\n{sections}\n")
}

fn loaded(text: &str) -> Garden {
    let read = project::load_text("garden.toml", text, Some(AUTUMN), catalogue());
    read.unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)))
}

fn kale(catalogue: &Catalogue) -> Crop {
    catalogue.get("kale").expect("kale").clone()
}

#[test]
fn it_has_the_figures_of_the_other_crop_and_its_own_in_their_place() {
    let section = "[crop.skirret]\nlike = \"Borecole\"\nstorage_days = 21\nsoil_cm = 25";
    let garden = loaded(&with("skirret", section));
    let added = &garden.ingredients[0].crop;
    let mut expected = kale(catalogue());
    expected.name = "skirret".to_owned();
    expected.like = Some("kale".to_owned());
    expected.picking.storage_days = 21;
    expected.needs.soil = tureen::units::Centimetres(25.0);
    assert_eq!(*added, expected);
    assert_eq!(garden.ingredients[0].name, "skirret");
}

#[test]
fn a_crop_of_the_catalogue_is_like_no_other() {
    for name in catalogue().names() {
        assert_eq!(catalogue().get(name).expect(name).like, None, "{name}");
    }
}

#[test]
fn a_bed_may_have_carried_it() {
    let section = "[crop.skirret]\nlike = \"kale\"";
    let file = with("skirret", section);
    let file = file.replacen(
        "width_m = 1.2",
        "width_m = 1.2\ngrew = { 2026 = [\"SKIRRET\"] }",
        1,
    );
    let family = kale(catalogue()).rotation.family;
    assert_eq!(loaded(&file).beds[0].grew, [(2026, vec![family])]);
}

#[test]
fn a_misspelt_name_is_told_with_the_added_one_beside_those_of_the_catalogue() {
    let file = with("skirett", "[crop.skirret]\nlike = \"kale\"");
    let read = project::load_text("garden.toml", &file, Some(AUTUMN), catalogue());
    let told = read.expect_err("a misspelt crop").render(false, 100);
    assert!(told.contains("did you mean \"skirret\"?"), "{told}");
    let file = with("kail", "");
    let read = project::load_text("garden.toml", &file, Some(AUTUMN), catalogue());
    let told = read.expect_err("a misspelt crop").render(false, 100);
    assert!(told.contains("did you mean \"kale\"?"), "{told}");
    let file = with("skirret", "");
    let read = project::load_text("garden.toml", &file, Some(AUTUMN), catalogue());
    let told = read.expect_err("an unknown crop").render(false, 100);
    assert!(told.contains("[crop.\"skirret\"] with `like"), "{told}");
}

#[test]
fn every_page_asks_for_what_the_program_cannot_know() {
    let told = |garden: &Garden| -> Vec<String> {
        let all = tureen::facts::cautions::of_the_plan(garden);
        all.iter()
            .map(|c| tureen::words::cautions::text(garden, c))
            .collect()
    };
    let words = "takes it to be like kale; ask what is poisonous of it";
    let is_told = |garden: &Garden| told(garden).iter().any(|text| text.contains(words));
    assert!(is_told(&loaded(&with(
        "skirret",
        "[crop.skirret]\nlike = \"kale\""
    ))));
    assert!(!is_told(&loaded(&with("kale", ""))));
}

#[test]
fn its_page_tells_whose_figures_they_are() {
    let section = "[crop.skirret]\nlike = \"kale\"\nstorage_days = 21";
    let garden = loaded(&with("skirret", section));
    let entry = catalogue().entry("kale").expect("kale");
    let added = garden.crop_named("SKIRRET").expect("the added crop");
    let page = report::added_crop(catalogue(), entry, added, &garden);
    let look = Look {
        width: 1000,
        color: false,
    };
    let text = page.text(look);
    for part in [
        "Skirret, taken to be like kale",
        "Every figure is that of kale, unless it is marked as your own.",
        "[your own; built in: 10 days once picked]",
    ] {
        assert!(text.contains(part), "{part}\n{text}");
    }
    let own = text.matches("[your own").count();
    assert_eq!(own, 1, "{text}");
    assert!(!text.contains("also found as"), "{text}");
}

/// A packet that says from how many hours of light its kind makes bulbs is believed; a carrot has none.
#[test]
fn the_day_length_of_a_kind_is_the_files_own() {
    let onions = |hours: &str| {
        let own = format!("[crop.\"onion (from sets)\"]\nbulbs_from_hours = {hours}");
        with("onion (from sets)", &own)
    };
    let garden = loaded(&onions("12.5"));
    let bulbs = garden.ingredients[0].crop.bulbs.expect("onions make bulbs");
    assert_eq!(bulbs.day_length.at(garden.latitude), Hours(12.5));
    assert_eq!(bulbs.kind_at(garden.latitude), None);
    let bulbs = loaded(&with("onion (from sets)", "")).ingredients[0]
        .crop
        .bulbs;
    let kind = bulbs.and_then(|bulbs| bulbs.kind_at(garden.latitude));
    assert_eq!(kind, Some(DayLengthKind::Long));
    let codes = |text: &str| -> Vec<Code> {
        let read = project::load_text("garden.toml", text, Some(AUTUMN), catalogue());
        read.expect_err("it has a fault").codes().collect()
    };
    assert_eq!(codes(&onions("25")), [Code::OutOfRange]);
    let carrot = with("carrot", "[crop.carrot]\nbulbs_from_hours = 12");
    assert_eq!(codes(&carrot), [Code::KeyWithoutEffect]);
}

/// What the cook takes in its place may be a crop of the catalogue, by any of its names, or one that the file adds.
#[test]
fn what_the_cook_takes_in_its_place_is_known_by_name() {
    let instead = |names: &str| {
        let own = "[crop.oca]\nlike = \"potato\"\ndays_to_maturity = 150";
        let file = with("carrot", own);
        file.replacen(
            "crop = \"carrot\"",
            &format!("crop = \"carrot\"\ninstead = {names}"),
            1,
        )
    };
    let garden = loaded(&instead("[\"rocket\", \"oca\"]"));
    let taken = &garden.ingredients[0].instead;
    let names: Vec<&str> = taken.iter().map(|crop| crop.name.as_str()).collect();
    assert_eq!(names, ["arugula", "oca"]);
    // With the figures that the file gives it.
    assert_eq!(taken[1].ripening.days_from_sowing, Some(150.0));
    let read = project::load_text(
        "garden.toml",
        &instead("[\"oca\", \"spinich\"]"),
        Some(AUTUMN),
        catalogue(),
    );
    let told = read.expect_err("it is misspelt").render(false, 100);
    assert!(told.contains("did you mean \"spinach\"?"), "{told}");
    // Without it nobody grows or takes what the file adds.
    let unused = with(
        "carrot",
        "[crop.oca]\nlike = \"potato\"\ndays_to_maturity = 150",
    );
    let read = project::load_text("garden.toml", &unused, Some(AUTUMN), catalogue());
    assert!(read.is_err());
}
