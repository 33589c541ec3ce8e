//! Degree-days against the area under the sine itself, and where both methods part.

use proptest::prelude::*;
use tureen::garden::DegreeDayMethod::{Average, Sine};
use tureen::growth::degree_days::degree_days;
use tureen::units::Celsius;

#[test]
fn the_average_counts_a_cold_night_as_the_base() {
    let night_of_5 = |method| degree_days(method, Celsius(10.0), None, Celsius(5.0), Celsius(20.0));
    assert!((night_of_5(Average).0 - 5.0).abs() < 1e-9); // (10 + 20)/2 - 10
    assert!(night_of_5(Sine).0 < 4.0);
}

proptest! {
    /// The closed form is the area under the sine, summed in many thin slices.
    #[test]
    fn single_sine_is_an_area(
        tmin in -10.0..30.0f64,
        range in 0.5..20.0f64,
        base in -2.0..15.0f64,
        above in 5.0..25.0f64,
    ) {
        let slices = 20_000;
        let upper = base + above;
        let area: f64 = (0..slices)
            .map(|k| {
                let angle = std::f64::consts::TAU * (f64::from(k) + 0.5) / f64::from(slices);
                let t = tmin + range / 2.0 * (1.0 + angle.sin());
                (t.min(upper) - base).max(0.0)
            })
            .sum::<f64>() / f64::from(slices);
        let found = degree_days(
            Sine,
            Celsius(base),
            Some(Celsius(upper)),
            Celsius(tmin),
            Celsius(tmin + range),
        );
        prop_assert!((found.0 - area).abs() <= 1e-4, "{} is not {area}", found.0);
    }
}
