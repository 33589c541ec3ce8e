//! Warmth that crops need: until they are ripe, for their seed, and the cold that they bear.

use super::check::{Check, EXACT};
use super::ours::{Field, catalogue, fahrenheit};

/// OSU-DD and UD-GDD: degree-days Fahrenheit from sowing to harvest; the catalogue has whole
/// degree-days Celsius.
const SUMS: [(&[&str], f64, &str); 2] = [
    (&["sweet corn"], 1539.0, "OSU-DD"),
    (&["shelling pea"], 1250.0, "UD-GDD"),
];

const SUM: Field = Field {
    path: "ripening.thermal_from_sowing",
    of: |crop| crop.ripening.thermal_from_sowing.map(|sum| sum.0),
    tolerance: 0.5,
};

/// Base temperatures, Fahrenheit; the catalogue has tenths of a degree Celsius.
const BASES: [(&[&str], f64, &str); 6] = [
    (&["sweet corn"], 50.0, "OSU-DD, PEET-APP2"),
    (&["bush bean", "pole bean", "dry bean"], 50.0, "PEET-APP2"),
    (&["shelling pea"], 40.0, "PEET-APP2, UD-GDD"),
    (&["snap pea"], 40.0, "PEET-APP2"),
    (&["cabbage", "turnip"], 40.0, "PEET-APP2"),
    (&["cucumber"], 60.0, "PERRY-WEHNER"),
];

const BASE: Field = Field {
    path: "ripening.base",
    of: |crop| Some(crop.ripening.base.0),
    tolerance: 0.05,
};

/// Upper limits, Fahrenheit.
const UPPERS: [(&[&str], f64, &str); 3] = [
    (&["sweet corn"], 86.0, "OSU-DD, PEET-APP2"),
    (&["bush bean", "pole bean", "dry bean"], 86.0, "PEET-APP2"),
    (&["cucumber"], 90.0, "PERRY-WEHNER"),
];

const UPPER: Field = Field {
    path: "ripening.upper",
    of: |crop| crop.ripening.upper.map(|t| t.0),
    tolerance: 0.05,
};

/// MH1997-MONTHS: the highest monthly means that vegetables bear, Fahrenheit. Where ours are higher, they are from
/// memory and not credited to it.
const MONTHS: [(&[&str], f64, &str); 5] = [
    (
        &[
            "broad bean",
            "broccoli",
            "kohlrabi",
            "radish",
            "spinach",
            "turnip",
            "cauliflower",
            "celery",
            "napa cabbage",
            "endive",
            "fennel",
            "lettuce (leaf)",
            "lettuce (head)",
            "mustard",
            "shelling pea",
            "snap pea",
            "snow pea",
        ],
        75.0,
        "MH1997-MONTHS",
    ),
    (
        &[
            "chives",
            "garlic",
            "leek",
            "onion (from seed)",
            "onion (from sets)",
            "shallot",
        ],
        85.0,
        "MH1997-MONTHS",
    ),
    (
        &[
            "cucumber",
            "melon",
            "pumpkin",
            "summer squash",
            "winter squash",
        ],
        90.0,
        "MH1997-MONTHS",
    ),
    (&["sweet corn", "cowpea"], 95.0, "MH1997-MONTHS"),
    (
        &[
            "eggplant",
            "hot pepper",
            "okra",
            "sweet potato",
            "watermelon",
        ],
        95.0,
        "MH1997-MONTHS",
    ),
];

const SPOILS: Field = Field {
    path: "spoils.above",
    of: |crop| crop.spoils.map(|spoils| spoils.above.0),
    tolerance: 0.05,
};

/// UMD-BLOSSOM: nights and noons that keep tomatoes from setting, Fahrenheit.
const NIGHTS: [(&[&str], f64, &str); 1] = [(&["tomato"], 75.0, "UMD-BLOSSOM")];
const NOONS: [(&[&str], f64, &str); 1] = [(&["tomato"], 95.0, "UMD-BLOSSOM")];

const HOT_NIGHTS: Field = Field {
    path: "no_fruit.nights",
    of: |crop| crop.no_fruit.map(|limit| limit.nights.0),
    tolerance: 0.05,
};

const HOT_NOONS: Field = Field {
    path: "no_fruit.noons",
    of: |crop| crop.no_fruit.map(|limit| limit.noons.0),
    tolerance: 0.05,
};

/// The lower end of the best range of soil temperature, Fahrenheit: in a colder room the flats
/// stand on the mat.
const BEST_FROM: [(&[&str], f64, &str); 15] = [
    (&["tomato"], 60.0, "HARRINGTON-OSU"),
    (&["sweet pepper"], 65.0, "HARRINGTON-OSU"),
    (&["eggplant"], 75.0, "HARRINGTON-OSU"),
    (&["cucumber"], 60.0, "HARRINGTON-OSU"),
    (&["summer squash", "winter squash"], 70.0, "HARRINGTON-OSU"),
    (&["pumpkin"], 70.0, "HARRINGTON-OSU"),
    (&["melon"], 75.0, "HARRINGTON-OSU"),
    (&["parsley"], 50.0, "HARRINGTON-OSU"),
    (
        &["lettuce (leaf)", "lettuce (head)"],
        40.0,
        "HARRINGTON-OSU, UC-MG-GN154",
    ),
    (&["chard"], 50.0, "HARRINGTON-OSU"),
    (&["cabbage", "cauliflower"], 45.0, "HARRINGTON-OSU"),
    (&["onion (from seed)", "scallion"], 50.0, "HARRINGTON-OSU"),
    (&["broccoli"], 60.0, "UC-MG-GN154"),
    (&["leek"], 65.0, "UC-MG-GN154"),
    (&["okra"], 85.0, "UC-MG-GN154"),
];

const WARM_BELOW: Field = Field {
    path: "indoor.warm_below",
    of: |crop| crop.indoor.map(|start| start.warm_below.0),
    tolerance: 0.06,
};

/// Degrees Celsius that a hardened plant's leaves bear.
const BEARS: [(&[&str], f64, &str); 18] = [
    (&["tomato"], 0.0, "FROST-TAB2"),
    (&["cucumber"], 0.0, "FROST-TAB2"),
    (&["melon"], 0.0, "FROST-TAB2"),
    (&["sweet corn"], 0.0, "FROST-TAB2"),
    (&["bush bean", "pole bean", "dry bean"], 0.0, "FROST-TAB2"),
    (&["potato"], -1.0, "FROST-TAB2"),
    (&["cauliflower"], -2.0, "FROST-TAB2"),
    (&["asparagus"], -2.0, "FROST-TAB2"),
    (&["broccoli"], -3.0, "FROST-TAB2"),
    (&["lettuce (leaf)", "lettuce (head)"], -3.0, "FROST-TAB2"),
    (&["shelling pea", "snap pea"], -4.0, "FROST-TAB2"),
    (&["cabbage"], -6.0, "FROST-TAB2"),
    (
        &["onion (from seed)", "onion (from sets)"],
        -6.0,
        "FROST-TAB2",
    ),
    (&["carrot"], -6.0, "FROST-TAB2, TAMU-COLD"),
    (&["parsley"], -6.0, "TAMU-COLD"),
    (&["parsnip"], -7.0, "FROST-TAB2"),
    (&["kale"], -7.0, "TAMU-COLD, FROST-TAB2"),
    (&["spinach"], -8.0, "FROST-TAB2"),
];

const FROST_LIMIT: Field = Field {
    path: "frost.limit",
    of: |crop| Some(crop.frost_limit.0),
    tolerance: EXACT,
};

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let celsius = |field: &'static Field| {
        let catalogue = &catalogue;
        move |(names, f, source): &(&[&str], f64, &'static str)| {
            field.check(catalogue, names, fahrenheit(*f).0, source)
        }
    };
    let sums = SUMS.map(|(names, f, source)| SUM.check(&catalogue, names, f / 1.8, source));
    let bears =
        BEARS.map(|(names, limit, source)| FROST_LIMIT.check(&catalogue, names, limit, source));
    sums.into_iter()
        .chain(BASES.iter().map(celsius(&BASE)))
        .chain(UPPERS.iter().map(celsius(&UPPER)))
        .chain(MONTHS.iter().map(celsius(&SPOILS)))
        .chain(NIGHTS.iter().map(celsius(&HOT_NIGHTS)))
        .chain(NOONS.iter().map(celsius(&HOT_NOONS)))
        .chain(BEST_FROM.iter().map(celsius(&WARM_BELOW)))
        .chain(bears)
        .collect()
}
