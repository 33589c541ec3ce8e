//! What the file says that can hardly be meant.

use crate::garden::Garden;

use crate::page::Page;

/// Writes everything that is doubted, with what makes it doubtful; nothing where nothing is.
pub(super) fn write(garden: &Garden, page: &mut Page) {
    write_most(garden, garden.doubts.len(), page);
}

/// The same with so many at most; the others are counted.
pub(super) fn write_most(garden: &Garden, most: usize, page: &mut Page) {
    if garden.doubts.is_empty() {
        return;
    }
    page.heading("Look at this again: can it be meant?");
    for doubt in garden.doubts.iter().take(most) {
        page.item(&format!("{}: {}", doubt.what, doubt.why));
    }
    let rest = garden.doubts.len().saturating_sub(most);
    if rest > 0 {
        page.item(&format!("And {rest} more: tureen check FILE."));
    }
}
