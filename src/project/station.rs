//! A weather station's file as it is published: what kind of table it is, its values in one unit, and the
//! years of it that are whole enough for a plan. A file is read line by line; only its days are kept.

mod asked;
mod cells;
mod days;
mod element;
mod excerpt;
mod fixed;
mod header;
mod intake;
mod layout;
mod lines;
mod long;
mod names;
mod one_file;
mod order;
mod outcome;
mod table;
mod units;
mod values;
mod years;

use std::path::PathBuf;

use crate::diagnostic::Problems;

pub use asked::Asked;
pub use days::Counts;
pub use element::Element;
pub use layout::Kind;
pub use names::Column;
pub use one_file::StationFile;
pub use order::Order;
pub use outcome::Station;
pub use units::{RainUnit, TemperatureUnit, Units};

/// Reads a station's files together: each may give all of a day, or a part.
///
/// # Errors
/// Everything that is wrong in any of them, or that no year is whole.
pub fn read(paths: &[PathBuf], asked: &Asked) -> Result<Station, Problems> {
    let mut problems = Problems::default();
    let read = paths
        .iter()
        .filter_map(|path| one_file::read(path, asked, &mut problems))
        .collect();
    if !problems.is_empty() {
        return Err(problems);
    }
    outcome::together(read)
}
