//! What is frozen or dried: a dish after the first frosts, of what was ripe before them.

use super::trials::two_beds;
use super::{Folder, text};

/// The smallest garden cooks in autumn, eight weeks after its last lesson with anything ripe outdoors: snap peas of spring,
/// put by or not.
fn peas_for_autumn(name: &str, kept: &str) -> Folder {
    two_beds(name, |file| {
        let (before, rest) = file.split_once("[[dish.ingredient]]").unwrap();
        let (_, beds) = rest.split_once("[[bed]]").unwrap();
        let (beds, _) = beds.split_once("# What this school knows better").unwrap();
        let before = before
            .replace("feast = 2027-06-25", "feast = 2027-09-24")
            .replace("deliver_by = 2027-06-24", "deliver_by = 2027-09-23")
            .replace("to = 2027-06-25 }]", "to = 2027-09-24 }]");
        format!(
            "{before}[[dish.ingredient]]\ncrop = \"shelling pea\"\ngrade = \"1\"\ngrams_per_portion = 5\n\
             {kept}\n[[bed]]{beds}"
        )
    })
}

#[test]
fn what_is_frozen_is_picked_when_it_is_ripe_and_cooked_months_later() {
    let fresh = peas_for_autumn("put-by-fresh", "");
    let none = fresh.run(&["plan", "garden.toml"]);
    assert_eq!(none.status.code(), Some(4), "{}", text(&none.stdout));
    assert!(
        text(&none.stdout).contains("frozen or dried when it is ripe, for the day (`kept`)"),
        "{}",
        text(&none.stdout)
    );
    // The way out is among those that are planned and proved.
    let why = fresh.run(&["why", "garden.toml"]);
    assert!(
        text(&why.stdout)
            .contains("Shelling pea frozen when it is picked, and kept until the day."),
        "{}",
        text(&why.stdout)
    );

    let frozen = peas_for_autumn("put-by-frozen", "kept = \"frozen\"");
    let plan = frozen.answer(&["plan", "garden.toml", "--out", "."]);
    assert!(plan.contains("shelling pea"), "{plan}");
    frozen.answer(&["verify", "garden.toml", "plan.json"]);
    frozen.answer(&["handouts", "garden.toml", "--out", "out"]);
    let kitchen = frozen.read("out/kitchen.html").replace('\u{a0}', " ");
    for told in [
        "frozen, 240 days",
        "frozen on the day of the pick, in boiling water for 1.5 minutes",
        "of freezer",
        "days in the freezer until the dish",
        "nothing is canned or bottled for a school",
    ] {
        assert!(kitchen.contains(told), "{told}: {kitchen}");
    }
    let grade = frozen.answer(&["show", "garden.toml", "--grade", "1"]);
    let grade = grade.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(grade.contains("it is frozen on the same day"), "{grade}");
}

/// Families who pick in a break are told that it is frozen on the same day, and the kitchen that nobody is there then.
#[test]
fn what_families_pick_is_frozen_on_the_same_day() {
    let folder = two_beds("put-by-families", |file| {
        let (before, rest) = file.split_once("[[dish.ingredient]]").unwrap();
        let (_, beds) = rest.split_once("[[bed]]").unwrap();
        let (beds, _) = beds.split_once("# What this school knows better").unwrap();
        let before = before
            .replace("feast = 2027-06-25", "feast = 2027-09-24\nfamilies_also = \"es\"")
            .replace("deliver_by = 2027-06-24", "deliver_by = 2027-09-23")
            .replace("to = 2027-06-25 }]", "to = 2027-09-24 }]")
            .replace(
                "care = \"none\" }]",
                "care = \"none\" }, { name = \"Summer\", from = 2027-06-12, to = 2027-09-05, care = \"families\" }]",
            );
        format!(
            "{before}[[dish.ingredient]]\ncrop = \"shelling pea\"\ngrade = \"1\"\ngrams_per_portion = 5\n\
             kept = \"frozen\"\n[[bed]]{beds}"
        )
    });
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let page = |name: &str| {
        folder
            .read(&format!("out/{name}.html"))
            .replace('\u{a0}', " ")
    };
    let asked = "Frozen on the same day: shelling pea; ask the kitchen how";
    assert!(page("summer").contains(asked), "{}", page("summer"));
    let asked = "Congelar el mismo día: shelling pea";
    assert!(page("summer-es").contains(asked), "{}", page("summer-es"));
    let ready = "shell, wash: when it is picked";
    assert!(page("kitchen").contains(ready), "{}", page("kitchen"));
    assert!(page("kitchen").contains("agree in time who does it"));
}
