//! Days to come up by soil temperature.

use tureen::garden::Germination;
use tureen::growth::germination::days_to_emerge;
use tureen::units::Celsius;

use super::check::{Check, EXACT};
use super::ours::{catalogue, crop, fahrenheit};

/// HM1954: days at 0, 5, 10, 15, 20, 25, 30, 35 and 40 C. NG: tested, none came up; -: not
/// tested or not printed.
#[rustfmt::skip]
const HM1954: [(&str, &str); 24] = [
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
    ("lima bean",         "  -   -  NG  31  18   7   7  NG   -"),
    ("watermelon",        "  -  NG   -   -  12   5   4   3   -"),
];

/// VENDOR-EXT: a seed house's additions to the same table; weaker.
#[rustfmt::skip]
const VENDOR_EXT: [(&str, &str); 5] = [
    ("broccoli",          "  -   -  20  10   6   5   5   -   -"),
    ("chard",             "  -   -  20  15  12  10   7  NG   -"),
    ("summer squash",     "  -   -   -   -  15   6   4   3   -"),
    ("winter squash",     "  -   -   -   -  15   6   4   3   -"),
    ("pumpkin",           "  -   -   -   -  15   6   4   3   -"),
];

/// Melon, squash and pumpkin are read as ranges, because their rows begin at 20 C and their
/// published least is 15.6 C; a range gives the printed days only so nearly.
const RANGE_DAYS: f64 = 2.0;

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
            let (tolerance, path) = match crop.germination {
                Germination::Table(_) => (EXACT, "germination.table"),
                Germination::Extended { .. } => (EXACT, "germination.extended.row"),
                Germination::Range { .. } => (RANGE_DAYS, "germination.range.days"),
            };
            Check::maybe(&what, found, printed, tolerance, source).of(&[name], path)
        })
        .collect()
}

/// Least, best and greatest soil temperature, Fahrenheit, each with its source; the catalogue has
/// whole degrees or tenths. Melon is best where HM1954 prints its fewest days, at 30 C.
type Printed = [(f64, &'static str); 3];
const SQUASH: Printed = [
    (60.0, "HARRINGTON-OSU"),
    (95.0, "HARRINGTON-OSU"),
    (100.0, "HARRINGTON-OSU"),
];
const RANGES: [(&str, Printed, f64); 5] = [
    (
        "garlic",
        [
            (32.0, "UC-MG-GN154"),
            (65.0, "UC-MG-GN154"),
            (95.0, "UC-MG-GN154"),
        ],
        0.5,
    ),
    (
        "melon",
        [
            (60.0, "HARRINGTON-OSU"),
            (86.0, "HM1954"),
            (100.0, "HARRINGTON-OSU"),
        ],
        0.05,
    ),
    ("summer squash", SQUASH, 0.05),
    ("winter squash", SQUASH, 0.05),
    ("pumpkin", SQUASH, 0.05),
];

/// The temperatures of a crop that has a range.
fn range((name, printed, tolerance): (&str, Printed, f64)) -> [Check; 3] {
    let catalogue = catalogue();
    let Germination::Range {
        min, optimum, max, ..
    } = crop(&catalogue, name).germination
    else {
        panic!("{name} has a range");
    };
    let [least, best, most] = printed;
    [
        ("germination.range.min", min, least),
        ("germination.range.optimum", optimum, best),
        ("germination.range.max", max, most),
    ]
    .map(|(path, found, (printed, source))| {
        let printed = fahrenheit(printed).0;
        Check::number(path, found.0, printed, tolerance, source).of(&[name], path)
    })
}

/// Least soil temperature, 40 F, where the coldest cells of a row are blank.
const LEAST: [(&str, &str); 5] = [
    ("cabbage", "HARRINGTON-OSU"),
    ("cauliflower", "HARRINGTON-OSU"),
    ("parsley", "HARRINGTON-OSU"),
    ("chard", "HARRINGTON-OSU"),
    ("broccoli", "UC-MG-GN154"),
];

fn least((name, source): (&str, &'static str)) -> Check {
    let Germination::Extended { least, .. } = crop(&catalogue(), name).germination else {
        panic!("{name} has a line below its row");
    };
    Check::number("least soil", least.0, fahrenheit(40.0).0, 0.05, source)
        .of(&[name], "germination.extended.least")
}

/// UGA-SOILT: the soil that growers wait for, 60 F; the catalogue has whole degrees.
fn ground() -> Vec<Check> {
    let catalogue = catalogue();
    let sown = ["cucumber", "bush bean", "pole bean", "dry bean"];
    let sown = sown.map(|name| (name, "ground.sow", crop(&catalogue, name).ground.sow));
    let tomato = crop(&catalogue, "tomato").ground.set_out;
    let printed = Some(fahrenheit(60.0).0);
    let check = |(name, path, found): (&str, &'static str, Option<Celsius>)| {
        let found = found.map(|soil| soil.0);
        Check::maybe("soil that is waited for", found, printed, 0.5, "UGA-SOILT").of(&[name], path)
    };
    let all = sown
        .into_iter()
        .chain([("tomato", "ground.set_out", tomato)]);
    all.map(check).collect()
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
    checks.extend(RANGES.into_iter().flat_map(range));
    checks.extend(LEAST.map(least));
    checks.extend(ground());
    checks
}
