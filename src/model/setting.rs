//! What rules and aims look at when they write rows and objectives.

use crate::candidates::Candidates;
use crate::garden::Garden;

use super::columns::Columns;

/// A garden, its candidates and their columns.
pub struct Setting<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// The candidates.
    pub candidates: &'a Candidates,
    /// Their columns.
    pub columns: &'a Columns,
}
