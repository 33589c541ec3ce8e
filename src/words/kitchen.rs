//! What a kitchen is told of the crops that come: where they stand, how long, and what is done to them before the day.

use crate::facts::kitchen::{Comes, Picked};
use crate::garden::{Crop, Ingredient, Preparation, Store};

use super::view::View;
use super::{count, handling, sentence};

/// What is frozen, dried, threshed and soaked before it is cooked (common practice), a sentence each.
#[must_use]
pub fn before(view: &View<'_>) -> Vec<String> {
    let of = |ingredient| before_of(view, ingredient);
    let all = view.garden.ingredients.iter();
    let put_by = all.clone().any(|ingredient| ingredient.crop.is_put_by());
    let put_by = put_by.then(|| {
        "What is frozen or dried is washed and made ready when it is picked, also on a day without school: agree in \
         time who does it, and who opens the freezer."
            .to_owned()
    });
    all.flat_map(of).chain(put_by).chain(frozen(view)).collect()
}

/// For how long what is frozen is good, once for all of it.
fn frozen(view: &View<'_>) -> Option<String> {
    let mut all = view
        .garden
        .ingredients
        .iter()
        .map(|ingredient| &ingredient.crop);
    let crop = all.find(|crop| crop.kitchen.store == Store::Freezer)?;
    let (_, warmest) = crop.kitchen.temperature;
    Some(format!(
        "What is frozen stays good for {} at {} or colder. Your own rules for food come first; nothing is canned or \
         bottled for a school.",
        count(crop.picking.storage_days, "day"),
        view.words.temperatures(warmest, warmest)
    ))
}

fn before_of(view: &View<'_>, ingredient: &Ingredient) -> Vec<String> {
    let crop = &ingredient.crop;
    let how = crop.how.as_ref();
    let name = sentence(&ingredient.name);
    let mut told = Vec::new();
    if let (Store::Freezer, Some(how)) = (crop.kitchen.store, crop.kitchen.freezing) {
        let how = handling::freezing(how);
        told.push(format!("{name}: frozen on the day of the pick, {how}."));
    }
    if let Some(place) = how.and_then(|how| how.cures) {
        let jar = match crop.kitchen.store {
            Store::Jar => {
                ", until it is crisp; then in closed jars. The grams are those of the fresh crop"
            }
            Store::ColdMoist | Store::CoolMoist | Store::CoolDry | Store::Freezer => "",
        };
        told.push(format!(
            "{name}: dries or cures {}{jar}.",
            handling::cures(place)
        ));
    }
    if crop.kitchen.steps.contains(&Preparation::Thresh) {
        told.push(format!(
            "{name}: threshed in lessons, not in the kitchen. Unthreshed it takes six to eight times the room."
        ));
    }
    if how.is_some_and(|how| how.soaked) {
        told.push(format!(
            "{name}: soak from the evening of {} on, in the cold, and pour the water away.",
            view.words.full_day(view.soaked_from())
        ));
    }
    told
}

/// `dry, soil brushed off, not washed; cured`.
#[must_use]
pub fn arrives(ingredient: &Ingredient) -> String {
    let state = handling::arrives(ingredient.crop.kitchen.arrives);
    match ingredient.crop.picking.cure_days {
        0 => state.to_owned(),
        days => format!("{state}; dried or cured for {}", count(days, "day")),
    }
}

/// `wash, peel`; of what is put by, that it is done at once.
#[must_use]
pub fn made_ready(crop: &Crop) -> String {
    let steps = handling::before_cooking(&crop.kitchen.steps);
    match crop.is_put_by() {
        true => format!("{steps}: when it is picked"),
        false => steps,
    }
}

/// `cool and moist, 135 days`.
#[must_use]
pub fn keeps(crop: &Crop) -> String {
    let days = match crop.picking.storage_days {
        365.. => "a year".to_owned(),
        days => count(days, "day"),
    };
    format!("{}, {days}", handling::store(crop.kitchen.store))
}

/// `Cool and moist: 3 crates. Tomato 3 of 9.1 kg, best at 7 to 13 C.`
#[must_use]
pub fn stored(view: &View<'_>, store: Store, here: &[Comes<'_>]) -> String {
    let of = |comes: &Comes<'_>| {
        let name = &comes.ingredient.name;
        match comes.in_freezer() {
            Some(litres) => format!(
                "{name} {}, some {} of freezer",
                view.words.mass_in_both(comes.expected),
                view.words.volume_in_both(litres)
            ),
            None => format!(
                "{name} {} of {}, best at {}",
                comes.crates,
                view.words.mass_in_both(comes.untrimmed),
                handling::temperature(&comes.ingredient.crop.kitchen, view.words)
            ),
        }
    };
    let each: Vec<String> = here.iter().map(of).collect();
    let crates = match store {
        Store::Freezer => String::new(),
        Store::ColdMoist | Store::CoolMoist | Store::CoolDry | Store::Jar => {
            let all: u32 = here.iter().map(|comes| comes.crates).sum();
            format!("{}. ", count(all, "crate"))
        }
    };
    format!(
        "{}: {crates}{}.",
        sentence(handling::store(store)),
        sentence(&each.join("; "))
    )
}

/// `30 Aug - 4 Oct, then drying or curing until Fri 24 Sep at the latest; days in the crate until the dish: 4 to 38`.
#[must_use]
pub fn picked(view: &View<'_>, ingredient: &Ingredient, picked: Picked) -> String {
    let there = match ingredient.crop.kitchen.store {
        Store::Freezer => "freezer",
        Store::Jar => "jar",
        Store::ColdMoist | Store::CoolMoist | Store::CoolDry => "crate",
    };
    let cured = picked.cured.map_or_else(String::new, |last| {
        let until = view.words.day(last);
        format!(", then drying or curing until {until} at the latest")
    });
    let stands = match picked.stands_until(view.garden.feast.day) {
        (least, most) if least == most => format!("{most}"),
        (least, most) => format!("{least} to {most}"),
    };
    let span = view.words.span(picked.from, picked.to);
    format!("{span}{cured}; days in the {there} until the dish: {stands}")
}
