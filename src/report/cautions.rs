//! The cautions that apply: allergens, poisonous parts, hands, soil, tools, food service.
//! Short, and deferring to local rules.

use std::collections::BTreeMap;

use crate::garden::{Garden, Ingredient};

use super::manure::COMPOST;
use super::page::Page;
use super::words::list;

/// The allergens of the dish, each with the ingredients that carry it.
pub(super) fn allergens(garden: &Garden) -> Vec<String> {
    let mut by_allergen: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for ingredient in &garden.ingredients {
        if let Some(allergen) = &ingredient.crop.caution.allergen {
            by_allergen
                .entry(allergen)
                .or_default()
                .push(&ingredient.name);
        }
    }
    by_allergen
        .into_iter()
        .map(|(allergen, names)| {
            if names == [allergen] {
                allergen.to_owned()
            } else {
                format!("{allergen} ({})", list(&names))
            }
        })
        .collect()
}

/// What the nurse is asked about: every dish, whatever the program knows of it.
pub(super) fn whole_dish(allergens: &[String]) -> String {
    match allergens {
        [] => "all that goes into the dish".to_owned(),
        some => format!("{} and all else that goes into the dish", list(some)),
    }
}

/// The cautions of one ingredient; `None` if there is none.
#[must_use]
pub fn of(ingredient: &Ingredient) -> Option<String> {
    let text = ingredient.crop.caution.text.trim();
    (!text.is_empty()).then(|| format!("{}: {}", ingredient.name, full_stop(text)))
}

/// Writes every caution that applies to the whole plan.
pub(super) fn write(garden: &Garden, page: &mut Page) {
    page.heading("Take care");
    let allergens = allergens(garden);
    page.item(&format!(
        "Allergies: ask the school nurse about {} before it is fixed.",
        whole_dish(&allergens)
    ));
    for text in garden.ingredients.iter().filter_map(of) {
        page.item(&text);
    }
    for text in garden.ingredients.iter().flat_map(|i| too_young(garden, i)) {
        page.item(&text);
    }
    let mat = (garden.shelf.warm_flats > 0).then_some(HEAT_MAT);
    for text in GENERAL
        .into_iter()
        .chain(SCHOOL)
        .chain(mat)
        .chain([COMPOST])
    {
        page.item(text);
    }
}

/// Writes what a school decides, in short; each ingredient's own cautions stand where it is grown
/// and cooked.
pub(super) fn for_the_school(garden: &Garden, page: &mut Page) {
    page.heading("Take care");
    page.item(&format!(
        "Allergies: ask the school nurse about {} before it is fixed.",
        whole_dish(&allergens(garden))
    ));
    for text in SCHOOL {
        page.item(text);
    }
}

/// Grades that may grow an ingredient and are younger than is usual for it.
fn too_young(garden: &Garden, ingredient: &Ingredient) -> Option<String> {
    let least = ingredient.least_age()?;
    let grades = ingredient.grades.iter().map(|grade| &garden[*grade]);
    let young = grades.filter(|grade| ingredient.is_too_hard_for(grade));
    let names: Vec<&str> = young.map(|grade| grade.name.as_str()).collect();
    (!names.is_empty()).then(|| {
        format!(
            "{} is young for {}: by common practice children are {least} and older for it. Let an \
             adult do the fine seed and the knife.",
            list(&names),
            ingredient.name
        )
    })
}

/// What goes for every school garden (common practice).
const GENERAL: [&str; 2] = [
    "Wash hands with soap after soil work, before picking and before eating; whoever has \
     been sick stays away from picking and cooking.",
    "Never eat seed or seed potatoes, which may be treated; wash hands after touching them.",
];

/// What goes for every school garden and is the school's to see to (common practice).
const SCHOOL: [&str; 4] = [
    "Know the soil: have it tested for lead if its history is not known, and use no raw manure.",
    "Tools are counted out and in; adults handle knives, stoves and heat, and enough adults \
     are there for the number of children.",
    "Before garden food is served, ask the local health department and the district: their \
     rules come first.",
    "Water, electric and building work is for licensed trades, by the rules of the district.",
];

/// Where seed stands warm (common practice).
const HEAT_MAT: &str = "Keep the heat mat, its cable and its plug away from water; an adult plugs it in, and the \
     school's rules for electric devices come first.";

/// The caution that every grade team reads.
pub(super) const HANDS: &str = "Wash hands with soap after soil work and after touching seed, before picking and before \
     eating. Never eat seed or seed potatoes: they may be treated.";

fn full_stop(text: &str) -> String {
    if text.ends_with(['.', '!', '?']) {
        text.to_owned()
    } else {
        format!("{text}.")
    }
}
