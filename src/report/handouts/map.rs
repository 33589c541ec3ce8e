//! The map page: the garden from above, what stands in each bed and when, labels.

use crate::page::{Page, Picture};
use crate::report::pictures::map::map;
use crate::words::view::View;

/// Writes the page.
pub fn write(view: &View<'_>, page: &mut Page) {
    page.picture(Picture::Map(None));
    // The numbers on the map are those of this table, so it stands on paper too.
    if let Some(map) = map(view, None) {
        page.heading("What stands where");
        let table = map.said.table;
        let header: Vec<&str> = table.header.iter().map(String::as_str).collect();
        page.table(&header, &table.rows, &[]);
    }
    page.heading("Labels");
    page.picture(Picture::Labels);
}
