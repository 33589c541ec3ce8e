//! Trends against SciPy 1.17.1: the score of Mann and Kendall from `kendalltau` (asymptotic
//! p-value), the slope from `theilslopes`.

use tureen::weather::trend::trend;

const RISING: [f64; 12] = [
    10.1, 9.8, 10.4, 10.0, 10.6, 10.4, 10.9, 10.3, 11.0, 10.7, 10.8, 11.2,
];
const UNSURE: [f64; 12] = [
    10.1, 9.8, 10.4, 10.0, 10.6, 10.4, 9.9, 10.3, 10.2, 10.7, 9.7, 10.5,
];

#[test]
fn a_certain_rise_has_the_slope_that_scipy_gives() {
    // SciPy: p = 0.0048, slope 0.1.
    let slope = trend(&RISING).unwrap();
    assert!((slope - 0.1).abs() < 1e-9, "{slope}");
}

#[test]
fn a_fall_is_its_mirror() {
    let falling = RISING.map(|value| -value);
    assert!((trend(&falling).unwrap() + 0.1).abs() < 1e-9);
}

#[test]
fn what_chance_can_do_is_no_trend() {
    // SciPy: p = 0.54.
    assert_eq!(trend(&UNSURE), None);
}

#[test]
fn the_edge_of_certainty_is_where_the_test_puts_it() {
    // By hand, ten values: variance 10 * 9 * 25 / 18 = 125, so a score of 22.9 or more is certain:
    // 1 + 1.96 * 11.18. All 45 pairs rising make 45; each pair that falls
    // instead costs 2.
    let score_23 = [3.0, 4.0, 5.0, 0.0, 1.0, 2.0, 7.0, 6.0, 9.0, 8.0];
    assert!(trend(&score_23).is_some(), "11 pairs fall");
    let score_21 = [3.0, 4.0, 5.0, 0.0, 2.0, 1.0, 7.0, 6.0, 9.0, 8.0];
    assert_eq!(trend(&score_21), None, "12 pairs fall");
}

#[test]
fn under_ten_years_tell_no_trend() {
    let rising: Vec<f64> = (0..9).map(f64::from).collect();
    assert_eq!(trend(&rising), None);
    assert_eq!(trend(&[]), None);
}
