//! The prediction interval by hand, its mirror, and how often it holds. Its ends stand beside
//! SciPy's in `outside`; `tests/reference/backtest.py` holds those that the program prints to
//! SciPy again.

use tureen::facts::interval::further_years_95;

#[test]
fn four_years_worked_by_hand() {
    // Ready in 4 of 4. With y of 4 more: 2 * 4 * (4 - y)^2 <= 3.8415 * (4 + y) * (4 - y), so
    // 8 * (4 - y) <= 3.8415 * (4 + y), so y >= (32 - 15.366) / 11.8415 = 1.40.
    assert_eq!(further_years_95(4, 4, 4), (2, 4));
    // Ready in 2 of 4. With y = 0: 8 * 4 = 32 <= 3.8415 * 2 * 6 = 46.1. So all is possible.
    assert_eq!(further_years_95(2, 4, 4), (0, 4));
}

#[test]
fn failing_is_the_mirror_of_being_ready() {
    for (trials, further) in (0..=60)
        .map(|n| (n, n))
        .chain([(300, 30), (300, 7), (30, 100)])
    {
        for hits in 0..=trials {
            let (fewest, most) = further_years_95(hits, trials, further);
            let mirrored = further_years_95(trials - hits, trials, further);
            let ends = (further - most, further - fewest);
            assert_eq!(ends, mirrored, "{hits} of {trials}, {further}");
            let share = hits * further;
            let within = fewest * trials <= share + trials && share <= most * trials + trials;
            assert!(within, "{hits} of {trials}, {further}: {fewest} to {most}");
        }
    }
}

/// How likely it is that so many of `trials` years are ready, each with `chance`.
fn binomial(trials: usize, chance: f64) -> Vec<f64> {
    let mut shares = vec![1.0];
    for _ in 0..trials {
        let mut next = vec![0.0; shares.len() + 1];
        for (k, share) in shares.iter().enumerate() {
            next[k] += share * (1.0 - chance);
            next[k + 1] += share * chance;
        }
        shares = next;
    }
    shares
}

/// The method is an approximation. Summed over all that can be seen and all that can follow, it
/// keeps what it says to within two in a hundred at the worst chance, and on the whole: SciPy's
/// binomial distribution gives 93.5 % at the worst (18 years), and 95.0 to 97.2 % on the whole.
#[test]
fn nineteen_times_in_twenty_the_further_years_are_within() {
    for (trials, further) in [(10, 10), (15, 15), (18, 18), (30, 30), (60, 60), (300, 30)] {
        let mut kept = Vec::new();
        for percent in 2..=98 {
            let chance = f64::from(percent) / 100.0;
            let (shares, after) = (binomial(trials, chance), binomial(further, chance));
            let within = (0..=trials).map(|hits| {
                let (fewest, most) = further_years_95(hits, trials, further);
                shares[hits] * after[fewest..=most].iter().sum::<f64>()
            });
            kept.push(within.sum::<f64>());
        }
        let worst = kept.iter().copied().fold(1.0, f64::min);
        let mean = kept.iter().sum::<f64>() / kept.len() as f64;
        assert!(worst > 0.93, "{trials} years: {worst}");
        assert!((0.95..0.975).contains(&mean), "{trials} years: {mean}");
    }
}

#[test]
fn no_years_say_nothing() {
    assert_eq!(further_years_95(0, 0, 0), (0, 0));
}
