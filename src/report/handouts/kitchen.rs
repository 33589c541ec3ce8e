//! The kitchen's note: how much of each ingredient comes, what is missing and by when to order it,
//! in what state it comes, what is done to it, crates and cold space, when it comes, cautions.

use crate::checker::IngredientReplay;
use crate::facts::cautions::allergens;
use crate::facts::spans::span_of;
use crate::garden::{CRATE, Ingredient, Source, Store};
use crate::plan::{Planting, StepKind};
use crate::report::page::Page;
use crate::report::screen::occasion;
use crate::report::view::View;
use crate::report::words::{choice, count, list, sentence};
use crate::report::{cautions, handling, verdict};
use crate::units::{Kilograms, Share};

/// No crate is filled heavier: one adult carries it without trouble (common practice).
const HEAVIEST: Kilograms = Kilograms(12.0);

/// Where things keep, in the order in which they are told.
const STORES: [Store; 3] = [Store::ColdMoist, Store::CoolMoist, Store::CoolDry];

/// Writes the note.
pub fn write(view: &View<'_>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    page.title(&verdict::sentence(view));
    amounts(view, page);
    fallbacks(view, page);
    state(view, page);
    space(view, page);
    arrivals(view, page);
    care(view, page);
    assumed(view, page);
}

/// What comes of each ingredient, and what is to order.
fn amounts(view: &View<'_>, page: &mut Page) {
    let feast = view.garden.feast;
    page.heading("How much comes");
    let rows: Vec<Vec<String>> = view
        .ingredients()
        .map(|(_, ingredient, seen)| {
            vec![
                ingredient.name.clone(),
                view.words.mass_in_both(seen.low),
                view.words.mass_in_both(seen.expected),
                view.words.mass_in_both(ingredient.target(feast.portions)),
                missing(view, ingredient, seen),
            ]
        })
        .collect();
    let header = [
        "Ingredient",
        "Poor year",
        "Ordinary year",
        "Wanted",
        "Missing in a poor year",
    ];
    page.table(&header, &rows, &[1, 2, 3, 4]);
    page.gap();
    page.line(&format!(
        "Kilograms and pounds ready to cook, after trimming. Order what is missing in a poor year by {}; \
         two weeks is common practice. What is left over the kitchen uses up, or it goes home.",
        view.words.day(view.rest_ordered_by())
    ));
}

/// What the garden does not bring in a poor year.
fn missing(view: &View<'_>, ingredient: &Ingredient, seen: &IngredientReplay) -> String {
    let target = ingredient.target(view.garden.feast.portions);
    // Less than a scale in a kitchen shows is nothing.
    match target - seen.low {
        gap if gap > Kilograms(0.005) => view.words.mass_in_both(gap),
        _ => "nothing".to_owned(),
    }
}

/// What to do if an ingredient fails.
fn fallbacks(view: &View<'_>, page: &mut Page) {
    page.heading("If one fails");
    let portions = view.garden.feast.portions;
    let mut none: Vec<&str> = Vec::new();
    for ingredient in &view.garden.ingredients {
        let Some(fallback) = ingredient.fallback else {
            none.push(&ingredient.name);
            continue;
        };
        let cost = fallback
            .cost
            .map_or_else(String::new, |cost| format!(", for about {cost:.2}"));
        page.item(&format!(
            "{}: ask the garden on {}; if it has failed, order {}{cost}.",
            ingredient.name,
            view.words.day(view.bought_by(fallback)),
            view.words.mass_in_both(ingredient.target(portions))
        ));
    }
    if !none.is_empty() {
        page.item(&format!(
            "For {} the file names no day to buy: ask two weeks before the day, and cook with less.",
            list(&none)
        ));
    }
}

/// In what state each comes, and what is done to it.
fn state(view: &View<'_>, page: &mut Page) {
    page.heading("In what state it comes");
    let rows: Vec<Vec<String>> = view
        .garden
        .ingredients
        .iter()
        .map(|ingredient| {
            let crop = &ingredient.crop;
            let keeps = match crop.picking.storage_days {
                365.. => "a year".to_owned(),
                days => count(days, "day"),
            };
            vec![
                ingredient.name.clone(),
                comes(ingredient),
                handling::before_cooking(&crop.kitchen.steps),
                usable(ingredient).map_or_else(String::new, |share| share.to_string()),
                // On one line, so that the sheet holds all ingredients.
                format!("{}, {keeps}", handling::store(crop.kitchen.store)).replace(' ', "\u{a0}"),
            ]
        })
        .collect();
    let header = ["Ingredient", "It comes", "Before cooking", "Left", "Keeps"];
    page.table(&header, &rows, &[3]);
    page.gap();
    page.line(
        "Wash everything in the kitchen under running water just before it is used, also what was \
         rinsed in the garden.",
    );
}

/// `dry, soil brushed off, not washed; cured`.
fn comes(ingredient: &Ingredient) -> String {
    let state = handling::arrives(ingredient.crop.kitchen.arrives);
    match ingredient.crop.picking.cure_days {
        0 => state.to_owned(),
        days => format!("{state}; dried or cured for {}", count(days, "day")),
    }
}

/// The share that is left after trimming; a patch's kilograms are given as they go into the pot.
fn usable(ingredient: &Ingredient) -> Option<Share> {
    let patch = matches!(ingredient.source, Source::Patch(_));
    (!patch).then_some(ingredient.crop.yields.usable)
}

/// Kilograms as they come from the garden, in an ordinary year.
fn untrimmed(ingredient: &Ingredient, seen: &IngredientReplay) -> Kilograms {
    let usable = usable(ingredient).map_or(1.0, |share| share.0.max(0.01));
    seen.expected * (1.0 / usable)
}

/// Crates of the amount that an ordinary year brings.
fn crates(ingredient: &Ingredient, seen: &IngredientReplay) -> u32 {
    let full = ingredient.crop.kitchen.crate_holds.min(HEAVIEST);
    (untrimmed(ingredient, seen) / full).ceil().max(1.0) as u32
}

/// Crates, and where they stand.
fn space(view: &View<'_>, page: &mut Page) {
    page.heading("Crates and cold space");
    for store in STORES {
        let here: Vec<_> = view
            .ingredients()
            .filter(|(_, i, _)| i.crop.kitchen.store == store)
            .collect();
        if here.is_empty() {
            continue;
        }
        let all: u32 = here.iter().map(|(_, i, seen)| crates(i, seen)).sum();
        let each: Vec<String> = here
            .iter()
            .map(|(_, ingredient, seen)| {
                format!(
                    "{} {} of {}, best at {}",
                    ingredient.name,
                    crates(ingredient, seen),
                    view.words.mass_in_both(untrimmed(ingredient, seen)),
                    handling::temperature(&ingredient.crop.kitchen, view.words)
                )
            })
            .collect();
        page.item(&format!(
            "{}: {}. {}.",
            sentence(handling::store(store)),
            count(all, "crate"),
            sentence(&each.join("; "))
        ));
    }
    page.line(&format!(
        "Of an ordinary year, as it comes, all at once. A crate is 60 x 40 x 20 cm (24 x 16 x 8 in) and \
         holds {}; none is filled heavier than {}. A refrigerator of 1 to 4 C (34 to 39 F) does \
         for what wants it colder, for some days. Colder than it likes spoils what keeps cool and moist.",
        view.words.volume_in_both(CRATE),
        view.words.mass_in_both(HEAVIEST)
    ));
}

/// When each comes.
fn arrivals(view: &View<'_>, page: &mut Page) {
    let deliver_by = view.words.day(view.garden.feast.deliver_by);
    page.heading("When it comes");
    for ingredient in &view.garden.ingredients {
        let spans: Vec<String> = view
            .plantings_named(&ingredient.name)
            .filter_map(|planting| picked(view, planting))
            .collect();
        if !spans.is_empty() {
            page.item(&format!("{}: picked {}.", ingredient.name, choice(&spans)));
        }
    }
    page.line(&format!(
        "On which of these days the garden tells the day before: it picks when it is ripe. All is in the \
         kitchen by {deliver_by}."
    ));
}

/// `30 Aug - 4 Oct, then drying or curing until Fri 24 Sep at the latest`.
fn picked(view: &View<'_>, planting: &Planting) -> Option<String> {
    let (first, last) = span_of(planting, StepKind::Pick)?;
    let cured = span_of(planting, StepKind::Cure).map_or_else(String::new, |(_, last)| {
        let until = view.words.day(last);
        format!(", then drying or curing until {until} at the latest")
    });
    Some(format!("{}{cured}", view.words.span(first, last)))
}

/// Allergens and cautions; local rules come first.
fn care(view: &View<'_>, page: &mut Page) {
    page.heading("Take care");
    page.item(&format!(
        "Allergies: the school nurse decides about {}.",
        cautions::whole_dish(&allergens(view.garden))
    ));
    for text in view.garden.ingredients.iter().filter_map(cautions::of) {
        page.item(&text);
    }
    page.item(
        "Before garden food is served, ask the local health department and the district: their \
         rules for washing, cooling, keeping and records come first.",
    );
    page.item(
        "Throw out what smells, leaks or is mouldy, and what animals have touched. Note on each crate what \
         it is, who picked it and when.",
    );
}

/// What the note rests on.
fn assumed(view: &View<'_>, page: &mut Page) {
    page.heading("What was assumed");
    let portions: Vec<String> = view
        .garden
        .ingredients
        .iter()
        .map(|i| format!("{} {}", i.name, view.words.portion(i.grams_per_portion)))
        .collect();
    page.item(&format!(
        "{}, with in each: {}.",
        count(view.garden.feast.portions, "portion"),
        list(&portions)
    ));
    page.item(&format!(
        "A poor and an ordinary year as the crop list and the file have them, of {} {}. What is left \
         after trimming, how it keeps and what fills a crate: tureen crops NAME tells the sources.",
        view.years(),
        view.kind_of_years()
    ));
}
