//! The Wilson interval at its ends.

use tureen::report::interval::wilson_95;

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
