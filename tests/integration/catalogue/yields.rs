//! Yields against the Kansas State planting guide. Full citation: `src/catalogue/data/sources.toml`.

use tureen::catalogue::Basis;

use super::{catalogue, entries};

/// KSU-MF315: expected yield in pounds per 100 feet of row; turnip and spinach are printed as
/// 50 to 100 and 40 to 50.
const POUNDS_PER_100_FEET: [(&str, f64); 23] = [
    ("asparagus", 30.0),
    ("beet", 150.0),
    ("broccoli", 100.0),
    ("bush bean", 120.0),
    ("cabbage", 150.0),
    ("carrot", 100.0),
    ("cauliflower", 100.0),
    ("chard", 75.0),
    ("cucumber", 120.0),
    ("eggplant", 100.0),
    ("kale", 100.0),
    ("okra", 100.0),
    ("onion (from seed)", 100.0),
    ("onion (from sets)", 100.0),
    ("parsley", 30.0),
    ("parsnip", 100.0),
    ("pole bean", 150.0),
    ("potato", 100.0),
    ("shelling pea", 20.0),
    ("spinach", 45.0),
    ("sweet pepper", 60.0),
    ("sweet potato", 100.0),
    ("turnip", 75.0),
];

/// KSU-MF315, turned into kilograms per metre of row by pounds per 100 feet x 0.014882: what a
/// plant gives, over its length of row.
#[test]
fn yields_per_metre_of_row() {
    let catalogue = catalogue();
    for (name, pounds) in POUNDS_PER_100_FEET {
        let crop = catalogue.get(name).expect(name);
        let per_metre = crop.yields.expected.0 / crop.spacing.in_row.to_metres().0;
        let published = pounds * 0.014_882;
        assert!(
            (per_metre - published).abs() < 0.005,
            "{name}: {per_metre}, not {published}"
        );
    }
}

#[test]
fn every_yield_credited_to_ksu_is_checked() {
    let catalogue = catalogue();
    let credited: Vec<&str> = entries(&catalogue)
        .into_iter()
        .filter(|entry| entry.source("yields.expected") == Some("KSU-MF315"))
        .inspect(|entry| assert_eq!(entry.basis, Basis::Row, "{}", entry.crop.name))
        .map(|entry| entry.crop.name.as_str())
        .collect();
    assert_eq!(credited, POUNDS_PER_100_FEET.map(|(name, _)| name));
}
