//! Seeds that give the plants with a chance of 90 %, against the binomial distribution.

use proptest::prelude::*;
use tureen::growth::amount::seeds_for;
use tureen::units::Share;

/// Plants wanted, chance of each seed, least seeds for 90 %. Made with SciPy 1.17.1 by
/// bisection on `binom.sf(plants - 1, seeds, chance) >= 0.9`.
const SCIPY: [(u32, f64, u32); 45] = [
    (1, 0.30, 7),
    (1, 0.4675, 4),
    (1, 0.68, 3),
    (1, 0.765, 2),
    (1, 0.95, 1),
    (2, 0.30, 12),
    (2, 0.4675, 7),
    (2, 0.68, 4),
    (2, 0.765, 4),
    (2, 0.95, 2),
    (5, 0.30, 25),
    (5, 0.4675, 15),
    (5, 0.68, 10),
    (5, 0.765, 8),
    (5, 0.95, 6),
    (24, 0.30, 98),
    (24, 0.4675, 61),
    (24, 0.68, 41),
    (24, 0.765, 35),
    (24, 0.95, 27),
    (72, 0.30, 271),
    (72, 0.4675, 171),
    (72, 0.68, 115),
    (72, 0.765, 101),
    (72, 0.95, 78),
    (126, 0.30, 461),
    (126, 0.4675, 292),
    (126, 0.68, 197),
    (126, 0.765, 174),
    (126, 0.95, 136),
    (456, 0.30, 1597),
    (456, 0.4675, 1018),
    (456, 0.68, 694),
    (456, 0.765, 614),
    (456, 0.95, 487),
    (1000, 0.30, 3447),
    (1000, 0.4675, 2203),
    (1000, 0.68, 1505),
    (1000, 0.765, 1333),
    (1000, 0.95, 1062),
    (4000, 0.30, 13560),
    (4000, 0.4675, 8683),
    (4000, 0.68, 5950),
    (4000, 0.765, 5280),
    (4000, 0.95, 4230),
];

#[test]
fn seeds_agree_with_an_outside_binomial() {
    for (plants, chance, seeds) in SCIPY {
        let found = seeds_for(plants, Share(chance), Share(0.9));
        assert_eq!(found, seeds, "{plants} plants at {chance}");
    }
}

#[test]
fn one_plant_needs_one_success() {
    // No seed of k grows with the chance (1-p)^k; at p = 0.75 that is 25, 6.25, 1.56 %,
    // at p = 0.55 it is 45, 20.25, 9.11 %.
    for chance in [0.75, 0.55] {
        for k in 1..=6 {
            let sure = 1.0 - f64::powi(1.0 - chance, k);
            let k = k as u32;
            assert_eq!(seeds_for(1, Share(chance), Share(sure)), k);
            assert_eq!(seeds_for(1, Share(chance), Share(sure + 1e-6)), k + 1);
        }
    }
}

#[test]
fn even_seed_and_an_even_chance() {
    // Of 2k-1 tosses of a coin, k or more are heads as often as not: by symmetry.
    for plants in [1, 2, 10, 500, 3000] {
        assert_eq!(seeds_for(plants, Share(0.5), Share(0.5)), 2 * plants - 1);
    }
}

#[test]
fn an_even_chance_takes_what_the_rule_of_thumb_gives() {
    // Rule: seeds = plants / (germination x survival), rounded up, for 72 plants. It is
    // right on average; the median of a binomial is within one of its mean.
    for (germination, survival, seeds) in [
        (0.75, 1.0, 96),
        (0.55, 1.0, 131),
        (0.60, 1.0, 120),
        (0.80, 1.0, 90),
        (0.75, 0.9, 107),
        (0.55, 0.9, 146),
        (0.60, 0.9, 134),
        (0.80, 0.9, 100),
    ] {
        let found = seeds_for(72, Share(germination * survival), Share(0.5));
        assert!(
            found <= seeds && seeds <= found + 1,
            "{germination} {survival}: {found}"
        );
        assert!(seeds_for(72, Share(germination * survival), Share(0.9)) > seeds);
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
