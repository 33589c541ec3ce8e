//! A folder of what a school hangs up, sends and imports: pages with pictures, calendar files,
//! tables and data. It holds markup and drawing; all sentences come from `report`.

mod blocks;
pub mod calendar;
pub mod checksum;
pub mod data;
pub mod file_name;
mod files;
pub mod folder;
mod frame;
mod pages;
pub mod pictures;
pub mod safe;
pub mod tables;
#[cfg(feature = "spreadsheet")]
pub mod workbook;

pub use files::{FormatError, class_files, files};
pub use pages::pages;
