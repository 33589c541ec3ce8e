//! Who must be found, in words: gaps in which plants need daily care and nobody is on site, and
//! steps that are not done by the children who sowed.

use crate::page::Page;
use crate::words::care::{gap, of_others};
use crate::words::count;
use crate::words::kept_picked::kept_picked;
use crate::words::view::View;

/// Writes the gaps; one line if there is none.
pub(super) fn gaps(view: &View<'_>, page: &mut Page) {
    page.heading("Days without anyone");
    if view.gaps.is_empty() {
        page.line("Nothing needs daily care on days when nobody is on site.");
        return;
    }
    let days: u32 = view.gaps.iter().map(|gap| gap.unattended_days).sum();
    page.line(&format!(
        "Someone must be found for {}, counted beyond the two days of a weekend:",
        count(days, "day")
    ));
    for open in &view.gaps {
        page.item(&gap(view, open));
    }
}

/// Writes who does the steps that children of the grade that sowed do not do.
pub(super) fn other_hands(view: &View<'_>, page: &mut Page) {
    let kept = view.kept_picked();
    if !kept.is_empty() {
        page.heading("Kept picked, so that it goes on bearing");
        kept.iter()
            .for_each(|kept| page.item(&kept_picked(view, kept)));
    }
    let all = view.other_hands();
    if all.is_empty() {
        return;
    }
    page.heading("Not done by the children who sowed");
    for hands in &all {
        page.item(&of_others(view, hands));
    }
}
