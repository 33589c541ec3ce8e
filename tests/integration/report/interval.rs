//! The Wilson interval against the worked examples of R. G. Newcombe, "Two-sided confidence
//! intervals for the single proportion: comparison of seven methods", Statistics in Medicine
//! 17 (1998), 857-872, table I, method 3 (score without continuity correction). The table's
//! figures are quoted from memory.

use tureen::report::interval::wilson_95;

#[test]
fn published_intervals_come_out_to_four_digits() {
    let published = [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0000, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ];
    for (hits, trials, low, high) in published {
        let got = wilson_95(hits, trials);
        assert!((got.0 - low).abs() < 0.00005, "{hits}/{trials}: {got:?}");
        assert!((got.1 - high).abs() < 0.00005, "{hits}/{trials}: {got:?}");
    }
}

#[test]
fn all_years_ready_is_the_mirror_of_none() {
    let (none, all) = (wilson_95(0, 30), wilson_95(30, 30));
    assert!((none.0 - (1.0 - all.1)).abs() < 1e-12);
    assert!((none.1 - (1.0 - all.0)).abs() < 1e-12);
    assert!(all.0 < 0.9, "thirty good years do not promise the next one");
}

#[test]
fn no_years_say_nothing() {
    assert_eq!(wilson_95(0, 0), (0.0, 1.0));
}
