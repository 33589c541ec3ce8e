//! Days to come up by soil temperature.

use tureen::growth::germination::days_to_emerge;
use tureen::units::Celsius;

use super::check::{Check, EXACT};
use super::ours::{catalogue, crop};

/// HM1954: days at 0, 5, 10, 15, 20, 25, 30, 35 and 40 C. NG: tested, none came up; -: not
/// tested or not printed.
#[rustfmt::skip]
const HM1954: [(&str, &str); 22] = [
    ("asparagus",         " NG  NG  53  24  15  10  12  20  28"),
    ("bush bean",         " NG  NG  NG  16  11   8   6   6  NG"),
    ("beet",              "  -  42  17  10   6   5   5   5   -"),
    ("cabbage",           "  -   -  15   9   6   5   4   -   -"),
    ("carrot",            " NG  51  17  10   7   6   6   9  NG"),
    ("cauliflower",       "  -   -  20  10   6   5   5   -   -"),
    ("celery",            " NG  41  16  12   7  NG  NG  NG   -"),
    ("sweet corn",        " NG  NG  22  12   7   4   4   3  NG"),
    ("cucumber",          " NG  NG  NG  13   6   4   3   3   -"),
    ("eggplant",          "  -   -   -   -  13   8   5   -   -"),
    ("lettuce (leaf)",    " 49  15   7   4   3   2   3  NG  NG"),
    ("melon",             "  -   -   -   -   8   4   3   -   -"),
    ("okra",              " NG  NG  NG  27  17  13   7   6   7"),
    ("onion (from seed)", "136  31  13   7   5   4   4  13  NG"),
    ("parsley",           "  -   -  29  17  14  13  12   -   -"),
    ("parsnip",           "172  57  27  19  14  15  32  NG  NG"),
    ("shelling pea",      "  -  36  14   9   8   6   6   -   -"),
    ("sweet pepper",      " NG  NG  NG  25  13   8   8   9  NG"),
    ("radish",            " NG  29  11   6   4   4   3   -   -"),
    ("spinach",           " 63  23  12   7   6   5   6  NG  NG"),
    ("tomato",            " NG  NG  43  14   8   6   6   9  NG"),
    ("turnip",            " NG  NG   5   3   2   1   1   1   3"),
];

/// VENDOR-EXT: a seed house's additions to the same table; weaker.
#[rustfmt::skip]
const VENDOR_EXT: [(&str, &str); 4] = [
    ("broccoli",          "  -   -  20  10   6   5   5   -   -"),
    ("chard",             "  -   -  20  15  12  10   7  NG   -"),
    ("winter squash",     "  -   -   -   -  15   6   4   3   -"),
    ("pumpkin",           "  -   -   -   -  15   6   4   3   -"),
];

/// The printed cells of a row.
fn row(name: &str, cells: &str, source: &'static str) -> Vec<Check> {
    let catalogue = catalogue();
    let crop = crop(&catalogue, name);
    let columns = (0..)
        .step_by(5)
        .map(f64::from)
        .zip(cells.split_whitespace());
    columns
        .filter(|(_, cell)| *cell != "-")
        .map(|(at, cell)| {
            let printed = (cell != "NG").then(|| cell.parse().expect("days"));
            let found = days_to_emerge(&crop.germination, Celsius(at));
            let what = format!("{name}: days to come up at {at} C");
            Check::maybe(&what, found, printed, EXACT, source).of(&[name], "germination.table")
        })
        .collect()
}

/// A figure of garlic, UC-MG-GN154: 32 to 95 F, best at 65 F; the catalogue has whole degrees.
fn garlic() -> [Check; 3] {
    let catalogue = catalogue();
    let germination = &crop(&catalogue, "garlic").germination;
    let tureen::garden::Germination::Range {
        min, optimum, max, ..
    } = germination
    else {
        panic!("garlic has a range");
    };
    [
        ("germination.range.min", min, 32.0),
        ("germination.range.optimum", optimum, 65.0),
        ("germination.range.max", max, 95.0),
    ]
    .map(|(path, found, printed)| {
        let printed = (printed - 32.0) / 1.8;
        Check::number(path, found.0, printed, 0.5, "UC-MG-GN154").of(&["garlic"], path)
    })
}

pub fn checks() -> Vec<Check> {
    let catalogue = catalogue();
    let mut checks: Vec<Check> = HM1954
        .iter()
        .flat_map(|(name, cells)| row(name, cells, "HM1954"))
        .collect();
    for (name, cells) in VENDOR_EXT {
        checks.extend(row(name, cells, "VENDOR-EXT"));
    }
    // Half way between 13 days at 20 C and 8 at 25 C, on a straight line.
    let pepper = days_to_emerge(&crop(&catalogue, "sweet pepper").germination, Celsius(22.5));
    let what = "sweet pepper: days to come up at 22.5 C";
    checks.push(Check::maybe(what, pepper, Some(10.5), EXACT, "HM1954"));
    checks.extend(garlic());
    checks
}
