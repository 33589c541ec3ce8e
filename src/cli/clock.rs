//! What day it is: the only clock of the program that a reader sees.

use std::time::{SystemTime, UNIX_EPOCH};

use chrono::DateTime;

use crate::calendar::Date;

/// Today in Greenwich; a day more or less does not matter where it is used.
pub(super) fn today() -> Date {
    let since = SystemTime::now()
        .duration_since(UNIX_EPOCH)
        .unwrap_or_default();
    let seconds = i64::try_from(since.as_secs()).unwrap_or_default();
    DateTime::from_timestamp(seconds, 0)
        .unwrap_or_default()
        .date_naive()
}
