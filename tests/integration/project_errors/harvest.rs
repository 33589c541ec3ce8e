//! Days of the harvest, and supports for what climbs, how long a crop bears: what a file may say of them, and what is assumed.

use super::edges::{assumed, loaded, told, with};
use super::{MINIMAL, load};

/// Carrots need none, so nothing is assumed for them.
#[test]
fn supports_are_put_up_where_no_bed_says_whether_it_has_a_trellis() {
    let tomato = with("crop = \"carrot\"", "crop = \"tomato\"");
    let shelf = "\n[shelf]\nflats = 4\nroom_c = 19\n";
    for (text, put_up) in [
        (MINIMAL.to_owned(), false),
        (format!("{tomato}{shelf}"), true),
        (format!("{tomato}trellis_m = 0\n{shelf}"), false),
        (format!("{tomato}trellis_m = 1.2\n{shelf}"), false),
        (
            format!(
                "{tomato}{shelf}\n[[bed]]\nid = \"2\"\nlength_m = 3\nwidth_m = 1\ntrellis_m = 3\n"
            ),
            false,
        ),
    ] {
        let garden = loaded(&text);
        let bed = &garden.beds[0];
        assert_eq!(bed.supports_put_up, put_up, "{text}");
        assert_eq!(bed.trellis_strips() == bed.strips(), put_up, "{text}");
        let told = assumed(&garden).contains(&"supports for what climbs");
        assert_eq!(told, put_up, "{text}");
    }
}

/// The kitchen needs the harvest by Wednesday 6 October 2027.
#[test]
fn a_day_of_the_harvest_is_a_school_day_that_the_kitchen_can_wait_for() {
    let given = |days: &str| {
        let text = MINIMAL.replacen("[calendar]\n", &format!("[calendar]\n{days}\n"), 1);
        text.replacen("[project]\n", "[project]\ndeliver_by = 2027-10-06\n", 1)
    };
    for (day, fault) in [
        ("2027-10-06", ""),
        ("2027-08-30", ""),
        ("2027-08-29", "is before the start"),
        (
            "2027-10-07",
            "is after 2027-10-06, by which the kitchen needs it",
        ),
        (
            "2027-10-11",
            "is after 2027-10-06, by which the kitchen needs it",
        ),
        ("2027-10-03", "`harvest_days` is not a school day"),
    ] {
        let text = given(&format!("harvest_days = [{{ day = {day} }}]"));
        match load(&text) {
            Ok(garden) => {
                let [harvest] = garden.school_year.harvest_days[..] else {
                    panic!("{day}")
                };
                assert_eq!((fault, harvest.minutes.0), ("", 40.0));
            }
            Err(found) => {
                let told = found.render(false, 100);
                assert!(!fault.is_empty() && told.contains(fault), "{day}: {told}");
            }
        }
    }
    // What the kitchen can still take is offered; what comes after the feast is not.
    let late = |day: &str| told(&given(&format!("harvest_days = [{{ day = {day} }}]")));
    assert!(late("2027-10-07").contains("deliver_by = 2027-10-07"));
    assert!(!late("2027-10-11").contains("deliver_by = 2027-10-11"));
    // All wrong days are told at once.
    let four =
        "{ day = 2027-08-29 }, { day = 2027-10-03 }, { day = 2027-10-05 }, { day = 2027-10-07 }";
    let all = told(&given(&format!("harvest_days = [{four}]")));
    for fault in [
        "is before the start",
        "is not a school day",
        "is after 2027-10-06",
        "3 errors",
    ] {
        assert!(all.contains(fault), "{fault}: {all}");
    }
    let twice = "{ day = 2027-10-05 }, { day = 2027-10-05, minutes = 60 }";
    let told = told(&given(&format!("harvest_days = [{twice}]")));
    assert!(told.contains("is there twice"), "{told}");
}

#[test]
fn a_crop_bears_no_shorter_when_it_is_picked_and_only_if_picking_helps() {
    let bears = |crop: &str, figures: &str| {
        let text = with("crop = \"carrot\"", &format!("crop = \"{crop}\""));
        format!("{text}\n[crop.\"{crop}\"]\n{figures}\n\n[shelf]\nflats = 4\nroom_c = 19\n")
    };
    let bush = "holds_in_ground_days = 35\nbears_days = 35\npicked_every_days = 5";
    let picking = loaded(&bears("tomato", bush)).ingredients[0].crop.picking;
    let while_picked = picking.while_picked.unwrap();
    assert_eq!((while_picked.bears_days, while_picked.every_days), (35, 5));
    for (figures, label) in [
        (
            "bears_days = 35",
            "bears_days = 35, holds_in_ground_days = 60",
        ),
        (
            "holds_in_ground_days = 200",
            "bears_days = 120, holds_in_ground_days = 200",
        ),
    ] {
        let told = told(&bears("tomato", figures));
        assert!(told.contains(label), "{told}");
    }
    for figures in ["bears_days = 80", "picked_every_days = 7"] {
        let told = told(&bears("kale", figures));
        assert!(
            told.contains("picking does not make this crop bear longer"),
            "{told}"
        );
    }
}
