//! Strips of bed that are turned over within the plan.

use crate::page::Page;
use crate::words::turned_over;
use crate::words::view::View;

/// Writes a line for each; nothing if there is none.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let all = view.turned_over();
    if all.is_empty() {
        return;
    }
    page.heading("Beds turned over");
    for turned in &all {
        page.item(&turned_over::turned_over(view, turned));
    }
    page.item("Wash hands after compost and soil.");
}
