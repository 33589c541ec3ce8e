//! Other dishes for the same garden, on the smallest scenario.

use tureen::catalogue::{Catalogue, Dish};
use tureen::garden::Source;
use tureen::project::{self, Change};

use super::text;
use super::trials::{as_it_is, two_beds};

/// The lines of `ideas` that put the best dish into the file.
fn lines_to_put_in(answer: &str) -> String {
    let (_, after) = answer.split_once("in place of all").unwrap();
    let lines = after.lines().map(str::trim);
    lines
        .skip_while(|line| *line != "[[dish.ingredient]]")
        .take_while(|line| !line.is_empty())
        .map(|line| format!("{line}\n"))
        .collect()
}

/// A project file with other sections [[dish.ingredient]].
fn with_dish(file: &str, dish: &str) -> String {
    let (before, rest) = file.split_once("[[dish.ingredient]]").unwrap();
    let (_, after) = rest.split_once("[[bed]]").unwrap();
    format!("{before}{dish}\n[[bed]]{after}")
}

/// A dish of more lettuce than there is room for.
fn too_much_lettuce(file: &str) -> String {
    file.replace("grams_per_portion = 60", "grams_per_portion = 900")
}

#[test]
fn dishes_are_told_in_the_order_in_which_they_are_ready() {
    let folder = as_it_is("ideas");
    let before = folder.read("garden.toml");
    let answer = folder.answer(&["ideas", "garden.toml"]);
    assert_eq!(folder.read("garden.toml"), before);
    for part in [
        "Best on Fri 25 Jun 2027: the dish of your file, ready in 4 of 5 years.",
        "the dish of your file  4 of 5  ################....  lettuce and radish (4)\n  First salad            3 of 5",
        "- the dish of your file: lettuce by Grade 1 and radish by Grade 2.",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
    assert!(!answer.contains("To cook"), "{answer}");
}

#[test]
fn the_best_dish_put_into_the_file_by_hand_plans_as_told() {
    let folder = two_beds("ideas-best", too_much_lettuce);
    let answer = folder.answer(&["ideas", "garden.toml"]);
    assert!(
        answer.starts_with("Best on Fri 25 Jun 2027: First salad, ready in 3 of 5 years."),
        "{answer}"
    );
    assert!(
        answer.contains("- the dish of your file: Lettuce"),
        "{answer}"
    );
    let dish = lines_to_put_in(&answer);
    let by_hand = two_beds("ideas-by-hand", |file| with_dish(file, &dish));
    let planned = by_hand.answer(&["plan", "garden.toml"]);
    assert!(planned.contains("ready in 3 of 5 past years"), "{planned}");
    let crops: Vec<&str> = dish
        .lines()
        .filter_map(|line| line.strip_prefix("crop = "))
        .collect();
    assert_eq!(
        crops,
        [
            "\"lettuce (leaf)\"",
            "\"radish\"",
            "\"spinach\"",
            "\"mustard\""
        ]
    );
    let answer = answer.split_whitespace().collect::<Vec<_>>().join(" ");
    for crop in crops {
        let crop = crop.trim_matches('"');
        assert!(
            answer.contains(&format!("{crop} by Grade ")),
            "{crop}: {answer}"
        );
    }
}

#[test]
fn what_cannot_be_cooked_says_why() {
    let answer = as_it_is("ideas-why").answer(&["ideas", "garden.toml"]);
    let (_, not_possible) = answer.split_once("NOT POSSIBLE").unwrap();
    // Potato, leek, tomato and herbs from seed take longer than the ten weeks of this term.
    let not_possible = not_possible
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    assert!(
        not_possible.contains(
            "Potato and leek soup, Tomato soup, Pumpkin soup and Tomato sauce for pasta: None of its ingredients \
             can be in the pot."
        ),
        "{answer}"
    );
}

/// Figures of crops, seedlings and what stands for another dish do not stand in the way of this one.
#[test]
fn what_was_for_the_dish_of_the_file_goes_with_it() {
    let more = "\n[[seedlings]]\ncrop = \"lettuce (leaf)\"\ncount = 30\n\
                sown = 2027-04-01\nfor = \"lettuce\"\n";
    let folder = two_beds("ideas-begun", |file| {
        file.replace("method = \"indoor\"\n", "") + more
    });
    folder.answer(&["check", "garden.toml"]);
    let answer = folder.answer(&["ideas", "garden.toml"]);
    assert!(answer.contains("Potato and leek soup"), "{answer}");
}

/// What stands in a bed for the dish of the file is no less there if another is cooked: it is in the way until the
/// day itself, or becomes the ingredient that the other dish makes of that crop.
#[test]
fn what_stands_in_the_beds_keeps_its_room() {
    let more = "\n[[growing]]\ncrop = \"lettuce (leaf)\"\nbed = \"A\"\nstrips = 3\n\
                sown = 2027-04-01\nas_plants = true\nfor = \"lettuce\"\n";
    let folder = two_beds("ideas-stands", |file| {
        file.replace("method = \"indoor\"\n", "") + more
    });
    let with = |crop: &str| {
        let dish = Dish {
            name: "On trial".to_owned(),
            months: (1, 12),
            ingredients: vec![(crop.to_owned(), 20.0)],
        };
        let changes = [Change::OtherDish(dish)];
        let catalogue = Catalogue::load().unwrap();
        project::load_changed(&folder.path("garden.toml"), &changes, &catalogue).unwrap()
    };
    let other = with("kale");
    assert!(other.begun.is_empty());
    let [former] = other.former.as_slice() else {
        panic!("{:?}", other.former);
    };
    assert_eq!(former.strips.count, 3);
    assert_eq!(former.cleared, other.feast.day);
    let same = with("lettuce (leaf)");
    assert!(same.former.is_empty());
    assert_eq!(same.begun.len(), 1);
    assert!(matches!(same.ingredients[0].source, Source::Begun(_)));
}

#[test]
fn another_day_must_be_a_school_day() {
    let folder = as_it_is("ideas-day");
    // A week earlier, as `days` tells, nothing is ready.
    let answer = folder.answer(&["ideas", "garden.toml", "--day", "2027-06-18"]);
    assert!(
        answer.starts_with("No dish has a plan for Fri 18 Jun 2027."),
        "{answer}"
    );
    let none = folder.run(&["ideas", "garden.toml", "--day", "2027-05-05"]);
    assert_eq!(none.status.code(), Some(2));
    assert!(text(&none.stderr).contains("There is no school on 2027-05-05."));
}
