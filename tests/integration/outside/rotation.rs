//! Years that a family stays away from a bed.

use super::check::Check;
use super::ours::{catalogue, crop};

/// WVU-ROT: not in the same place for two to three years, by family.
const FAMILIES: [(&str, &[&str]); 6] = [
    (
        "cucurbit",
        &[
            "cucumber",
            "summer squash",
            "winter squash",
            "pumpkin",
            "melon",
        ],
    ),
    ("lettuce", &["lettuce (leaf)", "lettuce (head)"]),
    ("beet", &["spinach", "chard", "beet"]),
    (
        "legume",
        &[
            "bush bean",
            "pole bean",
            "dry bean",
            "shelling pea",
            "snap pea",
        ],
    ),
    ("carrot", &["carrot", "parsnip"]),
    ("cabbage", &["radish"]),
];

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let family = |(family, names): (&str, &'static [&'static str])| {
        let of = |name: &&str| {
            let rotation = &crop(&catalogue, name).rotation;
            (rotation.family == family).then_some((rotation.years_hard, rotation.years_wished))
        };
        let mut years: Vec<_> = names.iter().map(of).collect();
        years.dedup();
        let what = format!("{family}: years away");
        Check::words(&what, &format!("{years:?}"), "[Some((2, 3))]", "WVU-ROT")
            .of(names, "rotation")
    };
    FAMILIES.map(family).into()
}
