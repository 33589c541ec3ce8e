//! Which crops there are, and by which names they are found.

use super::catalogue;

/// The crops that a school dish in a temperate climate calls for.
const NAMES: [&str; 51] = [
    "asparagus",
    "basil",
    "beet",
    "bok choy",
    "broccoli",
    "bush bean",
    "cabbage",
    "calendula",
    "carrot",
    "cauliflower",
    "celery",
    "chard",
    "chives",
    "cilantro",
    "cucumber",
    "dill",
    "dry bean",
    "eggplant",
    "garlic",
    "kale",
    "leek",
    "lettuce (head)",
    "lettuce (leaf)",
    "melon",
    "nasturtium",
    "okra",
    "onion (from seed)",
    "onion (from sets)",
    "oregano",
    "parsley",
    "parsnip",
    "pole bean",
    "potato",
    "pumpkin",
    "radish",
    "rhubarb",
    "sage",
    "scallion",
    "shelling pea",
    "snap pea",
    "spinach",
    "strawberry",
    "summer squash",
    "sunflower",
    "sweet corn",
    "sweet pepper",
    "sweet potato",
    "thyme",
    "tomato",
    "turnip",
    "winter squash",
];

#[test]
fn all_51_crops_are_there_in_order() {
    assert_eq!(catalogue().names().collect::<Vec<_>>(), NAMES);
}

#[test]
fn every_name_finds_its_own_crop() {
    let catalogue = catalogue();
    for name in NAMES {
        assert_eq!(
            catalogue.get(name).map(|crop| crop.name.as_str()),
            Some(name)
        );
    }
}

#[test]
fn crops_are_found_by_other_names() {
    let catalogue = catalogue();
    for (other, name) in [
        ("green bean", "bush bean"),
        ("spring onion", "scallion"),
        ("courgette", "summer squash"),
        ("zucchini", "summer squash"),
        ("coriander", "cilantro"),
        ("beetroot", "beet"),
        ("aubergine", "eggplant"),
        ("swiss chard", "chard"),
        ("leaf lettuce", "lettuce (leaf)"),
        ("onion", "onion (from seed)"),
    ] {
        let found = catalogue.get(other).map(|crop| crop.name.as_str());
        assert_eq!(found, Some(name), "{other}");
    }
}

#[test]
fn case_and_blanks_around_a_name_do_not_matter() {
    let catalogue = catalogue();
    assert_eq!(catalogue.get(" Tomato "), catalogue.get("tomato"));
    assert_eq!(catalogue.get("Swiss Chard"), catalogue.get("chard"));
    assert!(catalogue.get("Swiss Chard").is_some());
}

#[test]
fn unknown_names_find_nothing() {
    let catalogue = catalogue();
    for name in ["", "tomat", "bean", "squash", "tomato carrot"] {
        assert_eq!(catalogue.get(name), None, "{name}");
        assert_eq!(catalogue.source(name, "germinates"), None, "{name}");
    }
}

#[test]
fn families_are_sorted_and_each_there_once() {
    assert_eq!(
        catalogue().families(),
        [
            "asparagus",
            "beet",
            "cabbage",
            "carrot",
            "cucurbit",
            "daisy",
            "dock",
            "grass",
            "legume",
            "lettuce",
            "mallow",
            "mint",
            "morning-glory",
            "nasturtium",
            "nightshade",
            "onion",
            "rose",
        ]
    );
}
