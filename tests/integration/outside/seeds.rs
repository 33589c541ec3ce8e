//! Shares of seed that germinate, and seeds that give the plants.

use tureen::growth::amount::seeds_for;
use tureen::units::Share;

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue};

/// 7CFR201.31: kinds with the least share for sale, per cent, each by the crops that it is for.
const LEAST_FOR_SALE: [(&[&str], f64); 49] = [
    (&["asparagus"], 70.0),
    (&["bush bean", "pole bean", "dry bean"], 70.0),
    (&["beet"], 65.0),
    (&["broccoli"], 75.0),
    (&["cabbage"], 75.0),
    (&["carrot"], 55.0),
    (&["cauliflower"], 75.0),
    (&["celery"], 55.0),
    (&["chard"], 65.0),
    (&["bok choy"], 75.0),
    (&["chives"], 50.0),
    (&["sweet corn"], 75.0),
    (&["cucumber"], 80.0),
    (&["dill"], 60.0),
    (&["eggplant"], 60.0),
    (&["kale"], 75.0),
    (&["leek"], 60.0),
    (&["lettuce (leaf)", "lettuce (head)"], 80.0),
    (&["melon"], 75.0),
    (&["okra"], 50.0),
    (&["onion (from seed)", "scallion"], 70.0),
    (&["parsley"], 60.0),
    (&["parsnip"], 60.0),
    (&["shelling pea", "snap pea"], 80.0),
    (&["sweet pepper"], 55.0),
    (&["pumpkin"], 75.0),
    (&["radish"], 75.0),
    (&["rhubarb"], 60.0),
    (&["sage"], 60.0),
    (&["spinach"], 60.0),
    (&["summer squash", "winter squash"], 75.0),
    (&["tomato"], 75.0),
    (&["turnip"], 80.0),
    (&["watermelon"], 70.0),
    (&["hot pepper"], 55.0),
    (&["tomatillo"], 50.0),
    (&["collards"], 80.0),
    (&["mustard"], 75.0),
    (&["brussels sprouts"], 70.0),
    (&["napa cabbage"], 75.0),
    (&["endive"], 70.0),
    (&["kohlrabi"], 75.0),
    (&["rutabaga"], 75.0),
    (&["celeriac"], 55.0),
    (&["daikon"], 75.0),
    (&["runner bean", "broad bean", "cowpea"], 75.0),
    (&["edamame"], 75.0),
    (&["lima bean"], 70.0),
    (&["snow pea"], 80.0),
];

/// ISU-SEEDLIFE: kinds with the years for which their seed keeps, each by the crops that it is for.
const KEEPS: [(&[&str], f64); 36] = [
    (&["bush bean", "pole bean", "dry bean"], 3.0),
    (&["beet"], 4.0),
    (&["broccoli"], 3.0),
    (&["brussels sprouts"], 4.0),
    (&["cabbage"], 4.0),
    (&["carrot"], 3.0),
    (&["celeriac"], 3.0),
    (&["cauliflower"], 4.0),
    (&["celery"], 3.0),
    (&["chard"], 4.0),
    (&["napa cabbage"], 3.0),
    (&["collards"], 5.0),
    (&["sweet corn"], 2.0),
    (&["cucumber"], 5.0),
    (&["eggplant"], 4.0),
    (&["endive"], 5.0),
    (&["fennel"], 4.0),
    (&["kale"], 4.0),
    (&["kohlrabi"], 3.0),
    (&["leek"], 2.0),
    (&["lettuce (leaf)", "lettuce (head)"], 6.0),
    (&["melon"], 5.0),
    (&["mustard"], 4.0),
    (&["okra"], 2.0),
    (&["onion (from seed)"], 1.0),
    (&["parsley"], 1.0),
    (&["parsnip"], 1.0),
    (&["shelling pea", "snap pea", "snow pea"], 3.0),
    (&["sweet pepper", "hot pepper"], 2.0),
    (&["pumpkin"], 4.0),
    (&["radish"], 5.0),
    (&["rutabaga"], 4.0),
    (&["spinach"], 3.0),
    (&["summer squash", "winter squash"], 4.0),
    (&["tomato"], 4.0),
    (&["turnip", "watermelon"], 4.0),
];

const SEED_KEEPS: Field = Field {
    path: "seed_keeps_years",
    of: |crop| crop.seed_keeps_years.map(f64::from),
    tolerance: EXACT,
};

const GERMINATES: Field = Field {
    path: "germinates",
    of: |crop| Some(crop.germinates.0 * 100.0),
    tolerance: EXACT,
};

/// Plants, shares that germinate and survive, seeds by the rule of thumb. That is right on
/// average, and the even chance of a binomial lies within one of the average.
const RULE_OF_THUMB: [(u32, f64, f64, f64, &str); 9] = [
    (72, 0.75, 1.0, 96.0, "RULE"),
    (72, 0.55, 1.0, 131.0, "RULE"),
    (72, 0.60, 1.0, 120.0, "RULE"),
    (72, 0.80, 1.0, 90.0, "RULE"),
    (72, 0.75, 0.9, 107.0, "RULE"),
    (72, 0.55, 0.9, 146.0, "RULE"),
    (72, 0.60, 0.9, 134.0, "RULE"),
    (72, 0.80, 0.9, 100.0, "RULE"),
    // Five seeds of ten came up: sow twice as much.
    (72, 0.50, 1.0, 144.0, "NE-SEEDTEST"),
];

/// Chance of a seed, seeds in a cell, cells in a hundred that stay empty.
const EMPTY_CELLS: [(f64, u32, f64); 6] = [
    (0.75, 1, 25.0),
    (0.75, 2, 6.25),
    (0.75, 3, 1.56),
    (0.55, 1, 45.0),
    (0.55, 2, 20.25),
    (0.55, 3, 9.11),
];

/// Plants, chance of each seed, least seeds for 90 %.
const SCIPY: [(u32, f64, u32); 45] = [
    (1, 0.30, 7),
    (1, 0.4675, 4),
    (1, 0.68, 3),
    (1, 0.765, 2),
    (1, 0.95, 1),
    (2, 0.30, 12),
    (2, 0.4675, 7),
    (2, 0.68, 4),
    (2, 0.765, 4),
    (2, 0.95, 2),
    (5, 0.30, 25),
    (5, 0.4675, 15),
    (5, 0.68, 10),
    (5, 0.765, 8),
    (5, 0.95, 6),
    (24, 0.30, 98),
    (24, 0.4675, 61),
    (24, 0.68, 41),
    (24, 0.765, 35),
    (24, 0.95, 27),
    (72, 0.30, 271),
    (72, 0.4675, 171),
    (72, 0.68, 115),
    (72, 0.765, 101),
    (72, 0.95, 78),
    (126, 0.30, 461),
    (126, 0.4675, 292),
    (126, 0.68, 197),
    (126, 0.765, 174),
    (126, 0.95, 136),
    (456, 0.30, 1597),
    (456, 0.4675, 1018),
    (456, 0.68, 694),
    (456, 0.765, 614),
    (456, 0.95, 487),
    (1000, 0.30, 3447),
    (1000, 0.4675, 2203),
    (1000, 0.68, 1505),
    (1000, 0.765, 1333),
    (1000, 0.95, 1062),
    (4000, 0.30, 13560),
    (4000, 0.4675, 8683),
    (4000, 0.68, 5950),
    (4000, 0.765, 5280),
    (4000, 0.95, 4230),
];

/// Of a hundred cells with `seeds` each, those that stay empty: read back from the greatest
/// certainty of one plant for which so many seeds are enough.
fn empty_cells(chance: f64, seeds: u32) -> f64 {
    let (mut sure, mut unsure) = (0.0, 1.0);
    for _ in 0..40 {
        let middle = (sure + unsure) / 2.0;
        if seeds_for(1, Share(chance), Share(middle)) <= seeds {
            sure = middle;
        } else {
            unsure = middle;
        }
    }
    100.0 * (1.0 - sure)
}

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let sale = LEAST_FOR_SALE
        .map(|(names, percent)| GERMINATES.check(&catalogue, names, percent, "7CFR201.31"));
    let mut checks = Vec::from(sale);
    checks.extend(
        KEEPS.map(|(names, years)| SEED_KEEPS.check(&catalogue, names, years, "ISU-SEEDLIFE")),
    );
    checks.extend(
        RULE_OF_THUMB.map(|(plants, germinates, survives, seeds, source)| {
            let found = seeds_for(plants, Share(germinates * survives), Share(0.5));
            let what = format!("seeds for {plants} plants at {germinates} x {survives}");
            Check::number(&what, f64::from(found), seeds, 1.0, source)
        }),
    );
    checks.extend(EMPTY_CELLS.map(|(chance, seeds, percent)| {
        let what = format!("cells without a plant, {seeds} seeds at {chance}, %");
        Check::number(&what, empty_cells(chance, seeds), percent, 0.01, "RULE")
    }));
    checks.extend(SCIPY.map(|(plants, chance, seeds)| {
        let found = seeds_for(plants, Share(chance), Share(0.9));
        let what = format!("seeds that make {plants} plants 90 % sure at {chance}");
        Check::number(&what, f64::from(found), f64::from(seeds), EXACT, "SCIPY")
    }));
    checks
}
