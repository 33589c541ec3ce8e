//! Which crops there are, and by which names they are found.

use super::catalogue;

/// The crops that school dishes call for.
const NAMES: [&str; 86] = [
    "amaranth (grain)",
    "amaranth (leaf)",
    "arugula",
    "asparagus",
    "basil",
    "beet",
    "bok choy",
    "borage",
    "bottle gourd",
    "broad bean",
    "broccoli",
    "brussels sprouts",
    "bush bean",
    "cabbage",
    "calendula",
    "carrot",
    "cauliflower",
    "celeriac",
    "celery",
    "chard",
    "chickpea",
    "chives",
    "cilantro",
    "collards",
    "cowpea",
    "cucumber",
    "daikon",
    "dill",
    "dry bean",
    "dry corn",
    "edamame",
    "eggplant",
    "endive",
    "fennel",
    "garlic",
    "hot pepper",
    "kale",
    "kohlrabi",
    "leek",
    "lemongrass",
    "lettuce (head)",
    "lettuce (leaf)",
    "lima bean",
    "marigold",
    "melon",
    "mint",
    "mustard",
    "napa cabbage",
    "nasturtium",
    "okra",
    "onion (from seed)",
    "onion (from sets)",
    "oregano",
    "parsley",
    "parsnip",
    "peanut",
    "pole bean",
    "popcorn",
    "potato",
    "pumpkin",
    "radish",
    "raspberry",
    "rhubarb",
    "rosemary",
    "runner bean",
    "rutabaga",
    "sage",
    "scallion",
    "shallot",
    "shelling pea",
    "snap pea",
    "snow pea",
    "spinach",
    "strawberry",
    "summer squash",
    "sunflower",
    "sweet corn",
    "sweet pepper",
    "sweet potato",
    "thyme",
    "tomatillo",
    "tomato",
    "turnip",
    "watermelon",
    "wheat",
    "winter squash",
];

#[test]
fn all_86_crops_are_there_in_order() {
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
        ("swede", "rutabaga"),
        ("rocket", "arugula"),
        ("fava bean", "broad bean"),
        ("mangetout", "snow pea"),
        ("groundnut", "peanut"),
        ("black-eyed pea", "cowpea"),
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
            "borage",
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
