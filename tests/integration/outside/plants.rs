//! Raising plants, flats, and what a row yields.

use tureen::garden::Method;
use tureen::growth::need;
use tureen::units::Centimetres;

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue, crop};
use crate::growth_reference::crops::ingredient;

/// MIDATL-A4 and ISU-WEEKS: least and most weeks to grow a transplant. Ours span both tables.
const WEEKS: [(&[&str], f64, f64, &str); 12] = [
    (&["tomato"], 5.0, 7.0, "MIDATL-A4, ISU-WEEKS"), // 5-6, 5-7
    (&["sweet pepper"], 6.0, 9.0, "MIDATL-A4, ISU-WEEKS"), // 7-9, 6-8
    (&["eggplant"], 6.0, 9.0, "MIDATL-A4, ISU-WEEKS"), // 6-9, 6-8
    (&["cabbage"], 5.0, 7.0, "MIDATL-A4, ISU-WEEKS"), // 6-7, 5-7
    (&["broccoli"], 4.0, 7.0, "MIDATL-A4, ISU-WEEKS"), // 4-7, 5-7
    (&["cauliflower"], 5.0, 8.0, "MIDATL-A4, ISU-WEEKS"), // 6-8, 5-7
    (&["cucumber"], 2.0, 4.0, "MIDATL-A4, ISU-WEEKS"), // 2-4, 3-4
    (&["melon"], 2.0, 4.0, "MIDATL-A4, ISU-WEEKS"),
    (&["summer squash"], 2.0, 4.0, "MIDATL-A4, ISU-WEEKS"),
    (&["winter squash"], 3.0, 4.0, "ISU-WEEKS"),
    (&["onion (from seed)"], 9.0, 12.0, "MIDATL-A4"),
    (&["lettuce (leaf)", "lettuce (head)"], 4.0, 6.0, "MIDATL-A4"),
];

const LEAST_WEEKS: Field = Field {
    path: "indoor.weeks",
    of: |crop| crop.indoor.map(|start| f64::from(start.weeks_lo)),
    tolerance: EXACT,
};

const MOST_WEEKS: Field = Field {
    path: "indoor.weeks",
    of: |crop| crop.indoor.map(|start| f64::from(start.weeks_hi)),
    tolerance: EXACT,
};

/// MIDATL-A4: cells of the flat.
const CELLS: [(&[&str], f64); 10] = [
    (&["tomato"], 72.0),
    (&["sweet pepper"], 72.0),
    (&["eggplant"], 72.0),
    (&["cabbage"], 72.0),
    (&["broccoli"], 72.0),
    (&["cauliflower"], 72.0),
    (&["cucumber"], 50.0),
    (&["melon"], 50.0),
    (&["summer squash"], 50.0),
    (&["onion (from seed)"], 288.0),
];

const CELLS_PER_FLAT: Field = Field {
    path: "indoor.cells",
    of: |crop| crop.indoor.map(|start| f64::from(start.cells_per_flat)),
    tolerance: EXACT,
};

/// KSU-MF315: expected yield in pounds per 100 feet of row; turnip and spinach are printed as
/// 50 to 100 and 40 to 50.
const POUNDS_PER_100_FEET: [(&[&str], f64); 25] = [
    (&["asparagus"], 30.0),
    (&["beet"], 150.0),
    (&["broccoli"], 100.0),
    (&["bush bean"], 120.0),
    (&["cabbage"], 150.0),
    (&["carrot"], 100.0),
    (&["cauliflower"], 100.0),
    (&["chard"], 75.0),
    (&["cucumber"], 120.0),
    (&["eggplant"], 100.0),
    (&["kale"], 100.0),
    (&["okra"], 100.0),
    (&["onion (from seed)", "onion (from sets)"], 100.0),
    (&["parsley"], 30.0),
    (&["parsnip"], 100.0),
    (&["pole bean"], 150.0),
    (&["potato"], 100.0),
    (&["shelling pea"], 20.0),
    (&["spinach"], 45.0),
    (&["sweet pepper"], 60.0),
    (&["sweet potato"], 100.0),
    (&["turnip"], 75.0),
    (&["collards", "mustard"], 100.0),
    (&["brussels sprouts"], 75.0),
    (&["celeriac"], 60.0),
];

/// Kilograms per metre of row of a pound per 100 feet.
const POUND_PER_100_FEET: f64 = 0.014_882;

/// What a plant gives, over its length of row.
const YIELD: Field = Field {
    path: "yields.expected",
    of: |crop| Some(crop.yields.expected.0 / crop.spacing.in_row.to_metres().0),
    tolerance: 0.005,
};

/// CSU-720: centimetres between plants in a row.
const IN_ROW: [(&str, f64, f64); 4] = [
    ("lettuce (leaf)", 18.0, 23.0),
    ("leek", 10.0, 15.0),
    ("carrot", 5.0, 8.0),
    ("beet", 10.0, 15.0),
];

/// A dish of 120 portions of 60 g of carrot at 1.49 kg per metre, 85 % usable: kilograms on
/// the plates, kilograms in the field, metres of row. Arithmetic on KSU-MF315.
fn carrots_for_a_dish() -> [Check; 3] {
    let catalogue = catalogue();
    let mut dish = ingredient(crop(&catalogue, "carrot").clone());
    dish.grams_per_portion = 60.0;
    let on_plates = dish.target(120).0;
    let one = need(&dish, Method::Direct, 1, 1).expected.0;
    let plants = on_plates / one;
    let in_field = plants * dish.crop.yields.expected.0;
    let Centimetres(apart) = dish.crop.spacing.in_row;
    let metres = plants * apart / 100.0;
    let source = "KSU-MF315, RULE";
    [
        Check::number("carrots on 120 plates, kg", on_plates, 7.2, EXACT, source),
        Check::number("carrots in the field, kg", in_field, 8.47, 0.005, source),
        Check::number("carrots, metres of row", metres, 5.68, 0.02, source),
    ]
}

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks = Vec::new();
    for (names, least, most, source) in WEEKS {
        checks.push(LEAST_WEEKS.check(&catalogue, names, least, source));
        checks.push(MOST_WEEKS.check(&catalogue, names, most, source));
    }
    checks.extend(
        CELLS.map(|(names, cells)| CELLS_PER_FLAT.check(&catalogue, names, cells, "MIDATL-A4")),
    );
    checks.extend(POUNDS_PER_100_FEET.map(|(names, pounds)| {
        YIELD.check(&catalogue, names, pounds * POUND_PER_100_FEET, "KSU-MF315")
    }));
    checks.extend(IN_ROW.map(|(name, least, most)| {
        let Centimetres(apart) = crop(&catalogue, name).spacing.in_row;
        let what = format!("{name}: cm in the row");
        Check::range(&what, apart, least, most, "CSU-720").of(&[name], "spacing.in_row")
    }));
    checks.extend(carrots_for_a_dish());
    checks
}
