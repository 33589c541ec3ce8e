//! The kitchen's note: how much of each ingredient comes, what is missing and by when to order it,
//! in what state it comes, what is done to it, crates and cold space, when it comes, cautions.

use crate::facts::cautions::allergens;
use crate::facts::kitchen::{Comes, HEAVIEST};
use crate::garden::CRATE;
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::view::View;
use crate::words::{answers, fortnight, promise};
use crate::words::{cautions, choice, count, handling, kitchen, list};

/// Writes the note.
pub fn write(view: &View<'_>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    page.title(&answers::kitchen(view));
    amounts(view, page);
    fallbacks(view, page);
    fortnight(view, page);
    state(view, page);
    space(view, page);
    arrivals(view, page);
    care(view, page);
    assumed(view, page);
    page.heading("How sure it is");
    page.line(&promise::sentence(view));
}

/// What happens on which day of the last two weeks.
fn fortnight(view: &View<'_>, page: &mut Page) {
    let days = view.fortnight();
    page.heading("The last two weeks, day by day");
    let told: Vec<(String, String)> = days
        .iter()
        .map(|(day, events)| (view.words.day(*day), fortnight::in_words(view, events)))
        .collect();
    let width = told
        .iter()
        .map(|(day, _)| day.chars().count())
        .max()
        .unwrap_or(0);
    for (day, text) in told {
        page.entry(&day, width, &text);
    }
    page.gap();
    page.line(fortnight::NOTE);
}

/// What comes of each ingredient, and what is to order.
fn amounts(view: &View<'_>, page: &mut Page) {
    page.heading("How much comes");
    let row = |comes: Comes<'_>| {
        let mass = |mass| view.words.mass_in_both(mass);
        vec![
            comes.ingredient.name.clone(),
            mass(comes.low),
            mass(comes.expected),
            mass(comes.wanted),
            comes.missing.map_or_else(|| "nothing".to_owned(), mass),
        ]
    };
    let rows: Vec<Vec<String>> = view.comes().into_iter().map(row).collect();
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
            "{}: ask the garden on {}; if it has failed, order {}{cost}{}.",
            ingredient.name,
            view.words.day(view.bought_by(fallback)),
            view.words.mass_in_both(ingredient.target(portions)),
            handling::or_instead(ingredient)
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
    let row = |comes: Comes<'_>| {
        let crop = &comes.ingredient.crop;
        vec![
            comes.ingredient.name.clone(),
            kitchen::arrives(comes.ingredient),
            kitchen::made_ready(crop),
            comes
                .usable
                .map_or_else(String::new, |share| share.to_string()),
            // On one line, so that the sheet holds all ingredients.
            kitchen::keeps(crop).replace(' ', "\u{a0}"),
        ]
    };
    let rows: Vec<Vec<String>> = view.comes().into_iter().map(row).collect();
    let header = ["Ingredient", "It comes", "Before cooking", "Left", "Keeps"];
    page.table(&header, &rows, &[3]);
    page.gap();
    page.line(
        "It is stored dry. Wash everything in the kitchen under running drinking water just before it is \
         used, on the day, also what was rinsed in the garden.",
    );
    for text in kitchen::before(view) {
        page.item(&text);
    }
}

/// Crates, and where they stand.
fn space(view: &View<'_>, page: &mut Page) {
    page.heading("Crates and cold space");
    for (store, here) in view.stores() {
        page.item(&kitchen::stored(view, store, &here));
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
        let picked = view.picked(ingredient).into_iter();
        let spans: Vec<String> = picked
            .map(|picked| kitchen::picked(view, ingredient, picked))
            .collect();
        if !spans.is_empty() {
            page.item(&format!("{}: picked {}.", ingredient.name, choice(&spans)));
        }
    }
    page.line(&format!(
        "On which of these days the garden tells the day before: it picks when it is ripe. What keeps cold is \
         in the cold within two hours of the pick. All is in the kitchen by {deliver_by}."
    ));
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
        "Keep cut leaves, cut tomatoes and cut melon at 5 C (41 F) or colder until they are served.",
    );
    page.item(
        "Choking: for the youngest, hard raw roots are grated or cut into thin strips, not into coins, and \
         cherry tomatoes and berries into quarters.",
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
