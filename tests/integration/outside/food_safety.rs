//! What the cautions must say of poisons, allergens and soil.

use super::check::{Check, EXACT};
use super::ours::{catalogue, crop};
use crate::report::{plain, tiny};

/// Crop, words of its caution, source.
const SAID: [(&str, &str, &str); 16] = [
    ("dry bean", "soak five hours or more", "FDA-BBB"),
    ("dry bean", "boil 30 minutes in fresh water", "FDA-BBB"),
    ("dry bean", "never slow-cook from raw", "FDA-BBB"),
    ("bush bean", "cook the pods", "FDA-BBB"),
    ("pole bean", "cook the pods", "FDA-BBB"),
    ("celery", "must be declared in the EU", "EU1169"),
    ("rhubarb", "leaves are poisonous", "POISONS"),
    ("potato", "poisonous", "POISONS"),
    ("tomato", "poisonous", "POISONS"),
    ("eggplant", "poisonous", "POISONS"),
    ("asparagus", "berries are poisonous", "POISONS"),
    ("parsnip", "blisters", "POISONS"),
    ("celery", "blisters", "POISONS"),
    ("garlic", "botulism", "POISONS"),
    ("strawberry", "school nurse", "POISONS"),
    ("sunflower", "school nurse", "POISONS"),
];

/// EU1169, Annex II: crops with the word by which it names what they hold. Celeriac is a celery.
const HOLD: [(&str, &str); 5] = [
    ("mustard", "mustard"),
    ("edamame", "soybean"),
    ("peanut", "peanut"),
    ("celeriac", "celery"),
    ("wheat", "gluten"),
];

/// EU1169, Annex II: what of it could grow in a bed, with "nuts" that grow on trees left out.
const DECLARED: [&str; 6] = ["celery", "mustard", "sesame", "soybean", "peanut", "lupin"];

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks: Vec<Check> = SAID
        .map(|(name, words, source)| {
            let text = &crop(&catalogue, name).caution.text;
            Check::words(name, text, words, source).of(&[name], "caution.text")
        })
        .into();
    checks.extend(HOLD.map(|(name, word)| {
        let allergen = crop(&catalogue, name).caution.allergen.as_deref();
        Check::words(name, allergen.unwrap_or_default(), word, "EU1169")
            .of(&[name], "caution.allergen")
    }));
    let declared = DECLARED.iter().filter(|name| {
        let allergen = |name: &str| catalogue.get(name)?.caution.allergen.clone();
        catalogue.get(name).is_some() && allergen(name).as_deref() == Some(**name)
    });
    let grown = DECLARED.iter().filter(|name| catalogue.get(name).is_some());
    checks.push(Check::number(
        "crops that must be declared, with their allergen",
        declared.count() as f64,
        grown.count() as f64,
        EXACT,
        "EU1169",
    ));
    let (garden, checked) = tiny();
    let text = tureen::report::plan(&garden, &checked).text(plain(1000));
    let soil = "have it tested for lead";
    checks.push(Check::words("soil", &text, soil, "LEAD"));
    checks.push(Check::words(
        "hands",
        &text,
        "wash hands with soap",
        "HANDS",
    ));
    checks
}
