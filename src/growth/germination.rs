//! How long seed takes to come up, indoors at room warmth and outdoors day by day.

use crate::garden::Germination;
use crate::units::Celsius;

/// Days to come up at a steady temperature; `None` where it does not germinate. Between the
/// table's columns the days are read on a straight line.
#[must_use]
pub fn days_to_emerge(germination: &Germination, at: Celsius) -> Option<f64> {
    todo!("{germination:?} {at}")
}
