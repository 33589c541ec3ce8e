//! A folder of what a school hangs up, sends and imports: pages with pictures, calendar files,
//! tables and data. It holds markup and drawing; all sentences come from `report`.

mod blocks;
pub mod calendar;
pub mod data;
pub mod file_name;
mod files;
pub mod folder;
mod frame;
pub mod mps;
mod pages;
pub mod pictures;
pub mod safe;
pub mod tables;
#[cfg(feature = "spreadsheet")]
pub mod workbook;

pub use files::{FormatError, class_files, files};

use crate::checker::CheckedPlan;
use crate::explain::{self, LeastSpace};
use crate::facts::Facts;
use crate::garden::Garden;
use crate::report;
use crate::words::view::View;

use calendar::Stamp;
use folder::File;

/// All files of the folder. `saved` tells when the plan was saved, `least` how little space would
/// do, where that was worked out.
///
/// # Errors
/// What the writer of a format says.
pub fn all(
    garden: &Garden,
    checked: &CheckedPlan,
    saved: Stamp,
    least: Option<&LeastSpace>,
) -> Result<Vec<File>, FormatError> {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let slack = explain::slack(garden, checked);
    let others = files(&view, saved, &slack)?;
    let handouts = report::handouts::all(&view, &slack, least);
    let mut all = pages::pages(&view, &handouts, &others);
    all.extend(others);
    Ok(all)
}
