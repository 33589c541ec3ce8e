//! Beds to which a crop family comes back sooner than one would wish.

use crate::page::Page;
use crate::words::view::View;

/// Writes one line per bed and family; nothing if all wishes are kept.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    if view.replay.rotation_wishes_missed.is_empty() {
        return;
    }
    page.heading("Same family again sooner than one would wish");
    for miss in &view.replay.rotation_wishes_missed {
        page.item(&format!(
            "Bed {}: {} is of the {} family, which grew there in {}. Watch for disease.",
            miss.bed, miss.ingredient, miss.family, miss.grew_in
        ));
    }
}
