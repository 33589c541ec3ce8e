//! Days in the form of the data file.

use crate::calendar::Date;

use super::super::shape::Day;

/// A day, ISO 8601.
pub fn day(day: Date) -> Day {
    Day(day.format("%Y-%m-%d").to_string())
}
