//! Beds that are turned over, and those to which a crop family comes back sooner than one would wish.

use crate::page::Page;
use crate::words::turned_over;
use crate::words::view::View;

/// Writes a line for strips that carry one thing after another.
pub(super) fn turned_over(view: &View<'_>, page: &mut Page) {
    write("Beds turned over", &turned_over::all(view), page);
}

/// Writes a line for a family that comes back.
pub(super) fn family_again(view: &View<'_>, page: &mut Page) {
    let heading = "Same family again sooner than one would wish";
    write(heading, &turned_over::family_again(view), page);
}

/// Nothing where there are no lines.
fn write(heading: &str, lines: &[String], page: &mut Page) {
    if !lines.is_empty() {
        page.heading(heading);
    }
    for line in lines {
        page.item(line);
    }
}
