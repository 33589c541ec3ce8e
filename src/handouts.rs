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
mod readers;
pub mod safe;
pub mod tables;
#[cfg(feature = "spreadsheet")]
pub mod workbook;

pub use files::{FormatError, class_files, files};
pub use pages::COORDINATOR;
pub use readers::Readers;

use crate::checker::CheckedPlan;
use crate::explain::{self, LeastSpace};
use crate::facts::Facts;
use crate::garden::Garden;
use crate::report;
use crate::words::view::View;

use calendar::Stamp;
use folder::File;

/// All files of the folder for some readers. `saved` tells when the plan was saved, `least` how little space would
/// do, where that was worked out.
///
/// # Errors
/// What the writer of a format says.
pub fn all(
    garden: &Garden,
    checked: &CheckedPlan,
    saved: Stamp,
    least: Option<&LeastSpace>,
    readers: Readers,
) -> Result<Vec<File>, FormatError> {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let slack = explain::slack(garden, checked);
    let mut others = files(&view, saved, &slack)?;
    if readers != Readers::All {
        let mut own = class_files(garden);
        own.retain(|(class, _)| readers.include_class(*class));
        others.retain(|file| own.iter().any(|(_, path)| *path == file.path));
    }
    let handouts = report::handouts::all(&view, &slack, least);
    let mut all = pages::pages(&view, &handouts, &others, readers);
    all.extend(others);
    Ok(all)
}
