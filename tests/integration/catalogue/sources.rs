//! Every figure names its source, and every source is cited in full.

use std::collections::BTreeSet;

use tureen::catalogue::{MEMORY, PRACTICE, source_keys};

use tureen::garden::Ages;

use super::{catalogue, entries};

/// Groups that every crop has; each must have a source.
const GROUPS: [&str; 11] = [
    "rotation",
    "methods",
    "germination",
    "germinates",
    "ripening",
    "frost",
    "picking",
    "yields",
    "spacing",
    "needs",
    "seed_size",
];

#[test]
fn every_group_of_every_crop_has_a_source() {
    let catalogue = catalogue();
    for entry in entries(&catalogue) {
        for group in GROUPS {
            assert!(
                entry.source(group).is_some(),
                "{}: {group}",
                entry.crop.name
            );
        }
        let optional = [
            ("indoor", entry.crop.indoor.is_some()),
            ("water", entry.crop.water.is_some()),
            ("ages", entry.crop.ages != Ages::default()),
            ("stages", entry.crop.stages.is_some()),
            ("ground.sow", entry.crop.ground.sow.is_some()),
            ("ground.set_out", entry.crop.ground.set_out.is_some()),
            ("ground.rots_after", entry.crop.ground.rots_after.is_some()),
            ("bolting", entry.crop.bolting.is_some()),
            ("spoils", entry.crop.spoils.is_some()),
            ("no_fruit", entry.crop.no_fruit.is_some()),
            ("chill", entry.crop.chill.is_some()),
            ("bulbs", entry.crop.bulbs.is_some()),
            ("thinning", entry.crop.thinning.is_some()),
            ("caution", !entry.crop.caution.text.is_empty()),
            ("ripening.upper", entry.crop.ripening.upper.is_some()),
            ("seed_keeps_years", entry.crop.seed_keeps_years.is_some()),
        ];
        for (group, given) in optional {
            assert_eq!(
                entry.source(group).is_some(),
                given,
                "{}: {group}",
                entry.crop.name
            );
        }
    }
}

#[test]
fn every_source_is_memory_or_has_a_citation() {
    let catalogue = catalogue();
    for entry in entries(&catalogue) {
        for (field, source) in entry.sources() {
            for key in source_keys(source) {
                let cited = catalogue.citation(key).is_some_and(|text| text.len() > 20);
                assert!(
                    cited || key == MEMORY || key == PRACTICE,
                    "{}: {field}: {key}",
                    entry.crop.name
                );
            }
        }
    }
}

#[test]
fn every_citation_is_used() {
    let catalogue = catalogue();
    let entries = entries(&catalogue);
    let used: BTreeSet<&str> = entries
        .iter()
        .flat_map(|entry| entry.sources())
        .flat_map(|(_, source)| source_keys(source))
        .collect();
    let listed = include_str!("../../../src/catalogue/data/sources.toml");
    let listed: toml::Table = listed.parse().expect("TOML");
    for key in listed.keys() {
        assert!(used.contains(key.as_str()), "{key} is cited but not used");
    }
    assert!(catalogue.citation("HM1955").is_none());
}

#[test]
fn a_relatives_row_is_named() {
    let catalogue = catalogue();
    for (crop, source) in [
        ("cabbage", "HARRINGTON-OSU, HM1954 (cabbage)"),
        ("kale", "memory, HM1954 (cabbage)"),
        ("bok choy", "memory, HM1954 (cabbage)"),
        ("leek", "HM1954 (onion)"),
        ("scallion", "HM1954 (onion)"),
        ("dry bean", "HM1954 (bean (snap))"),
        ("chard", "HARRINGTON-OSU, VENDOR-EXT (chard)"),
        ("basil", MEMORY),
    ] {
        assert_eq!(
            catalogue.source(crop, "germination"),
            Some(source),
            "{crop}"
        );
    }
}

#[test]
fn a_field_answers_for_itself_and_a_group_for_all_its_fields() {
    let catalogue = catalogue();
    let tomato = |field| catalogue.source("tomato", field);
    assert_eq!(tomato("indoor.weeks"), Some("MIDATL-A4, ISU-WEEKS"));
    assert_eq!(tomato("indoor.pots"), Some(MEMORY));
    let group = tomato("indoor").expect("a group");
    for key in ["MIDATL-A4", "ISU-WEEKS", "HARRINGTON-OSU", MEMORY] {
        assert!(source_keys(group).any(|k| k == key), "{key} in {group}");
    }
    assert_eq!(tomato("water.mid"), Some("FAO56-T12"));
    assert_eq!(tomato("picking.cure_days"), None);
    assert_eq!(tomato("name"), None);
}
