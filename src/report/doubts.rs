//! What the file says that can hardly be meant.

use crate::garden::Garden;

use crate::page::Page;

/// Writes everything that is doubted, with what makes it doubtful; nothing where nothing is.
pub(super) fn write(garden: &Garden, page: &mut Page) {
    if garden.doubts.is_empty() {
        return;
    }
    page.heading("Look at this again: can it be meant?");
    for doubt in &garden.doubts {
        page.item(&format!("{}: {}", doubt.what, doubt.why));
    }
}
