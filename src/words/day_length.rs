//! Kinds of onions by the length of the days in which they make bulbs, as seed lists call them.

use crate::garden::DayLengthKind;

/// `long-day`.
pub(crate) fn kind(kind: DayLengthKind) -> &'static str {
    match kind {
        DayLengthKind::Short => "short-day",
        DayLengthKind::Intermediate => "intermediate-day",
        DayLengthKind::Long => "long-day",
    }
}
