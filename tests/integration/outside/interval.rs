//! In how many further years to expect what came about in some.

use tureen::facts::interval::further_years_95;

use super::check::{Check, EXACT};

/// SCIPY-CHI2: hits, trials; the fewest and the most further years with a p-value of 0.05 or more.
/// With those p-values: 0.0798 and 0.0852, 0.0704 twice, 0.0582 and 0.1213, 0.0673 and 0.0752,
/// 0.0624 and 0.0868, 0.0756 and 1, 0.3132 and 0.0852. One year further out: 0.0449 and 0.0195,
/// 0.0339 and none, 0.0201 and 0.0464, 0.0443 and 0.0464, none and 0.0330, 0.0384 and none, none
/// and 0.0444.
const FURTHER: [(usize, usize, usize, usize); 7] = [
    (25, 30, 19, 29),
    (15, 18, 10, 18),
    (8, 15, 3, 12),
    (37, 60, 27, 46),
    (3, 11, 0, 7),
    (30, 30, 27, 30),
    (1, 30, 0, 5),
];

pub fn checks() -> Vec<Check> {
    let range = |&(hits, trials, fewest, most): &(usize, usize, usize, usize)| {
        let found = further_years_95(hits, trials, trials);
        [("fewest", found.0, fewest), ("most", found.1, most)].map(|(end, found, expected)| {
            let what = format!("{hits} of {trials}: {end} of {trials} more");
            Check::number(&what, found as f64, expected as f64, EXACT, "SCIPY-CHI2")
        })
    };
    FURTHER.iter().flat_map(range).collect()
}
