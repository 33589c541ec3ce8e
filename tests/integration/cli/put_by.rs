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

/// Two that are ripe long before the day are each put by: together that asks less than an earlier day,
/// or is the only way.
#[test]
fn of_two_that_are_ripe_too_early_both_are_put_by() {
    let folder = two_beds("put-by-both", |file| {
        let (before, rest) = file.split_once("[[dish.ingredient]]").unwrap();
        let (_, beds) = rest.split_once("[[bed]]").unwrap();
        let (beds, _) = beds.split_once("# What this school knows better").unwrap();
        let before = before
            .replace("feast = 2027-06-25", "feast = 2027-09-24")
            .replace("deliver_by = 2027-06-24", "deliver_by = 2027-09-23")
            .replace("to = 2027-06-25 }]", "to = 2027-09-24 }]")
            .replace(
                "care = \"none\" }]",
                "care = \"none\" }, { name = \"Summer\", from = 2027-06-26, to = 2027-09-05, care = \"none\" }]",
            );
        let ingredient = |crop: &str, grade: u32| {
            format!(
                "[[dish.ingredient]]\ncrop = \"{crop}\"\ngrade = \"{grade}\"\ngrams_per_portion = 5\n"
            )
        };
        let dish = [ingredient("shelling pea", 1), ingredient("snap pea", 2)].concat();
        format!("{before}{dish}[[bed]]{beds}")
    });
    let why = text(&folder.run(&["why", "garden.toml"]).stdout);
    for told in [
        "No single change that was tried is enough. All of these together are",
        "Shelling pea frozen when it is picked, and kept until the day.",
        "Snap pea frozen when it is picked, and kept until the day.",
    ] {
        assert!(why.contains(told), "{told}: {why}");
    }

    // An earlier day would be enough by itself, and asks more.
    let soup = include_str!("../../../scenarios/soup-day/garden.toml");
    let weather = include_str!("../../../scenarios/soup-day/weather.csv");
    let folder = Folder::with("put-by-soup", |_| {
        soup.replace("feast = 2027-10-08", "feast = 2027-12-03")
            .replace("rain_date = 2027-10-15", "rain_date = 2027-12-10")
            .replace("deliver_by = 2027-10-06", "deliver_by = 2027-12-01")
    });
    std::fs::write(folder.path("weather.csv"), weather).unwrap();
    let why = text(&folder.run(&["why", "garden.toml"]).stdout);
    let at = |told: &str| why.find(told).unwrap_or_else(|| panic!("{told}: {why}"));
    let order = [
        "All of these together are enough",
        "Tomato frozen when it is picked",
        "Kale frozen when it is picked",
        "Each of these is enough by itself too.",
        "The feast 5 weeks earlier.",
    ];
    assert!(order.map(at).is_sorted(), "{why}");
}

/// Nothing is gained by leaving ripe peas in the bed that go into the freezer: sown in April they are picked from June
/// to early August, though there are lessons until late September.
#[test]
fn what_is_frozen_does_not_wait_in_the_bed() {
    let frozen = peas_for_autumn("put-by-early", "kept = \"frozen\"");
    let plan = frozen.answer(&["plan", "garden.toml", "--all"]);
    let plan = plan.split_whitespace().collect::<Vec<_>>().join(" ");
    let (_, picks) = plan
        .split_once("Pick the first of these when it is ripe: ")
        .unwrap();
    let (picks, _) = picks.split_once(": 12 min").unwrap();
    assert_eq!(
        picks,
        "1a Tue 22 Jun; or 1a Tue 6 Jul; or 1a Tue 20 Jul; or 1a Tue 3 Aug"
    );
}
