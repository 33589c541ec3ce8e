//! Small project files for tests that change a project as a person does: in its file.

use crate::random_gardens::dice::Dice;

/// The first three years of the smallest scenario's weather.
pub fn weather() -> String {
    let all = include_str!("../../../scenarios/two-beds/weather.csv");
    let first_three = |line: &&str| !line.starts_with("2024") && !line.starts_with("2025");
    all.lines()
        .filter(first_three)
        .map(|l| format!("{l}\n"))
        .collect()
}

/// The project file of a seed: two classes, one or two quick crops, one or two short beds, a
/// shelf of no flat to two; most are too small for their dish.
pub fn project(seed: u64) -> String {
    let dice = &mut Dice::new(seed);
    let mut text = format!(
        "[project]\nname = \"Small case {seed}\"\nfeast = 2027-06-25\ndeliver_by = 2027-06-{}\n\
         portions = 40\n\n[place]\nlatitude = 30.0\nweather = \"weather.csv\"\n\n\
         [calendar]\nstart = 2027-04-12\n\
         terms = [{{ name = \"Summer\", from = 2027-04-12, to = 2027-07-09 }}]\n\
         breaks = [{{ name = \"Short break\", from = 2027-05-03, to = 2027-05-09, care = \"{}\" }}]\n",
        dice.one(&[22, 23, 24]),
        dice.one(&["none", "none", "staff"]),
    );
    for (id, day, from) in [("1", "Tue", 13), ("2", "Thu", 15)] {
        text += &format!(
            "\n[[grade]]\nid = \"{id}\"\nclasses = [{{ name = \"{id}a\", children = 18, \
             day = \"{day}\", every = {}, from = 2027-04-{from}, minutes = {} }}]\n",
            dice.one(&[1, 2, 2]),
            dice.one(&[10, 12, 15, 30]),
        );
    }
    text += &dish(dice);
    for id in ["A", "B"].into_iter().take(dice.one(&[1, 1, 2])) {
        text += &format!(
            "\n[[bed]]\nid = \"{id}\"\nlength_m = {:.1}\nwidth_m = 1.2\n",
            f64::from(dice.int(2, 5)) * 0.3,
        );
    }
    text += &format!(
        "\n[shelf]\nflats = {}\nroom_c = 19\nfrom = 2027-04-12\n",
        dice.one(&[0, 0, 1, 2])
    );
    text
}

/// One or two ingredients, each with figures that make it ready here in most years.
fn dish(dice: &mut Dice) -> String {
    let crops = [
        ("lettuce (leaf)", "indoor", 60, "reference_c = 13"),
        ("radish", "direct", 30, "days_to_maturity = 28"),
        ("spinach", "direct", 20, "reference_c = 13"),
    ];
    let first = dice.below(crops.len());
    let mut text = String::new();
    for k in 0..dice.one(&[1, 2, 2, 2]) {
        let (crop, method, grams, own) = crops[(first + k) % crops.len()];
        text += &format!(
            "\n[[dish.ingredient]]\ncrop = \"{crop}\"\ngrade = \"{}\"\n\
             grams_per_portion = {}\nleast_share = {}\neach_child_sows = {}\n\
             method = \"{method}\"\n\n[crop.\"{crop}\"]\n{own}\n",
            k + 1,
            grams * dice.one(&[1, 2, 2, 3]) / 2,
            dice.one(&[0.3, 0.3, 0.6]),
            dice.int(1, 5),
        );
    }
    text
}
