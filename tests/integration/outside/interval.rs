//! The interval of a share seen in some years.

use tureen::report::interval::wilson_95;

use super::check::Check;

/// NEWCOMBE1998, table I: hits, trials, both ends of the interval.
const WILSON: [(usize, usize, f64, f64); 4] = [
    (81, 263, 0.2553, 0.3662),
    (15, 148, 0.0624, 0.1605),
    (0, 20, 0.0000, 0.1611),
    (1, 29, 0.0061, 0.1718),
];

pub fn checks() -> Vec<Check> {
    let interval = |&(hits, trials, low, high): &(usize, usize, f64, f64)| {
        let found = wilson_95(hits, trials);
        [("low", found.0, low), ("high", found.1, high)].map(|(end, found, expected)| {
            let what = format!("{hits} of {trials}: {end} end");
            Check::number(&what, found, expected, 5e-5, "NEWCOMBE1998")
        })
    };
    WILSON.iter().flat_map(interval).collect()
}
