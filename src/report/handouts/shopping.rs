//! The seed and shopping list: what to order by when, what the shelf and the beds want, what
//! children bring, what is known of the cost.

use crate::facts::decisions::Order;
use crate::garden::{Ingredient, Method};
use crate::growth::amount::{CHILD_LOSS, SURE};
use crate::plan::{Planting, StepKind};
use crate::report::decisions::ordered;
use crate::report::page::Page;
use crate::report::places;
use crate::report::screen::occasion;
use crate::report::view::View;
use crate::report::words::{count, list};
use crate::units::{Litres, Metres, STRIP};

/// Potting mix in a flat of cells, 28 x 54 cm and 5 cm deep.
const MIX_IN_CELLS: Litres = Litres(7.6);
/// Potting mix in a flat of pots, as large and 8 cm deep.
const MIX_IN_POTS: Litres = Litres(12.1);

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
         seeds a packet holds stands on it; take the next whole packet. Order two weeks ahead.",
        SURE.0 * 100.0,
        CHILD_LOSS.0 * 100.0
    ));
}

fn row(view: &View<'_>, order: &Order<'_>) -> Vec<String> {
    let grade = view.grown_by(order.ingredient);
    vec![
        view.words.day(order.by),
        order.ingredient.name.clone(),
        ordered(order),
        view.words.day(order.needed),
        grade.map_or_else(String::new, |grade| view.grade_name(grade).to_owned()),
    ]
}

/// Flats, pots, mix and labels.
fn shelf(view: &View<'_>, page: &mut Page) {
    let raised: Vec<(&Planting, &Ingredient)> = view
        .planted()
        .filter(|(p, _)| p.method == Method::Indoor)
        .collect();
    if raised.is_empty() {
        return;
    }
    page.heading("For the seedling shelf");
    for (planting, ingredient) in &raised {
        page.item(&raising(view, planting, ingredient));
    }
    let most = view.replay.flats_by_week.iter().max().copied().unwrap_or(0);
    let sown: u32 = raised.iter().map(|(p, _)| p.flats_sown).sum();
    let potted: u32 = raised
        .iter()
        .filter(|(p, _)| is_potted(p))
        .map(|(p, _)| p.flats_kept)
        .sum();
    page.item(&format!(
        "Trays of 28 x 54 cm (11 x 21 in): {most} at once, if each is used again.",
    ));
    let mix = MIX_IN_CELLS * f64::from(sown) + MIX_IN_POTS * f64::from(potted);
    page.item(&format!(
        "Seed and potting mix: about {}, if cells are filled 5 cm (2 in) and pots 8 cm (3 in) deep over \
         the whole tray.",
        view.words.volume_in_both(mix)
    ));
    page.item(&format!(
        "Labels: {} for the trays, and one for each planting in the beds; pencils, which do not run.",
        sown + potted
    ));
}

/// True if a planting is potted up.
fn is_potted(planting: &Planting) -> bool {
    planting.steps.iter().any(|s| s.kind == StepKind::PotUp)
}

/// `leek: 3 flats of 128 cells; 2 flats of 18 pots after potting up`.
fn raising(view: &View<'_>, planting: &Planting, ingredient: &Ingredient) -> String {
    let indoor = ingredient.crop.indoor;
    let cells = indoor.map_or(0, |i| i.cells_per_flat);
    let mat = match planting.on_mat {
        true => ", on the heat mat until it is up",
        false => "",
    };
    let which = crate::report::timeline::sowing(view, planting);
    let which = which.map_or_else(String::new, |which| format!(", {which}"));
    let mut text = format!(
        "{}{which}: {} of {cells} cells{mat}",
        ingredient.name,
        count(planting.flats_sown, "flat")
    );
    if let Some(pots) = indoor
        .and_then(|i| i.pots_per_flat)
        .filter(|_| is_potted(planting))
    {
        text.push_str(&format!(
            "; {} of {pots} pots for potting up",
            count(planting.flats_kept, "flat")
        ));
    }
    text + "."
}

/// Trellis, covers, and what the work in beds wants.
fn beds(view: &View<'_>, page: &mut Page) {
    page.heading("For the beds");
    for (planting, ingredient) in view.planted().filter(|(_, i)| i.crop.needs.trellis) {
        for place in places::places(&planting.places) {
            let length = STRIP * f64::from(place.strips);
            page.item(&format!(
                "Trellis or stakes, and soft ties, for {} on {} of bed {}.",
                ingredient.name,
                view.words.length_in_both(length),
                place.bed
            ));
        }
    }
    let planted = |id: &str| {
        let mut places = view.plan.plantings.iter().flat_map(|p| &p.places);
        places.any(|place| place.bed == id)
    };
    for bed in view.garden.beds.iter().filter(|bed| planted(&bed.id)) {
        if let Some(cover) = &bed.cover {
            let sides = |side: Metres| side + Metres(0.6);
            page.item(&format!(
                "Cover for bed {} ({}), with 30 cm (12 in) to spare on every side: {}.",
                bed.id,
                cover.name,
                view.words
                    .ground_in_both(sides(bed.length), sides(bed.width))
            ));
        }
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
        .garden
        .ingredients
        .iter()
        .filter_map(|i| Some(format!("{} {:.2}", i.name, i.fallback?.cost?)))
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
