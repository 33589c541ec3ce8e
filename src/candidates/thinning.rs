//! When a row that was sown close is thinned.

use crate::calendar::{Date, plus_days};

use super::rounds::Round;

/// A crop that is thinned comes up too close where children sow it by the pinch.
const THIN_AFTER_DAYS: i64 = 14;
/// Later than this the roots are entangled (common practice).
const THIN_BEFORE_DAYS: i64 = 42;

/// The first and the last day on which what is sown in a round may be thinned.
#[must_use]
pub fn thinning_days(sow: &Round) -> (Date, Date) {
    (
        plus_days(sow.last(), THIN_AFTER_DAYS),
        plus_days(sow.first(), THIN_BEFORE_DAYS),
    )
}
