//! How warm crops are kept, and what fills a crate.

use tureen::garden::{CRATE, Freezing};
use tureen::units::Kilograms;

use super::check::Check;
use super::ours::{catalogue, crop, fahrenheit};

/// Coldest and warmest, degrees F.
const STORED: [(&str, f64, f64, &str); 51] = [
    ("tomato", 45.0, 55.0, "HB66-1954"),
    ("sweet pepper", 45.0, 50.0, "NEVMG-T16"),
    ("eggplant", 50.0, 50.0, "NEVMG-T16"),
    ("cucumber", 50.0, 50.0, "NEVMG-T16"),
    ("summer squash", 45.0, 50.0, "HB66-1954"),
    ("winter squash", 50.0, 55.0, "HB66-1954"),
    ("pumpkin", 50.0, 55.0, "HB66-1954"),
    ("melon", 36.0, 40.0, "NEVMG-T16"),
    ("sweet corn", 32.0, 32.0, "HB66-1954"),
    ("okra", 45.0, 50.0, "NEVMG-T16"),
    ("potato", 40.0, 50.0, "ISU-STORE"),
    ("carrot", 32.0, 32.0, "NEVMG-T16"),
    ("beet", 32.0, 32.0, "HB66-1954"),
    ("radish", 32.0, 32.0, "HB66-1954"),
    ("turnip", 32.0, 32.0, "HB66-1954"),
    ("parsnip", 32.0, 32.0, "NEVMG-T16"),
    ("sweet potato", 55.0, 60.0, "ISU-STORE"),
    ("onion (from seed)", 32.0, 40.0, "ISU-STORE"),
    ("onion (from sets)", 32.0, 40.0, "ISU-STORE"),
    ("leek", 32.0, 32.0, "NEVMG-T16"),
    ("scallion", 32.0, 32.0, "NEVMG-T16"),
    ("garlic", 32.0, 35.0, "KSU-CELLAR"),
    ("lettuce (leaf)", 32.0, 36.0, "NEVMG-T16"),
    ("lettuce (head)", 32.0, 36.0, "NEVMG-T16"),
    ("spinach", 32.0, 32.0, "HB66-1954"),
    ("kale", 32.0, 32.0, "NEVMG-T16"),
    ("cabbage", 32.0, 32.0, "NEVMG-T16"),
    ("broccoli", 32.0, 32.0, "NEVMG-T16"),
    ("cauliflower", 32.0, 32.0, "NEVMG-T16"),
    ("celery", 32.0, 32.0, "NEVMG-T16"),
    ("bush bean", 40.0, 45.0, "NEVMG-T16"),
    ("pole bean", 40.0, 45.0, "NEVMG-T16"),
    ("dry bean", 32.0, 50.0, "KSU-CELLAR"),
    ("shelling pea", 32.0, 32.0, "NEVMG-T16"),
    ("snap pea", 32.0, 32.0, "NEVMG-T16"),
    ("basil", 46.0, 50.0, "NEVMG-T16"),
    ("parsley", 32.0, 32.0, "NEVMG-T16"),
    ("dill", 32.0, 32.0, "UCD-STORE"),
    ("chives", 32.0, 32.0, "UCD-STORE"),
    ("rhubarb", 32.0, 32.0, "HB66-1954"),
    ("asparagus", 32.0, 36.0, "NEVMG-T16"),
    ("watermelon", 50.0, 55.0, "HB66-1954"),
    ("collards", 32.0, 32.0, "NEVMG-T16"),
    ("mustard", 32.0, 32.0, "NEVMG-T16"),
    ("brussels sprouts", 32.0, 32.0, "NEVMG-T16"),
    ("napa cabbage", 32.0, 32.0, "NEVMG-T16"),
    ("endive", 32.0, 32.0, "NEVMG-T16"),
    ("kohlrabi", 32.0, 32.0, "NEVMG-T16"),
    ("rutabaga", 32.0, 32.0, "HB66-1954"),
    ("daikon", 32.0, 32.0, "HB66-1954"),
    ("snow pea", 32.0, 32.0, "NEVMG-T16"),
];

/// Least and most minutes in boiling water before a crop is frozen, of pieces of the size that the table names.
const SCALDED: [(&str, f64, f64); 7] = [
    ("asparagus", 3.0, 3.0),
    ("broccoli", 3.0, 4.0),
    ("brussels sprouts", 4.0, 4.0),
    ("sweet corn", 4.0, 4.0),
    ("lima bean", 3.0, 3.0),
    ("shelling pea", 1.5, 1.5),
    ("rhubarb", 1.5, 1.5),
];

/// Pounds in a box, and bushels that the box holds.
const BOXES: [(&str, f64, f64, &str); 19] = [
    ("tomato", 53.0, 1.0, "GFB-BUSHEL"),
    ("eggplant", 25.0, 10.0 / 9.0, "NEVMG-T15"),
    ("cucumber", 40.0, 10.0 / 9.0, "NEVMG-T15"),
    ("summer squash", 40.0, 1.0, "GFB-BUSHEL"),
    ("melon", 40.0, 10.0 / 9.0, "NEVMG-T15"),
    ("sweet corn", 35.0, 1.0, "GFB-BUSHEL"),
    ("okra", 26.0, 1.0, "GFB-BUSHEL"),
    ("turnip", 54.0, 1.0, "GFB-BUSHEL"),
    ("sweet potato", 50.0, 1.0, "GFB-BUSHEL"),
    ("onion (from seed)", 57.0, 1.0, "GFB-BUSHEL"),
    ("onion (from sets)", 57.0, 1.0, "GFB-BUSHEL"),
    ("leek", 15.0, 0.75, "NEVMG-T15"),
    ("garlic", 10.0, 0.5, "NEVMG-T15"),
    ("spinach", 20.0, 1.0, "GFB-BUSHEL"),
    ("kale", 20.0, 1.75, "NEVMG-T15"),
    ("cabbage", 50.0, 5.0 / 3.0, "NEVMG-T15"),
    ("cauliflower", 25.0, 10.0 / 9.0, "NEVMG-T15"),
    ("bush bean", 20.0, 10.0 / 9.0, "NEVMG-T15"),
    ("pole bean", 20.0, 10.0 / 9.0, "NEVMG-T15"),
];

/// Litres of a US bushel: 2150.42 cubic inches of 2.54 cm.
const BUSHEL: f64 = 2150.42 * 16.387_064 / 1000.0;

/// The catalogue keeps tenths.
const TENTHS: f64 = 0.0501;

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks = Vec::new();
    for (name, coldest, warmest, source) in STORED {
        let (low, high) = crop(&catalogue, name).kitchen.temperature;
        for (what, ours, printed) in [("coldest", low, coldest), ("warmest", high, warmest)] {
            let what = format!("{name}: {what} in store");
            let printed = fahrenheit(printed).0;
            let check = Check::number(&what, ours.0, printed, TENTHS, source);
            checks.push(check.of(&[name], "kitchen.temperature"));
        }
    }
    let pound = 1.0 / Kilograms(1.0).to_pounds().0;
    for (name, pounds, bushels, source) in BOXES {
        let ours = crop(&catalogue, name).kitchen.crate_holds.0;
        let printed = pounds * pound * CRATE.0 / (bushels * BUSHEL);
        let what = format!("{name}: kilograms in a crate");
        let check = Check::number(&what, ours, printed, TENTHS, source);
        checks.push(check.of(&[name], "kitchen.crate"));
    }
    for (name, least, most) in SCALDED {
        let minutes = match crop(&catalogue, name).kitchen.freezing {
            Some(Freezing::Blanched(minutes)) => minutes,
            _ => f64::NAN,
        };
        let what = format!("{name}: minutes in boiling water before it is frozen");
        let check = Check::range(&what, minutes, least, most, "UIUC-FREEZE");
        checks.push(check.of(&[name], "kitchen.freezing.blanched"));
    }
    // Scalded for half an hour is cooked.
    let beet = crop(&catalogue, "beet").kitchen.freezing;
    let beet = if beet == Some(Freezing::Cooked) {
        "cooked"
    } else {
        "not cooked"
    };
    let check = Check::words("beet: before it is frozen", beet, "cooked", "UIUC-FREEZE");
    checks.push(check.of(&["beet"], "kitchen.freezing"));
    checks
}
