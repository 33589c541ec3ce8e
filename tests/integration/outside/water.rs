//! Water: what grass loses, the coefficient of a day, stage lengths, litres.

use tureen::garden::{Crop, Stages, WaterUse};
use tureen::growth::water::{
    counted_rain, crop_coefficient, equivalent_evaporation, reference_evapotranspiration, stages,
    to_give, water_use,
};
use tureen::units::{Celsius, Latitude, Metres, Millimetres, Radiation};

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue, crop};

/// FAO56-T11: rows by the crops that take them; the four stages in days, and the printed total.
const ROWS: [(&[&str], [f64; 4], f64); 25] = [
    (&["tomato"], [30.0, 40.0, 45.0, 30.0], 145.0),
    (&["sweet pepper"], [30.0, 35.0, 40.0, 20.0], 125.0),
    (&["eggplant"], [30.0, 45.0, 40.0, 25.0], 140.0),
    (&["cucumber"], [20.0, 30.0, 40.0, 15.0], 105.0),
    (&["summer squash"], [20.0, 30.0, 25.0, 15.0], 90.0),
    (
        &["winter squash", "pumpkin"],
        [25.0, 35.0, 35.0, 25.0],
        120.0,
    ),
    (&["melon"], [25.0, 35.0, 40.0, 20.0], 120.0),
    (&["sweet corn"], [20.0, 25.0, 25.0, 10.0], 80.0),
    (&["broccoli"], [35.0, 45.0, 40.0, 15.0], 135.0),
    (&["cabbage"], [40.0, 60.0, 50.0, 15.0], 165.0),
    (&["cauliflower"], [35.0, 50.0, 40.0, 15.0], 140.0),
    (&["celery"], [25.0, 40.0, 45.0, 15.0], 125.0),
    (
        &["lettuce (leaf)", "lettuce (head)"],
        [20.0, 30.0, 15.0, 10.0],
        75.0,
    ),
    (&["spinach"], [20.0, 20.0, 20.0, 5.0], 65.0),
    (
        &["onion (from seed)", "onion (from sets)"],
        [15.0, 25.0, 70.0, 40.0],
        150.0,
    ),
    (&["scallion"], [25.0, 30.0, 10.0, 5.0], 70.0),
    (&["potato"], [25.0, 30.0, 45.0, 30.0], 130.0),
    (&["carrot"], [30.0, 40.0, 60.0, 20.0], 150.0),
    (&["beet"], [15.0, 25.0, 20.0, 10.0], 70.0),
    (&["radish"], [5.0, 10.0, 15.0, 5.0], 35.0),
    (&["sweet potato"], [20.0, 30.0, 60.0, 40.0], 150.0),
    (&["bush bean", "pole bean"], [20.0, 30.0, 30.0, 10.0], 90.0),
    (&["dry bean"], [20.0, 30.0, 40.0, 20.0], 110.0),
    (
        &["shelling pea", "snap pea"],
        [15.0, 25.0, 35.0, 15.0],
        90.0,
    ),
    (&["sunflower"], [25.0, 35.0, 45.0, 25.0], 130.0),
];

const STAGES: [Field; 4] = [
    Field {
        path: "stages.initial",
        of: |crop| crop.stages.map(|s| s.initial),
        tolerance: EXACT,
    },
    Field {
        path: "stages.development",
        of: |crop| crop.stages.map(|s| s.development),
        tolerance: EXACT,
    },
    Field {
        path: "stages.mid",
        of: |crop| crop.stages.map(|s| s.mid),
        tolerance: EXACT,
    },
    Field {
        path: "stages.late",
        of: |crop| crop.stages.map(|s| s.late),
        tolerance: EXACT,
    },
];

/// All four stages of our catalogue together.
const TOTAL: Field = Field {
    path: "stages",
    of: |crop: &Crop| {
        crop.stages
            .map(|s| s.initial + s.development + s.mid + s.late)
    },
    tolerance: EXACT,
};

/// Example 28: dry bean, with the coefficients of that example; day of the season, coefficient.
const DRY_BEAN: [(f64, f64); 4] = [(20.0, 0.15), (40.0, 0.774), (70.0, 1.19), (95.0, 0.56)];

fn stage_lengths() -> Vec<Check> {
    let catalogue = catalogue();
    let row = |(names, printed, total): &(&[&str], [f64; 4], f64)| {
        let parts = STAGES.iter().zip(printed);
        let total = TOTAL.check(&catalogue, names, *total, "FAO56-T11");
        parts
            .map(|(stage, days)| stage.check(&catalogue, names, *days, "FAO56-T11"))
            .chain([total])
            .collect::<Vec<_>>()
    };
    ROWS.iter().flat_map(row).collect()
}

/// Kale has no row: small vegetables of table 12, crucifers in April of table 11.
fn without_a_row() -> [Check; 7] {
    let catalogue = catalogue();
    let kale = crop(&catalogue, "kale");
    let (water, days) = (water_use(kale), stages(kale, 80.0));
    let use_of = |what, found, printed| Check::number(what, found, printed, EXACT, "FAO56-T12");
    let stage = |what, found, printed| Check::number(what, found, printed, EXACT, "FAO56-T11");
    [
        use_of("small vegetables: initial", water.initial, 0.7),
        use_of("small vegetables: mid", water.mid, 1.05),
        use_of("small vegetables: end", water.end, 0.95),
        stage("crucifers: initial", days.initial, 20.0),
        stage("crucifers: development", days.development, 30.0),
        stage("crucifers: mid", days.mid, 20.0),
        stage("crucifers: late", days.late, 10.0),
    ]
}

fn reference(latitude: f64, day: u32, tmin: f64, tmax: f64) -> f64 {
    reference_evapotranspiration(Latitude(latitude), day, Celsius(tmin), Celsius(tmax)).0
}

/// Equations 20 and 52. Uccle, 50 degrees 48 minutes north, 6 July (the day of example 18);
/// Lyon, 45 degrees 43 minutes north, in the middle of July (example 20).
fn losses() -> [Check; 4] {
    let depth = |radiation: f64| equivalent_evaporation(Radiation(radiation)).0;
    let from_memory = |what, found, expected, tolerance| {
        Check::number(what, found, expected, tolerance, "FAO56-WATER")
    };
    let (uccle, lyon) = (
        reference(50.8, 187, 12.3, 21.5),
        reference(45.72, 196, 14.8, 26.6),
    );
    [
        from_memory("1 MJ/m2 as water", depth(1.0), 0.408, EXACT),
        from_memory("example 8: radiation as water", depth(32.2), 13.1, 0.05),
        from_memory("day of example 18 by Hargreaves", uccle, 4.06, 0.01),
        from_memory("example 20 by Hargreaves", lyon, 5.0, 0.05),
    ]
}

fn coefficients() -> Vec<Check> {
    let water = WaterUse {
        initial: 0.15,
        mid: 1.19,
        end: 0.35,
    };
    let stages = Stages {
        initial: 25.0,
        development: 25.0,
        mid: 30.0,
        late: 20.0,
    };
    let day = |(day, expected): (f64, f64)| {
        let what = format!("example 28: coefficient on day {day}");
        let found = crop_coefficient(&water, &stages, day);
        Check::number(&what, found, expected, 5e-4, "FAO56-WATER")
    };
    DRY_BEAN.into_iter().map(day).collect()
}

/// Seven days of 5 mm at a coefficient of 1.15, 12 mm of rain, a bed of 1.2 by 3 m. And
/// chapter 8: under a fifth of the reference, rain dries off.
fn litres() -> [Check; 4] {
    let week = Millimetres(5.0 * 1.15 * 7.0);
    let net = to_give(week, Millimetres(12.0));
    let bed = Metres(3.0).by(Metres(1.2));
    let rain = |rain: f64| counted_rain(Millimetres(rain), Millimetres(5.0)).0;
    let check = |what, found, expected, tolerance| {
        Check::number(what, found, expected, tolerance, "FAO56-WATER")
    };
    [
        check("a week's need less rain, mm", net.0, 28.25, 0.005),
        check("the same on the bed, litres", net.on(bed).0, 101.7, 0.05),
        check("a shower of 0.99 of 1 mm", rain(0.99), 0.0, EXACT),
        check("a rain of 1.01 of 1 mm", rain(1.01), 1.01, EXACT),
    ]
}

pub fn checks() -> Vec<Check> {
    let tables = stage_lengths().into_iter().chain(without_a_row());
    let examples = losses().into_iter().chain(coefficients());
    tables.chain(examples).chain(litres()).collect()
}
