//! How a kitchen handles a crop, in words: in what state it comes, what is done to it, where it
//! keeps.

use crate::garden::{Arrives, Curing, Freezing, Ingredient, Kitchen, Preparation, Store};

use crate::words::{Words, list};

/// In what state it comes.
pub(crate) fn arrives(arrives: Arrives) -> &'static str {
    match arrives {
        Arrives::Washed => "rinsed and drained",
        Arrives::Brushed => "dry, soil brushed off, not washed",
        Arrives::Unwashed => "as it is picked, not washed",
    }
}

/// `, or spinach, or chard`: what the cook takes in its place; nothing where the file names none.
pub(crate) fn or_instead(ingredient: &Ingredient) -> String {
    let instead = ingredient.instead.iter();
    instead.map(|crop| format!(", or {}", crop.name)).collect()
}

/// All that is done to it before it is cooked: `wash, cut off leaves and tips and peel`; what
/// comes out of a pod, shell or husk is washed after that.
pub(crate) fn before_cooking(steps: &[Preparation]) -> String {
    let all = preparation(steps);
    match steps.first() {
        None => "wash".to_owned(),
        Some(Preparation::Shell | Preparation::Thresh | Preparation::Husk) => {
            format!("{all}, wash")
        }
        Some(_) => format!("wash, {all}"),
    }
}

/// `cut off leaves and tips and peel`.
fn preparation(steps: &[Preparation]) -> String {
    let word = |step: &Preparation| match step {
        Preparation::Top => "cut off leaves and tips",
        Preparation::Trim => "trim",
        Preparation::Peel => "peel",
        Preparation::Seed => "take out the seeds",
        Preparation::Shell => "shell",
        Preparation::Thresh => "thresh and sort",
        Preparation::Husk => "husk and cut from the cob",
        Preparation::Strip => "strip from the stalks",
    };
    list(&steps.iter().map(word).collect::<Vec<_>>())
}

/// What kind of place it keeps in.
pub(crate) fn store(store: Store) -> &'static str {
    match store {
        Store::ColdMoist => "cold and moist",
        Store::CoolMoist => "cool and moist",
        Store::CoolDry => "cool, dry and airy",
        Store::Freezer => "frozen",
        Store::Jar => "in closed jars, dark",
    }
}

/// What is done to it before it is frozen.
pub(crate) fn freezing(how: Freezing) -> String {
    match how {
        Freezing::Raw => "raw, washed and cut".to_owned(),
        Freezing::Cooked => "cooked until it is soft, and cooled".to_owned(),
        Freezing::Blanched(minutes) => format!(
            "in boiling water for {}, cooled in ice water, drained",
            match minutes {
                1.0 => "a minute".to_owned(),
                _ => format!("{minutes} minutes"),
            }
        ),
    }
}

/// Where it dries or cures.
pub(crate) fn cures(place: Curing) -> &'static str {
    match place {
        Curing::Airy => "airy, out of sun and rain",
        Curing::Warm => "warm and dry, 24 to 29 C (75 to 85 F) if there is such a place",
        Curing::WarmMoist => "warm and moist, about 29 C (85 F) if there is such a place",
        Curing::Dark => "in the dark, 10 to 16 C (50 to 60 F)",
        Curing::Roof => "spread out or hung up under a roof",
    }
}

/// How warm it may be there: `0 C (32 F)`, `7.2 to 10 C (45 to 50 F)`.
pub(crate) fn temperature(kitchen: &Kitchen, words: Words) -> String {
    let (low, high) = kitchen.temperature;
    words.temperatures(low, high)
}
