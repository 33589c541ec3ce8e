//! What was assumed rather than given.

use crate::garden::Garden;

use crate::page::Page;

/// Writes every assumption with its reason.
pub(super) fn write(garden: &Garden, page: &mut Page) {
    page.heading("Assumed, not given in the file");
    if garden.assumed.is_empty() {
        page.line("Nothing.");
    }
    for assumption in &garden.assumed {
        page.item(&format!("{}: {}", assumption.what, assumption.why));
    }
}
