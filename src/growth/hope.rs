//! The least hope on which a crop is sown.

/// A crop is not sown on a hope that holds in fewer than one weather year of this many.
pub const HOPE: usize = 10;

/// In so many weather years a planting, or an ingredient, is ready for the feast at the least: in one
/// of ten, and in one.
#[must_use]
pub fn least_ready_years(years: usize) -> usize {
    years.div_ceil(HOPE).max(1)
}
