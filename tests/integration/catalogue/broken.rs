//! Broken catalogue files are refused with the place and the fault, never with a panic.

use tureen::catalogue::{Catalogue, CatalogueError, Fault};

const FRUITS: &str = include_str!("../../../src/catalogue/data/fruits.toml");
const GERMINATION: &str = include_str!("../../../src/catalogue/data/germination.toml");
const SOURCES: &str = include_str!("../../../src/catalogue/data/sources.toml");

/// Reads the fruits with their first `from` replaced by `to`.
fn fruits_with(from: &str, to: &str) -> Result<Catalogue, CatalogueError> {
    assert!(FRUITS.contains(from), "{from} is not there to be broken");
    let text = FRUITS.replacen(from, to, 1);
    Catalogue::read(&[("fruits.toml", &text)], GERMINATION, SOURCES)
}

/// The fault in the first crop of the fruits, which is tomato.
fn fault_of_tomato(from: &str, to: &str) -> Fault {
    let error = fruits_with(from, to).expect_err("broken");
    assert_eq!(error.file, "fruits.toml");
    assert_eq!(error.crop.as_deref(), Some("tomato"));
    error.fault
}

#[test]
fn the_unbroken_file_is_read() {
    let fruits = fruits_with("tomato", "tomato").expect("unbroken");
    assert!(fruits.get("tomato").is_some());
}

#[test]
fn a_row_that_the_table_lacks() {
    let fault = fault_of_tomato(r#"table = "tomato""#, r#"table = "tomatillo""#);
    assert_eq!(fault, Fault::UnknownRow("tomatillo".into()));
}

#[test]
fn a_source_without_a_citation() {
    let fault = fault_of_tomato("7CFR201.31", "7CFR201.99");
    assert_eq!(fault, Fault::UnknownSource("7CFR201.99".into()));
}

#[test]
fn one_of_two_sources_without_a_citation() {
    let fault = fault_of_tomato("ISU-WEEKS", "ISU-DAYS");
    assert_eq!(fault, Fault::UnknownSource("ISU-DAYS".into()));
}

#[test]
fn a_source_for_a_figure_that_is_not_given() {
    let fault = fault_of_tomato("indoor.cells =", "indoor.flats =");
    assert_eq!(fault, Fault::SourceOfNothing("indoor.flats".into()));
}

#[test]
fn a_figure_that_is_missing_misspelt_or_no_number() {
    for (from, to, told) in [
        ("germinates = 0.75\n", "", "missing field `germinates`"),
        ("usable = 0.9", "useable = 0.9", "unknown field `useable`"),
        (
            "soil = 30",
            "soil = \"deep\"",
            "invalid type: string \"deep\"",
        ),
        ("weeks = [5, 7]", "weeks = [5]", "invalid length 1"),
        ("\"indoor\"", "\"indoors\"", "unknown variant `indoors`"),
    ] {
        match fault_of_tomato(from, to) {
            Fault::Toml(error) => assert!(error.to_string().contains(told), "{error}"),
            other => panic!("{from}: {other:?}"),
        }
    }
}

#[test]
fn a_name_that_is_taken() {
    for (from, to, taken) in [
        (r#"name = "sweet pepper""#, r#"name = "tomato""#, "tomato"),
        (
            r#"name = "sweet pepper""#,
            r#"name = "Tomatoes""#,
            "Tomatoes",
        ),
        (r#""bell pepper""#, r#""cherry tomato""#, "cherry tomato"),
    ] {
        let error = fruits_with(from, to).expect_err("broken");
        assert_eq!(error.fault, Fault::NameTaken(taken.into()));
    }
}

#[test]
fn how_a_crop_is_done_must_name_a_crop_and_be_in_its_shape() {
    let crops = [("fruits.toml", FRUITS)];
    let mut catalogue = Catalogue::read(&crops, GERMINATION, SOURCES).expect("sound");
    let kale = "[kale]\nripe = \"long_leaves\"\ntake = \"pick\"";
    let error = catalogue.add_how(kale).expect_err("no kale in the file");
    assert_eq!(error, Fault::UnknownCrop("kale".to_owned()));
    assert_eq!(error.to_string(), "no crop file has \"kale\"");
    let tomato = "[tomato]\nripe = \"blue\"\ntake = \"pick\"";
    let error = catalogue.add_how(tomato).expect_err("no such sign");
    assert!(matches!(error, Fault::Toml(_)), "{error}");
    let tomato = "[tomato]\nripe = \"full_colour\"\ntake = \"pick\"";
    catalogue.add_how(tomato).expect("sound");
    assert!(catalogue.get("tomato").expect("tomato").how.is_some());
}

#[test]
fn files_that_are_no_toml() {
    let crops = [("fruits.toml", FRUITS)];
    for (error, file) in [
        (fruits_with("[[crop]]", "[[crop"), "fruits.toml"),
        (
            Catalogue::read(&crops, "[HM1954", SOURCES),
            "germination.toml",
        ),
        (
            Catalogue::read(&crops, GERMINATION, "HM1954"),
            "sources.toml",
        ),
    ] {
        let error = error.expect_err("broken");
        assert_eq!(error.file, file);
        assert_eq!(error.crop, None);
        assert!(matches!(error.fault, Fault::Toml(_)), "{error}");
    }
}

#[test]
fn a_table_whose_section_or_row_is_wrong() {
    let crops = [("fruits.toml", FRUITS)];
    let section = GERMINATION.replacen("[HM1954]", "[HM1955]", 1);
    let error = Catalogue::read(&crops, &section, SOURCES).expect_err("broken");
    assert_eq!(error.fault, Fault::UnknownSource("HM1955".into()));
    let twice = GERMINATION.replacen("broccoli", "cabbage", 1);
    let error = Catalogue::read(&crops, &twice, SOURCES).expect_err("broken");
    assert_eq!(error.fault, Fault::NameTaken("cabbage".into()));
}

#[test]
fn the_message_names_file_crop_and_fault() {
    let error = fruits_with(r#"table = "tomato""#, r#"table = "tomatillo""#).expect_err("broken");
    assert_eq!(
        error.to_string(),
        "catalogue file fruits.toml, crop tomato: germination.toml has no row \"tomatillo\""
    );
}

#[test]
fn a_crop_without_a_name_is_told_by_its_number() {
    let error = fruits_with("name = \"tomato\"\n", "").expect_err("broken");
    assert_eq!(error.crop.as_deref(), Some("number 1"));
}
