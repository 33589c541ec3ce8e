//! What a number of ready years promises of as many more: a prediction interval.

/// The square of the normal deviate that leaves 2.5 % on either side.
const Z2_95: f64 = 1.959_963_984_540_054 * 1.959_963_984_540_054;

/// In how many of `further` years, as (fewest, most), to expect what came about in `hits` of
/// `trials` years: the 95 % prediction interval by joint sampling. It holds every number that
/// a score test of two equal shares (Pearson's chi-square without correction) does not tell
/// from `hits`. Where Wilson's interval is for the share of endless years, this one allows for
/// the chance in the further years too.
///
/// Source: K. Krishnamoorthy and J. Peng, "Improved closed-form prediction intervals for
/// binomial and Poisson distributions", Journal of Statistical Planning and Inference 141
/// (2011), 1709-1718; the form of the test is from memory. Solved over whole years, so no year
/// or none needs no correction. It takes the years as independent and of one climate, and the
/// plan as chosen without a look at them.
#[must_use]
pub fn further_years_95(hits: usize, trials: usize, further: usize) -> (usize, usize) {
    let (n, m) = (trials as f64, further as f64);
    let x = hits.min(trials) as f64;
    let expected = |hits: &usize| {
        let y = *hits as f64;
        let apart = (m * x - n * y).powi(2) * (n + m);
        apart <= Z2_95 * n * m * (x + y) * (n + m - x - y)
    };
    // The number that is nearest to the share seen is expected whatever the test says: with few
    // further years no number may pass it.
    let nearest = (x * m / n.max(1.0)).round() as usize;
    let fewest = (0..=nearest).find(expected).unwrap_or(nearest);
    let most = (nearest..=further).rev().find(expected).unwrap_or(nearest);
    (fewest, most)
}
