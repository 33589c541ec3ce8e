//! Crop coefficients of the initial, middle and end stage.

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue};

/// FAO56-T12: rows by the crops that take them. Where the table prints a range at the end,
/// its left value; of maize and cowpea the right one, which is for a dry harvest.
const ROWS: [(&[&str], [f64; 3]); 44] = [
    (&["tomato"], [0.6, 1.15, 0.8]),
    (&["sweet pepper"], [0.6, 1.05, 0.9]),
    (&["eggplant"], [0.6, 1.05, 0.9]),
    (&["potato"], [0.5, 1.15, 0.75]),
    (
        &["onion (from seed)", "onion (from sets)"],
        [0.7, 1.05, 0.75],
    ),
    (&["scallion"], [0.7, 1.0, 1.0]),
    (&["garlic"], [0.7, 1.0, 0.7]),
    (&["carrot"], [0.7, 1.05, 0.95]),
    (&["beet"], [0.5, 1.05, 0.95]),
    (&["radish"], [0.7, 0.9, 0.85]),
    (&["turnip"], [0.5, 1.1, 0.95]),
    (&["parsnip"], [0.5, 1.05, 0.95]),
    (&["sweet potato"], [0.5, 1.15, 0.65]),
    (&["lettuce (leaf)", "lettuce (head)"], [0.7, 1.0, 0.95]),
    (&["spinach"], [0.7, 1.0, 0.95]),
    (&["cabbage"], [0.7, 1.05, 0.95]),
    (&["broccoli"], [0.7, 1.05, 0.95]),
    (&["cauliflower"], [0.7, 1.05, 0.95]),
    (&["celery"], [0.7, 1.05, 1.0]),
    (&["bush bean", "pole bean"], [0.5, 1.05, 0.9]),
    (&["dry bean"], [0.4, 1.15, 0.35]),
    (&["shelling pea", "snap pea"], [0.5, 1.15, 1.1]),
    (&["cucumber"], [0.6, 1.0, 0.75]),
    (&["summer squash"], [0.5, 0.95, 0.75]),
    (&["winter squash", "pumpkin"], [0.5, 1.0, 0.8]),
    (&["melon"], [0.5, 0.85, 0.6]),
    (&["sweet corn"], [0.3, 1.15, 1.05]),
    (&["sunflower"], [0.35, 1.1, 0.35]),
    (&["strawberry"], [0.4, 0.85, 0.75]),
    (&["asparagus"], [0.5, 0.95, 0.3]),
    (&["watermelon"], [0.4, 1.0, 0.75]),
    (&["hot pepper"], [0.6, 1.05, 0.9]),
    (&["dry corn", "popcorn"], [0.3, 1.2, 0.35]),
    (&["wheat"], [0.3, 1.15, 0.25]),
    (&["brussels sprouts"], [0.7, 1.05, 0.95]),
    (&["rutabaga"], [0.5, 1.1, 0.95]),
    (&["runner bean"], [0.5, 1.05, 0.9]),
    (&["broad bean", "snow pea"], [0.5, 1.15, 1.1]),
    (&["cowpea"], [0.4, 1.05, 0.35]),
    (&["edamame"], [0.4, 1.15, 0.5]),
    (&["peanut"], [0.4, 1.15, 0.6]),
    (&["chickpea"], [0.4, 1.0, 0.35]),
    (&["mint"], [0.6, 1.15, 1.1]),
    (&["raspberry"], [0.3, 1.05, 0.5]),
];

const STAGES: [Field; 3] = [
    Field {
        path: "water.initial",
        of: |crop| crop.water.map(|w| w.initial),
        tolerance: EXACT,
    },
    Field {
        path: "water.mid",
        of: |crop| crop.water.map(|w| w.mid),
        tolerance: EXACT,
    },
    Field {
        path: "water.end",
        of: |crop| crop.water.map(|w| w.end),
        tolerance: EXACT,
    },
];

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let row = |(names, printed): &(&[&str], [f64; 3])| {
        let stages = STAGES.iter().zip(printed);
        let check = |(stage, k): (&Field, &f64)| stage.check(&catalogue, names, *k, "FAO56-T12");
        stages.map(check).collect::<Vec<_>>()
    };
    ROWS.iter().flat_map(row).collect()
}
