//! When a row that was sown close is thinned.

use crate::calendar::{Date, plus_days};

/// A crop that is thinned comes up too close where children sow it by the pinch.
const THIN_AFTER_DAYS: i64 = 14;
/// Later than this the roots are entangled (common practice).
const THIN_BEFORE_DAYS: i64 = 42;

/// The first and the last day on which a row may be thinned, from the first and the last day
/// on which it was sown.
#[must_use]
pub fn thinning_days(first_sown: Date, last_sown: Date) -> (Date, Date) {
    (
        plus_days(last_sown, THIN_AFTER_DAYS),
        plus_days(first_sown, THIN_BEFORE_DAYS),
    )
}
