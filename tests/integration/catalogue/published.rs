//! Figures against the works they come from. Full citations: `src/catalogue/data/sources.toml`.

use tureen::catalogue::{Catalogue, source_keys};
use tureen::garden::{Crop, Germination};

use super::{catalogue, entries};

fn crop<'a>(catalogue: &'a Catalogue, name: &str) -> &'a Crop {
    catalogue.get(name).unwrap_or_else(|| panic!("no {name}"))
}

/// The days in a crop's table at a soil temperature.
fn days_at(crop: &Crop, soil: usize) -> Option<f64> {
    match &crop.germination {
        Germination::Table(days) => days[soil / 5],
        Germination::Range { .. } => panic!("{} has no table", crop.name),
    }
}

/// HM1954, days table. Tomato, lettuce and spinach whole, then single cells; no figure where
/// the seed did not germinate or the cell is not printed.
#[test]
fn days_to_come_up() {
    let catalogue = catalogue();
    let tomato = [
        None,
        None,
        Some(43.0),
        Some(14.0),
        Some(8.0),
        Some(6.0),
        Some(6.0),
        Some(9.0),
        None,
    ];
    assert_eq!(
        crop(&catalogue, "tomato").germination,
        Germination::Table(tomato)
    );
    for (name, soil, days) in [
        ("lettuce (leaf)", 0, Some(49.0)),
        ("lettuce (leaf)", 20, Some(3.0)),
        ("lettuce (leaf)", 25, Some(2.0)),
        ("lettuce (leaf)", 30, Some(3.0)),
        ("lettuce (leaf)", 35, None),
        ("spinach", 10, Some(12.0)),
        ("spinach", 15, Some(7.0)),
        ("spinach", 20, Some(6.0)),
        ("spinach", 25, Some(5.0)),
        ("spinach", 30, Some(6.0)),
        ("spinach", 35, None),
        ("sweet pepper", 20, Some(13.0)),
        ("sweet pepper", 25, Some(8.0)),
        ("carrot", 5, Some(51.0)),
        ("carrot", 35, Some(9.0)),
        ("celery", 25, None),
        ("onion (from seed)", 0, Some(136.0)),
        ("leek", 10, Some(13.0)),
        ("kale", 10, Some(15.0)),
        ("dry bean", 10, None),
        ("dry bean", 15, Some(16.0)),
        ("snap pea", 5, Some(36.0)),
        ("parsnip", 30, Some(32.0)),
        ("okra", 40, Some(7.0)),
        ("asparagus", 35, Some(20.0)),
    ] {
        assert_eq!(
            days_at(crop(&catalogue, name), soil),
            days,
            "{name} at {soil} C"
        );
    }
}

/// 7CFR201.31: least shares that germinate, per cent; the same floor for all kinds of a crop.
#[test]
fn legal_germination_floors() {
    let catalogue = catalogue();
    for (name, percent) in [
        ("carrot", 55.0),
        ("celery", 55.0),
        ("sweet pepper", 55.0),
        ("chives", 50.0),
        ("okra", 50.0),
        ("onion (from seed)", 70.0),
        ("parsley", 60.0),
        ("leek", 60.0),
        ("spinach", 60.0),
        ("beet", 65.0),
        ("tomato", 75.0),
        ("bush bean", 70.0),
        ("pole bean", 70.0),
        ("dry bean", 70.0),
        ("shelling pea", 80.0),
        ("snap pea", 80.0),
        ("lettuce (leaf)", 80.0),
        ("lettuce (head)", 80.0),
        ("cucumber", 80.0),
    ] {
        let share = crop(&catalogue, name).germinates.0;
        assert!((share * 100.0 - percent).abs() < 1e-9, "{name}: {share}");
        assert_eq!(
            catalogue.source(name, "germinates"),
            Some("7CFR201.31"),
            "{name}"
        );
    }
}

/// FAO56-T12: crop coefficients of the initial, middle and end stage.
#[test]
fn crop_coefficients() {
    let catalogue = catalogue();
    for (name, stages) in [
        ("tomato", [0.6, 1.15, 0.80]),
        ("sweet pepper", [0.6, 1.05, 0.90]),
        ("cabbage", [0.7, 1.05, 0.95]),
        ("carrot", [0.7, 1.05, 0.95]),
        ("lettuce (leaf)", [0.7, 1.00, 0.95]),
        ("spinach", [0.7, 1.00, 0.95]),
        ("onion (from seed)", [0.7, 1.05, 0.75]),
        ("potato", [0.5, 1.15, 0.75]),
        ("bush bean", [0.5, 1.05, 0.90]),
        ("dry bean", [0.4, 1.15, 0.35]),
        ("shelling pea", [0.5, 1.15, 1.10]),
        ("cucumber", [0.6, 1.00, 0.75]),
        ("summer squash", [0.5, 0.95, 0.75]),
        ("winter squash", [0.5, 1.00, 0.80]),
        ("sweet corn", [0.3, 1.15, 1.05]),
        ("strawberry", [0.40, 0.85, 0.75]),
    ] {
        let water = crop(&catalogue, name).water;
        let ours = water.map(|w| [w.initial, w.mid, w.end]);
        assert_eq!(ours, Some(stages), "{name}");
        assert_eq!(catalogue.source(name, "water"), Some("FAO56-T12"), "{name}");
    }
}

/// MIDATL-A4 and ISU-WEEKS: weeks to grow a transplant. Ours span no more than the two tables.
#[test]
fn weeks_on_the_shelf() {
    let catalogue = catalogue();
    for (name, tables) in [
        ("tomato", [Some((5, 6)), Some((5, 7))]),
        ("sweet pepper", [Some((7, 9)), Some((6, 8))]),
        ("eggplant", [Some((6, 9)), Some((6, 8))]),
        ("cabbage", [Some((6, 7)), Some((5, 7))]),
        ("broccoli", [Some((4, 7)), Some((5, 7))]),
        ("cauliflower", [Some((6, 8)), Some((5, 7))]),
        ("onion (from seed)", [Some((9, 12)), None]),
        ("lettuce (leaf)", [Some((4, 6)), None]),
        ("cucumber", [Some((2, 4)), Some((3, 4))]),
        ("melon", [Some((2, 4)), Some((3, 4))]),
        ("summer squash", [Some((2, 4)), Some((3, 4))]),
    ] {
        let tables = || tables.iter().flatten();
        let least = tables().map(|t| t.0).min().expect("a table");
        let most = tables().map(|t| t.1).max().expect("a table");
        let start = crop(&catalogue, name).indoor.expect("raised indoors");
        assert!(least <= start.weeks_lo, "{name}");
        assert!(start.weeks_lo <= start.weeks_hi, "{name}");
        assert!(start.weeks_hi <= most, "{name}");
    }
}

/// OSU-DD: sweet corn needs 1,539 degree-days F at 50 and 86 F. UD-GDD: the earliest shelling
/// peas need 1,250 at 40 F. A degree-day F is 5/9 of a degree-day C.
#[test]
fn published_thermal_times() {
    let catalogue = catalogue();
    for (name, fahrenheit, base, upper) in [
        ("sweet corn", 1539.0, 50.0, Some(86.0)),
        ("shelling pea", 1250.0, 40.0, None),
    ] {
        let ripening = crop(&catalogue, name).ripening;
        let ours = ripening.thermal_from_sowing.expect("published").0;
        assert!((ours - fahrenheit / 1.8).abs() < 0.5, "{name}: {ours}");
        let celsius = |f: f64| (f - 32.0) / 1.8;
        assert!((ripening.base.0 - celsius(base)).abs() < 0.05, "{name}");
        let upper_gap = ripening
            .upper
            .zip(upper)
            .map(|(ours, f)| (ours.0 - celsius(f)).abs());
        assert_eq!(ripening.upper.is_some(), upper.is_some(), "{name}");
        assert!(upper_gap.is_none_or(|gap| gap < 0.05), "{name}");
    }
}

/// NEWSBUG-EXT, OSU-WAYNE, ISU-KCII: the long end of the days of curing.
#[test]
fn days_of_curing() {
    let catalogue = catalogue();
    for (name, days) in [
        ("potato", 14),
        ("onion (from seed)", 14),
        ("onion (from sets)", 14),
        ("winter squash", 14),
        ("sweet potato", 10),
    ] {
        assert_eq!(crop(&catalogue, name).picking.cure_days, days, "{name}");
        let source = catalogue.source(name, "picking.cure_days").expect("given");
        assert!(
            source_keys(source).all(|key| catalogue.citation(key).is_some()),
            "{name}"
        );
    }
}

/// The longest life in the best store, days. Dry onion, carrot and parsnip: New England Vegetable
/// Management Guide, Table 16. Potato, winter squash and pumpkin: US Department of Agriculture,
/// Handbook 66, 1954. Sweet potato: ISU-STORE. A school keeps nothing longer.
#[test]
fn days_of_storage() {
    let catalogue = catalogue();
    for (name, longest) in [
        ("onion (from seed)", 240),
        ("onion (from sets)", 240),
        ("carrot", 210),
        ("parsnip", 180),
        ("potato", 182),
        ("winter squash", 182),
        ("pumpkin", 182),
        ("sweet potato", 180),
    ] {
        let days = crop(&catalogue, name).picking.storage_days;
        assert!((30..=longest).contains(&days), "{name}: {days}");
    }
}

/// WVU-ROT: the same family not in the same place for two to three years.
#[test]
fn years_apart() {
    let catalogue = catalogue();
    let from_wvu: Vec<_> = entries(&catalogue)
        .into_iter()
        .filter(|entry| entry.source("rotation") == Some("WVU-ROT"))
        .collect();
    assert!(from_wvu.len() > 10);
    for entry in from_wvu {
        let rotation = &entry.crop.rotation;
        assert_eq!(
            (rotation.years_hard, rotation.years_wished),
            (2, 3),
            "{}",
            entry.crop.name
        );
    }
}

/// EU1169, Annex II: celery must be declared. FDA-BBB: kidney beans are soaked and boiled.
#[test]
fn cautions_that_must_not_be_missing() {
    let catalogue = catalogue();
    let celery = &crop(&catalogue, "celery").caution;
    assert_eq!(celery.allergen.as_deref(), Some("celery"));
    for (name, word) in [
        ("dry bean", "boil 30 minutes"),
        ("rhubarb", "LEAVES ARE POISONOUS"),
        ("potato", "poisonous"),
        ("tomato", "poisonous"),
        ("asparagus", "berries are poisonous"),
        ("parsnip", "blisters"),
        ("strawberry", "school nurse"),
        ("sunflower", "school nurse"),
    ] {
        let text = &crop(&catalogue, name).caution.text;
        assert!(text.contains(word), "{name}: {text}");
    }
}
