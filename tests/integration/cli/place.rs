//! `crops` and `climate` as the program answers them, on the scenarios.

use super::Folder;

/// A scenario's project file.
fn scenario(name: &str) -> String {
    format!(
        "{}/scenarios/{name}/garden.toml",
        env!("CARGO_MANIFEST_DIR")
    )
}

/// A text as one line.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn crops_lists_them_and_any_name_finds_one() {
    let folder = Folder::new("crops");
    let list = folder.answer(&["crops"]);
    assert!(
        list.starts_with("86 crops that the program knows"),
        "{list}"
    );
    let carrot = folder.answer(&["crops", "carrot"]);
    assert!(carrot.starts_with("Carrot (Daucus carota)"), "{carrot}");
    assert_eq!(folder.answer(&["crops", "Carrots"]), carrot);
}

#[test]
fn a_crop_is_told_for_the_place_of_a_scenario_with_the_schools_own_figures() {
    let folder = Folder::new("crops-for");
    let soup = scenario("soup-day");
    let potato = words(&folder.answer(&["crops", "potato", "--for", &soup]));
    for part in [
        "AT LARCH HILL SCHOOL",
        "44.3 degrees north",
        "generated weather years",
        "[your own; built in: 95 days in the bed,",
        "Gets ripe",
    ] {
        assert!(potato.contains(part), "\"{part}\" is missing in\n{potato}");
    }
    let leek = folder.answer(&["crops", "leek", "--for", &soup]);
    assert!(!leek.contains("your own"), "{leek}");
    assert!(leek.contains("Planted out"), "{leek}");
}

#[test]
fn the_climate_of_every_scenario_is_told() {
    let folder = Folder::new("climate");
    for name in [
        "soup-day",
        "wrap-day",
        "autumn-down-under",
        "nine-grades",
        "two-beds",
        "soup-day-as-a-cook-would",
    ] {
        let climate = folder.answer(&["climate", &scenario(name)]);
        assert!(climate.starts_with("The climate of "), "{name}: {climate}");
        for heading in ["\nFROST\n", "\nWARMTH, RAIN AND LIGHT\n"] {
            assert!(climate.contains(heading), "{name}: {climate}");
        }
    }
    let south = folder.answer(&["climate", &scenario("autumn-down-under")]);
    assert!(south.contains("degrees south"), "{south}");
}

#[test]
fn check_and_climate_name_the_same_frosts() {
    let folder = Folder::new("same-frosts");
    let check = folder.answer(&["check", "garden.toml"]);
    let climate = folder.answer(&["climate", "garden.toml"]);
    let (check, climate) = (words(&check), words(&climate));
    let (_, last) = check.split_once("Last frost: after ").unwrap();
    let (half, last) = last.split_once(" in half of the years, after ").unwrap();
    let (tenth, _) = last.split_once(" in one year of ten").unwrap();
    let told = format!(
        "In 1 spring of 10 frost still comes after {tenth}; in half of the springs after {half};"
    );
    assert!(climate.contains(&told), "{told}\n{climate}");
}
