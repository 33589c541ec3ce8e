//! Storage, curing, and the years and weeks in which perennials are picked.

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue, crop};

/// The longest life in the best store, days. A school keeps nothing longer.
const LONGEST: [(&str, f64, &str); 44] = [
    ("tomato", 14.0, "HB66-1954"),
    ("sweet pepper", 14.0, "HB66-1954"),
    ("eggplant", 7.0, "NEVMG-T16"),
    ("potato", 182.0, "HB66-1954"),
    ("basil", 7.0, "NEVMG-T16"),
    ("parsley", 60.0, "NEVMG-T16"),
    ("cilantro", 21.0, "UCD-HERBS"),
    ("dill", 21.0, "UCD-HERBS"),
    ("chives", 21.0, "UCD-HERBS"),
    ("oregano", 21.0, "UCD-HERBS"),
    ("thyme", 21.0, "UCD-HERBS"),
    ("sage", 21.0, "UCD-HERBS"),
    ("onion (from seed)", 240.0, "NEVMG-T16"),
    ("onion (from sets)", 240.0, "NEVMG-T16"),
    ("leek", 90.0, "NEVMG-T16"),
    ("scallion", 10.0, "NEVMG-T16"),
    ("carrot", 210.0, "NEVMG-T16"),
    ("beet", 56.0, "HB66-1954"),
    ("radish", 14.0, "HB66-1954"),
    ("turnip", 154.0, "HB66-1954"),
    ("parsnip", 180.0, "NEVMG-T16"),
    ("sweet potato", 180.0, "ISU-STORE"),
    ("lettuce (leaf)", 7.0, "NEVMG-T16"),
    ("lettuce (head)", 21.0, "NEVMG-T16"),
    ("spinach", 14.0, "HB66-1954"),
    ("kale", 14.0, "NEVMG-T16"),
    ("cabbage", 42.0, "NEVMG-T16"),
    ("broccoli", 14.0, "NEVMG-T16"),
    ("cauliflower", 28.0, "NEVMG-T16"),
    ("celery", 21.0, "NEVMG-T16"),
    ("bush bean", 10.0, "NEVMG-T16"),
    ("pole bean", 10.0, "NEVMG-T16"),
    ("shelling pea", 14.0, "NEVMG-T16"),
    ("snap pea", 14.0, "NEVMG-T16"),
    ("cucumber", 14.0, "NEVMG-T16"),
    ("summer squash", 7.0, "HB66-1954"),
    ("winter squash", 182.0, "HB66-1954"),
    ("pumpkin", 182.0, "HB66-1954"),
    ("melon", 14.0, "NEVMG-T16"),
    ("sweet corn", 7.0, "HB66-1954"),
    ("okra", 7.0, "NEVMG-T16"),
    ("strawberry", 7.0, "STUDYLIB-L3.3"),
    ("rhubarb", 14.0, "HB66-1954"),
    ("asparagus", 14.0, "NEVMG-T16"),
];

/// The long end of the days of curing, printed as 7 to 14, 10 to 14 and 7 to 10.
const CURING: [(&[&str], f64, &str); 4] = [
    (&["potato"], 14.0, "NEWSBUG-EXT"),
    (
        &["onion (from seed)", "onion (from sets)"],
        14.0,
        "NEWSBUG-EXT, OSU-WAYNE",
    ),
    (&["winter squash"], 14.0, "NEWSBUG-EXT, OSU-WAYNE"),
    (&["sweet potato"], 10.0, "ISU-KCII, NEWSBUG-EXT"),
];

const CURE: Field = Field {
    path: "picking.cure_days",
    of: |crop| Some(f64::from(crop.picking.cure_days)),
    tolerance: EXACT,
};

/// UWEX-PERENNIAL: what a patch gives in its first years.
const FIRST_YEARS: [(&str, &str); 5] = [
    ("rhubarb", "No pick in year 1"),
    ("rhubarb", "one to two weeks in year 2"),
    ("rhubarb", "eight to ten weeks from year 3"),
    ("asparagus", "about a month in year 3"),
    ("asparagus", "eight to ten weeks from year 4"),
];

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks = Vec::new();
    for (name, longest, source) in LONGEST {
        let days = f64::from(crop(&catalogue, name).picking.storage_days);
        let what = format!("{name}: days in store");
        let check = Check::range(&what, days, 1.0, longest, source);
        checks.push(check.of(&[name], "picking.storage_days"));
    }
    checks.extend(CURING.map(|(names, long, source)| CURE.check(&catalogue, names, long, source)));
    for name in ["rhubarb", "asparagus"] {
        let days = f64::from(crop(&catalogue, name).picking.holds_in_ground_days);
        let what = format!("{name}: days of picking");
        let check = Check::range(&what, days, 56.0, 70.0, "UWEX-PERENNIAL");
        checks.push(check.of(&[name], "picking.holds_in_ground_days"));
    }
    checks.extend(FIRST_YEARS.map(|(name, words)| {
        let notes = catalogue
            .entry(name)
            .map_or(String::new(), |e| e.notes.join(" "));
        Check::words(
            &format!("{name}: first years"),
            &notes,
            words,
            "UWEX-PERENNIAL",
        )
    }));
    checks
}
