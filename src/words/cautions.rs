//! The cautions in words. Short, and deferring to local rules.

use crate::facts::cautions::{Allergen, Caution, Young, has_caution};
use crate::garden::{Garden, Ingredient};

use super::list;

/// What the nurse is asked about: every dish, whatever the program knows of it.
pub(crate) fn whole_dish(allergens: &[Allergen<'_>]) -> String {
    let one = |allergen: &Allergen<'_>| match allergen.carried_by.as_slice() {
        [only] if *only == allergen.name => allergen.name.to_owned(),
        several => format!("{} ({})", allergen.name, list(several)),
    };
    match allergens {
        [] => "all that goes into the dish".to_owned(),
        some => {
            let some: Vec<String> = some.iter().map(one).collect();
            format!("{} and all else that goes into the dish", list(&some))
        }
    }
}

/// The cautions of one ingredient; `None` if there is none.
#[must_use]
pub fn of(ingredient: &Ingredient) -> Option<String> {
    if !has_caution(ingredient) {
        return None;
    }
    let crop = &ingredient.crop;
    let mut parts: Vec<String> = Vec::new();
    if let Some(like) = &crop.like {
        parts.push(format!(
            "the program does not know it and takes it to be like {like}; ask what is poisonous of it, what \
             causes allergies, and how it is cooked."
        ));
    }
    let text = crop.caution.text.trim();
    parts.extend((!text.is_empty()).then(|| full_stop(text)));
    Some(format!("{}: {}", ingredient.name, parts.join(" ")))
}

/// What a caution says. Those that name no ingredient and no grade are common practice.
#[must_use]
pub fn text(garden: &Garden, caution: &Caution<'_>) -> String {
    let fixed = match caution {
        Caution::Allergies(allergens) => {
            return format!(
                "Allergies: ask the school nurse about {} before it is fixed.",
                whole_dish(allergens)
            );
        }
        Caution::Own(ingredient) => return of(ingredient).unwrap_or_default(),
        Caution::Young(young) => return too_young(garden, young),
        Caution::Hands => {
            "Wash hands with soap after soil work, before picking and before eating; whoever has \
             been sick stays away from picking and cooking."
        }
        Caution::Seed => {
            "Never eat seed or seed potatoes, which may be treated; wash hands after touching them."
        }
        Caution::Soil => {
            "Know the soil: have it tested for lead if its history is not known, and use no raw \
             manure."
        }
        Caution::Outdoors => OUTDOORS,
        Caution::Heat => HEAT,
        Caution::Tools => {
            "Tools are counted out and in; adults handle knives, stoves and heat, and enough adults \
             are there for the number of children."
        }
        Caution::FoodService => {
            "Before garden food is served, ask the local health department and the district: their \
             rules come first."
        }
        Caution::Trades => {
            "Water, electric and building work is for licensed trades, by the rules of the district."
        }
        Caution::HeatMat => {
            "Keep the heat mat, its cable and its plug away from water; an adult plugs it in, and \
             the school's rules for electric devices come first."
        }
        Caution::Compost => COMPOST,
    };
    fixed.to_owned()
}

/// Of grades that are younger than is usual for an ingredient.
fn too_young(garden: &Garden, young: &Young<'_>) -> String {
    let grades = young
        .grades
        .iter()
        .map(|grade| garden[*grade].name.as_str());
    format!(
        "{} is young for {}: by common practice children are {} and older for it. Let an adult do \
         the fine seed and the knife.",
        list(&grades.collect::<Vec<_>>()),
        young.ingredient.name,
        young.least_age
    )
}

/// The caution that every grade team reads.
pub(crate) const HANDS: &str = "Wash hands with soap after soil work and after touching seed, before picking and before \
     eating. Never eat seed or seed potatoes: they may be treated.";

/// What every grade team sees to outdoors (common practice).
pub(crate) const OUTDOORS: &str = "Outdoors: closed shoes; gloves for what pricks or itches. Know who reacts to stings and where the \
     medicine is; look for ticks after tall grass; wash and cover cuts at once. No pesticides where children work. \
     The school's rules come first.";

/// What every grade team sees to in summer (common practice).
pub(crate) const HEAT: &str = "Sun and heat: hats, water and shade; early if it is hot, and not at all when the school's rule for \
     heat says so.";

fn full_stop(text: &str) -> String {
    if text.ends_with(['.', '!', '?']) {
        text.to_owned()
    } else {
        format!("{text}.")
    }
}

/// Which compost counts as safe. Source: the same section, (c)(2): 131 to 170 F.
const COMPOST: &str = "Compost counts as safe once it was hot, 55 to 77 C for 15 days with five turnings (three \
     days in a closed or aired vessel); ask whoever sells it.";
