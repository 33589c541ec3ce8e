//! Quantiles of what a record's years show: one of the values themselves, nothing in between.

/// The value that a share of the sorted values lies below: the nearest rank, rounded to the
/// middle of the list, half ranks away from zero. `None` of an empty list.
///
/// The rank is `share * (n - 1)` counted from 0, as in method 7 of Hyndman, R.J. and Fan, Y.
/// 1996, The American Statistician 50(4):361-365 (from memory), but the nearest value is taken
/// instead of a line between two: a day on which it really froze, not one in between.
#[must_use]
pub fn nearest_rank<T: Copy>(sorted: &[T], share: f64) -> Option<T> {
    let last = sorted.len().checked_sub(1)?;
    let at = (share * last as f64).round() as usize;
    sorted.get(at.min(last)).copied()
}
