//! What a beginner is told to write for a date, an hour or a figure that is written in another way: every
//! order of day and month, every kind of hour, every unit.

use super::{MINIMAL, load};

const FEAST: &str = "feast = 2027-10-08";
const LENGTH: &str = "length_m = 3.6";
const GRAMS: &str = "grams_per_portion = 25";
const DAY: &str = "day = \"Tue\"";

fn told(right: &str, wrong: &str) -> String {
    assert!(MINIMAL.contains(right), "{right}");
    let text = MINIMAL.replacen(right, wrong, 1);
    load(&text).expect_err(wrong).render(false, 100)
}

/// What follows `feast = ` in the remedy for a date; nothing if it is taken for none.
fn dates(written: &str) -> Option<String> {
    let told = told(FEAST, &format!("feast = {written}"));
    if !told.contains("is not how a date is written here") {
        return None;
    }
    let (_, right) = told.split_once("write year-month-day: feast = ")?;
    let end = right.find(['\n', ',']).unwrap_or(right.len());
    Some(right[..end].to_owned())
}

#[test]
fn a_date_is_told_in_every_reading() {
    for (written, readings) in [
        ("10/8/2027", "2027-10-08 or 2027-08-10"),
        ("13/8/2027", "2027-08-13"),
        ("8/13/2027", "2027-08-13"),
        ("8/8/2027", "2027-08-08"),
        ("8/8/27", "2027-08-08"),
        ("8/8/99", "2099-08-08"),
        ("2027/10/8", "2027-10-08"),
        ("8.10.2027", "2027-10-08"),
        ("8. 10. 2027", "2027-10-08"),
        ("31.12.1900", "1900-12-31"),
        ("1.1.2200", "2200-01-01"),
        ("8 Oct 2027", "2027-10-08"),
        ("8th October 2027", "2027-10-08"),
        ("Oct 8th 2027", "2027-10-08"),
        ("Friday, 8 October 2027", ""),
        ("1 Sep 2027", "2027-09-01"),
        ("1 Sept 2027", "2027-09-01"),
        ("31 december 2027", "2027-12-31"),
    ] {
        let found = dates(written);
        let expected = (!readings.is_empty()).then(|| readings.to_owned());
        assert_eq!(found, expected, "{written}");
    }
    // No day, or one of no year in which a school plans.
    for written in [
        "13/13/2027",
        "1.1.2201",
        "31.12.1899",
        "8 Oc 2027",
        "8 Octobre 2027",
        "30.2.2027",
    ] {
        assert_eq!(dates(written), None, "{written}");
    }
}

#[test]
fn an_hour_is_told_in_two_digits_each() {
    for (written, right) in [
        ("9:00", "09:00"),
        ("9:05", "09:05"),
        ("9 am", "09:00"),
        ("9am", "09:00"),
        ("11:30am", "11:30"),
        ("12am", "00:00"),
        ("12:15am", "00:15"),
        ("12pm", "12:00"),
        ("1pm", "13:00"),
        ("2.30 pm", "14:30"),
        ("11:59pm", "23:59"),
    ] {
        let told = told(DAY, &format!("{DAY}, at = {written}"));
        let right = format!("write two digits for hours and for minutes: at = {right}");
        assert!(told.contains(&right), "{written}\n{told}");
    }
    for written in ["24:00", "9:60", "25pm:00"] {
        let told = told(DAY, &format!("{DAY}, at = {written}"));
        assert!(told.contains("00:00 to 23:59"), "{written}\n{told}");
    }
}

/// A foot is 0.3048 m, an inch 0.0254 m, a yard 0.9144 m, an ounce 28.349 523 125 g, a pound 453.592 37 g (NIST
/// SP 811, exact).
#[test]
fn a_figure_in_another_unit_is_told_in_that_of_its_key() {
    for (right, key, written, figure) in [
        (LENGTH, "length_m", "12 ft", "3.658"),
        (LENGTH, "length_m", "12 feet", "3.658"),
        (LENGTH, "length_m", "140 in", "3.556"),
        (LENGTH, "length_m", "4 yd", "3.658"),
        (LENGTH, "length_m", "360 cm", "3.6"),
        (LENGTH, "length_m", "3600 mm", "3.6"),
        (LENGTH, "length_m", "3,6 m", "3.6"),
        (LENGTH, "length_m", "3.6", "3.6"),
        (GRAMS, "grams_per_portion", "1 oz", "28.35"),
        (GRAMS, "grams_per_portion", "0.05 lb", "22.68"),
        (GRAMS, "grams_per_portion", "0.025 kg", "25"),
        (GRAMS, "grams_per_portion", "25 g", "25"),
    ] {
        let told = told(right, &format!("{key} = \"{written}\""));
        let remedy = format!("write digits without quotes: {key} = {figure}");
        assert!(told.contains(&remedy), "{written}\n{told}");
    }
    // What measures something else, or is out of range, is not turned into anything.
    for (right, wrong) in [
        (LENGTH, "length_m = \"12 kg\""),
        (LENGTH, "length_m = \"12 minutes\""),
        (LENGTH, "length_m = \"5100 cm\""),
        (LENGTH, "length_m = \"wide\""),
        (GRAMS, "grams_per_portion = \"3 cm\""),
    ] {
        let told = told(right, wrong);
        assert!(
            told.contains("write digits without quotes\n"),
            "{wrong}\n{told}"
        );
    }
}

#[test]
fn a_figure_that_is_in_range_in_another_unit_is_told_so() {
    for (right, wrong, remedy) in [
        (
            LENGTH,
            "length_m = 360",
            "it is in m; if 360 are centimetres, write length_m = 3.6",
        ),
        (
            LENGTH,
            "length_m = 5000",
            "if 5000 are centimetres, write length_m = 50",
        ),
        (
            GRAMS,
            "grams_per_portion = 25\nleast_share = 30",
            "it is a part of 1; if 30 are per cent, write least_share = 0.3",
        ),
        (
            GRAMS,
            "grams_per_portion = 25\nleast_share = 100",
            "if 100 are per cent, write least_share = 1",
        ),
    ] {
        let told = told(right, wrong);
        assert!(told.contains(remedy), "{wrong}\n{told}");
    }
    for wrong in ["length_m = 5001", "length_m = 20.0e8", "length_m = 0.1"] {
        let told = told(LENGTH, wrong);
        assert!(!told.contains("centimetres"), "{wrong}\n{told}");
    }
}
