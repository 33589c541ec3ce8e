//! How far a share seen in a few years can be trusted: the Wilson score interval.

/// The normal deviate that leaves 2.5 % on either side.
const Z_95: f64 = 1.959_963_984_540_054;

/// The 95 % interval for the true share behind `hits` of `trials`, as (low, high) in 0 to 1;
/// (0, 1) when there are no trials.
///
/// Source: E. B. Wilson, "Probable inference, the law of succession, and statistical
/// inference", Journal of the American Statistical Association 22 (1927), 209-212; the form
/// without continuity correction. It takes the trials as independent, which weather years
/// nearly are.
#[must_use]
pub fn wilson_95(hits: usize, trials: usize) -> (f64, f64) {
    if trials == 0 {
        return (0.0, 1.0);
    }
    let n = trials as f64;
    let share = hits.min(trials) as f64 / n;
    let z2 = Z_95 * Z_95;
    let centre = share + z2 / (2.0 * n);
    let reach = Z_95 * (share * (1.0 - share) / n + z2 / (4.0 * n * n)).sqrt();
    let scale = 1.0 + z2 / n;
    (
        ((centre - reach) / scale).clamp(0.0, 1.0),
        ((centre + reach) / scale).clamp(0.0, 1.0),
    )
}
