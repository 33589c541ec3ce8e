//! How the work is done, in words: one short item for each thing that a grade does. All of it is common
//! practice, but for depths, which are from memory; the packet comes first.

use crate::facts::how;
use crate::facts::ours::Ours;

use crate::page::Page;
use crate::words::acts::text;
use crate::words::sentence;
use crate::words::view::View;

/// Writes how each ingredient of a grade is done.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    let all = how::of(view.garden, ours);
    if all.is_empty() {
        return;
    }
    page.heading("How it is done");
    for how in &all {
        page.gap();
        page.line(&format!("{}:", sentence(&how.ingredient.name)));
        let taken_like = how.taken_like.map(|other| other.name.as_str());
        for act in &how.acts {
            page.item(&text(*act, taken_like, view.words));
        }
    }
    page.gap();
    page.line(
        "Common practice; depths from memory. The packet, and the school's rules for tools, come first.",
    );
}
