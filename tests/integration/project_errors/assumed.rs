//! What is assumed where the file says nothing: of each thing, once, and of nothing that it says.

use tureen::garden::Garden;
use tureen::project;

use super::{FULL, MINIMAL, catalogue, load, steady_weather};

fn what_is_assumed(garden: &Garden) -> Vec<&str> {
    garden.assumed.iter().map(|a| a.what.as_str()).collect()
}

/// A room that is given is not assumed, nor is one of which nothing depends.
#[test]
fn a_room_is_assumed_only_where_none_is_given_and_flats_are_raised() {
    let weather = steady_weather(3 * 365);
    let rooms = |text: &str| {
        let garden = project::load_text("garden.toml", text, Some(&weather), catalogue());
        let garden = garden.unwrap_or_else(|problems| panic!("{problems}"));
        let assumed = what_is_assumed(&garden).into_iter();
        assumed.filter(|what| what.starts_with("room_c = ")).count()
    };
    assert_eq!(rooms(FULL), 0);
    assert_eq!(rooms(&FULL.replace("room_c = 18\n", "")), 1);
}

/// What is assumed of two things for one reason is told of each.
#[test]
fn every_term_without_a_slot_of_its_own_is_told() {
    let terms = "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-09-17 }, \
                 { name = \"Late\", from = 2027-09-20, to = 2027-10-15 }, \
                 { name = \"Winter\", from = 2027-10-25, to = 2027-12-17 }]";
    let old = "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 }]";
    let garden = load(&MINIMAL.replace(old, terms)).unwrap();
    let assumed = what_is_assumed(&garden).into_iter();
    let slots: Vec<&str> = assumed.filter(|what| what.contains("slot")).collect();
    assert_eq!(slots, ["the same slot in Late", "the same slot in Winter"]);
}

/// Six things are named, the others counted.
#[test]
fn what_is_assumed_of_many_is_told_once() {
    for (beds, whose) in [
        (1, "(1)"),
        (2, "(1, 2)"),
        (6, "(1, 2, 3, 4, 5, 6)"),
        (7, "(1, 2, 3, 4, 5, 6 and 1 more)"),
        (9, "(1, 2, 3, 4, 5, 6 and 3 more)"),
    ] {
        let bed = |n: u32| format!("[[bed]]\nid = \"{n}\"\nlength_m = 3.6\nwidth_m = 1.2\n");
        let more: String = (2..=beds).map(bed).collect();
        let garden = load(&format!("{MINIMAL}\n{more}")).unwrap();
        let mut soil = garden
            .assumed
            .iter()
            .filter(|a| a.what.starts_with("soil_cm"));
        let why = &soil.next().unwrap().why;
        assert!(why.ends_with(whose), "{beds} beds: {why}");
        assert_eq!(soil.next(), None);
    }
}
