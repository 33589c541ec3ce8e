//! The seed and shopping list: what to order by when, what the shelf and the beds want, what
//! children bring, what is known of the cost.

use crate::facts::decisions::Order;
use crate::facts::supplies::{RESERVE, Raised, Supported};
use crate::garden::Ingredient;
use crate::page::Page;
use crate::words::decisions::ordered;
use crate::words::occasion::occasion;
use crate::words::view::View;
use crate::words::{count, day_length, list, minutes, tasks};

/// Writes the list.
pub fn write(view: &View<'_>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    seeds(view, page);
    shelf(view, page);
    beds(view, page);
    from_home(page);
    cost(view, page);
}

/// What is sown or planted, a row for each ingredient.
fn seeds(view: &View<'_>, page: &mut Page) {
    page.heading("Seed, pieces and plants");
    let orders = view.orders();
    let rows: Vec<Vec<String>> = orders.iter().map(|order| row(view, order)).collect();
    if rows.is_empty() {
        page.line("Nothing: all that the dish needs stands already.");
        return;
    }
    let header = ["Order by", "Ingredient", "How many", "First needed", "For"];
    page.table(&header, &rows, &[]);
    page.gap();
    page.line(&format!(
        "Seed is counted with a reserve: so many that the plants stand with a chance of {:.0} in 100, \
         although some does not come up and {:.0} in 100 are lost under children's hands (common \
         practice), and every child sows its own. Pieces and plants have none: buy one in ten more. How many \
         seeds a packet holds stands on it; take the next whole packet. Order two weeks ahead, and ask for \
         untreated seed: no child should handle seed that is dressed against pests.",
        RESERVE.sure.0 * 100.0,
        RESERVE.lost.0 * 100.0
    ));
}

fn row(view: &View<'_>, order: &Order<'_>) -> Vec<String> {
    vec![
        view.words.day(order.by),
        name_with_kind(view, order),
        ordered(order),
        view.words.day(order.needed),
        view.team_name(view.grown_by(order.ingredient)),
    ]
}

/// `onion (from sets), long-day kind`.
fn name_with_kind(view: &View<'_>, order: &Order<'_>) -> String {
    let Ingredient { name, crop, .. } = order.ingredient;
    let kind = crop
        .bulbs
        .and_then(|bulbs| bulbs.kind_at(view.garden.latitude));
    match kind {
        Some(kind) => format!("{name}, {} kind", day_length::kind(kind)),
        None => name.clone(),
    }
}

/// Flats, pots, mix and labels.
fn shelf(view: &View<'_>, page: &mut Page) {
    let shelf = view.for_shelf();
    if shelf.raised.is_empty() {
        return;
    }
    page.heading("For the seedling shelf");
    for raised in &shelf.raised {
        page.item(&raising(view, raised));
    }
    page.item(&format!(
        "Trays of 28 x 54 cm (11 x 21 in): {} at once, if each is used again.",
        shelf.trays
    ));
    page.item(&format!(
        "Seed and potting mix: about {}, if cells are filled 5 cm (2 in) and pots 8 cm (3 in) deep over \
         the whole tray.",
        view.words.volume_in_both(shelf.mix)
    ));
    page.item(&format!(
        "Labels: {} for the trays; pencils, which do not run.",
        shelf.labels
    ));
}

/// `leek: 3 flats of 128 cells; 2 flats of 18 pots after potting up`.
fn raising(view: &View<'_>, raised: &Raised<'_>) -> String {
    let planting = raised.planting;
    let mat = match planting.on_mat {
        true => ", on the heat mat until it is up",
        false => "",
    };
    let which = tasks::sowing(view.sowing_of(planting));
    let which = which.map_or_else(String::new, |which| format!(", {which}"));
    let cells = raised.cells.map(|cells| {
        let flats = count(planting.flats_sown, "flat");
        format!("{flats} of {cells} cells{mat}")
    });
    let pots = raised.pots.map(|pots| {
        let flats = count(planting.flats_kept, "flat");
        format!("{flats} of {pots} pots for potting up")
    });
    let both: Vec<String> = cells.into_iter().chain(pots).collect();
    format!("{}{which}: {}.", raised.ingredient.name, both.join("; "))
}

/// `Stakes, cages or a net, and soft ties, for tomato on 1.2 m of bed 3: to put up before planting.`
fn support(view: &View<'_>, supported: &Supported<'_>) -> String {
    let (what, bed) = (&supported.ingredient.name, &supported.bed.id);
    let length = view.words.length_in_both(supported.length);
    match supported.put_up {
        None => format!("Soft ties for {what} on {length} of trellis of bed {bed}."),
        Some(work) => format!(
            "Stakes, cages or a net, and soft ties, for {what} on {length} of bed {bed}. An adult puts them up \
             before planting, about {}, and caps the tops: they are at the height of eyes.",
            minutes(work)
        ),
    }
}

/// Trellis, covers, and what the work in beds wants.
fn beds(view: &View<'_>, page: &mut Page) {
    page.heading("For the beds");
    page.item(&format!(
        "Labels: {}, one for each planting and class, as on the page of the map.",
        view.bed_labels()
    ));
    for supported in view.supported() {
        page.item(&support(view, &supported));
    }
    for covered in view.covered() {
        let (length, width) = covered.size;
        page.item(&format!(
            "Cover for bed {} ({}), with 30 cm (12 in) to spare on every side: {}.",
            covered.bed.id,
            covered.cover,
            view.words.ground_in_both(length, width)
        ));
    }
    page.item(
        "Trowels, rakes, a string line, blunt scissors, watering cans with a fine rose, clean crates and \
         a scale: what is there already need not be bought.",
    );
}

/// What children bring (common practice).
fn from_home(page: &mut Page) {
    page.heading("Children bring");
    page.item("Clothes and shoes that may get dirty, a hat, something to drink.");
    page.item(
        "No food, and no seed from the kitchen: the nurse has not seen it, and it may not come up.",
    );
}

/// What is known of the cost.
fn cost(view: &View<'_>, page: &mut Page) {
    page.heading("Cost");
    let costs: Vec<String> = view
        .bought_if_it_fails()
        .filter_map(|(ingredient, cost)| Some(format!("{} {:.2}", ingredient.name, cost?)))
        .collect();
    if costs.is_empty() {
        page.line("The file names no cost. Ask for prices before you order.");
    } else {
        page.line(&format!(
            "The file names the cost only of what is bought if it fails: {}. Ask for the prices of seed \
             and mix before you order.",
            list(&costs)
        ));
    }
}
