//! Whether it grew warmer or cooler over a row of years.

/// The normal deviate that leaves 2.5 % on either side.
const Z_95: f64 = 1.959_963_984_540_054;

/// Fewest years that are looked at: the test's normal approximation holds from ten on.
const FEWEST: usize = 10;

/// The change per year of values, one a year in order: Sen's slope; `None` where a trend is not
/// certain by the two-sided Mann-Kendall test at 5 %, or where there are under ten values.
///
/// Sources: H. B. Mann, "Nonparametric tests against trend", Econometrica 13 (1945), 245-259;
/// M. G. Kendall, "Rank Correlation Methods" (1975), with his variance for ties and the step of
/// one towards none; P. K. Sen, "Estimates of the regression coefficient based on Kendall's tau",
/// Journal of the American Statistical Association 63 (1968), 1379-1389. All from memory.
#[must_use]
pub fn trend(values: &[f64]) -> Option<f64> {
    let n = values.len();
    if n < FEWEST {
        return None;
    }
    let mut slopes = Vec::new();
    let mut score = 0.0;
    for (i, a) in values.iter().enumerate() {
        for (j, b) in values.iter().enumerate().skip(i + 1) {
            let rise = b - a;
            slopes.push(rise / (j - i) as f64);
            score += if rise == 0.0 { 0.0 } else { rise.signum() };
        }
    }
    let certain = score.abs() - 1.0 > Z_95 * variance(values).sqrt();
    certain.then(|| median(slopes))
}

/// The variance of the Mann-Kendall score where there is no trend.
fn variance(values: &[f64]) -> f64 {
    let part = |n: f64| n * (n - 1.0) * (2.0 * n + 5.0);
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let ties: f64 = sorted
        .chunk_by(|a, b| a == b)
        .map(|alike| part(alike.len() as f64))
        .sum();
    (part(values.len() as f64) - ties) / 18.0
}

/// The middle value, or the mean of the two in the middle.
fn median(mut values: Vec<f64>) -> f64 {
    values.sort_by(f64::total_cmp);
    let half = values.len() / 2;
    let at = |i: usize| values.get(i).copied().unwrap_or(0.0);
    if values.len() % 2 == 1 {
        at(half)
    } else {
        (at(half.saturating_sub(1)) + at(half)) / 2.0
    }
}
