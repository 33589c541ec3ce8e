//! What a person says of a station's files.

use super::names::Column;
use super::order::Order;
use super::units::Units;

/// What a person says of the files beside what they tell themselves.
#[derive(Debug, Clone, Default)]
pub struct Asked {
    /// The station to read, of a file that holds several.
    pub station: Option<String>,
    /// Units that hold whatever the file seems to be in.
    pub units: Units,
    /// Columns by their names in the file, or by their numbers from 1.
    pub columns: Vec<(Column, String)>,
    /// How days are written where year, month and day do not stand in this order.
    pub dates: Option<Order>,
}
