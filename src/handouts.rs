//! A folder of what a school hangs up, sends and imports: pages with pictures, calendar files,
//! tables and data. It holds markup and drawing; all sentences come from `report`.
pub mod pictures;
