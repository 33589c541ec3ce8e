//! Seeds that give the plants with a chance of 90 %, against the binomial distribution.

use proptest::prelude::*;
use tureen::growth::amount::seeds_for;
use tureen::units::Share;

#[test]
fn even_seed_and_an_even_chance() {
    // Of 2k-1 tosses of a coin, k or more are heads as often as not: by symmetry.
    for plants in [1, 2, 10, 500, 3000] {
        assert_eq!(seeds_for(plants, Share(0.5), Share(0.5)), 2 * plants - 1);
    }
}

#[test]
fn sure_seed_and_no_plants() {
    assert_eq!(seeds_for(0, Share(0.5), Share(0.9)), 0);
    assert_eq!(seeds_for(37, Share(1.0), Share(0.9)), 37);
    // A chance of nothing is held to 1 %, so that an answer exists.
    assert_eq!(
        seeds_for(1, Share(0.0), Share(0.9)),
        seeds_for(1, Share(0.01), Share(0.9))
    );
}

/// The chance of `plants` or more of `seeds`, by adding up the distribution seed by seed.
fn chance_of(plants: u32, seeds: u32, grows: f64) -> f64 {
    let mut grown = vec![1.0];
    for _ in 0..seeds {
        let mut next = vec![0.0; grown.len() + 1];
        for (k, p) in grown.iter().enumerate() {
            next[k] += p * (1.0 - grows);
            next[k + 1] += p * grows;
        }
        grown = next;
    }
    grown.iter().skip(plants as usize).sum()
}

proptest! {
    #[test]
    fn seeds_are_enough_and_none_too_many(
        plants in 1..60u32,
        grows in 0.2..0.99f64,
        sure in 0.3..0.99f64,
    ) {
        let seeds = seeds_for(plants, Share(grows), Share(sure));
        prop_assert!(chance_of(plants, seeds, grows) >= sure - 1e-9);
        prop_assert!(chance_of(plants, seeds - 1, grows) < sure + 1e-9);
    }
}
