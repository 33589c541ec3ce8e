//! The sessions on which nothing is due, in words: how many there are, and what to look at and to
//! tend while the plants grow (common practice).

use crate::facts::ours::{Between, Ours};
use crate::garden::ClassAt;

use crate::page::Page;
use crate::words::kept_picked::kept_picked;
use crate::words::view::View;
use crate::words::{count, list, sentence};

/// Writes what to do when nothing is due.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    let Some(between) = view.between(ours) else {
        return;
    };
    keep_picked(view, ours, page);
    page.heading("When nothing is due");
    if !between.free.is_empty() {
        page.line(&sessions(view, &between));
    }
    page.item(if between.raised {
        "Seed and seedlings: keep them damp, turn the flats, write down the day on which the first \
         comes up, count how many do."
    } else {
        "Seed: keep it damp, write down the day on which the first comes up, count how many do."
    });
    page.item(
        "Plants in the bed: water, weed, mulch; look under the leaves for eggs and holes; measure \
         the tallest one and draw it.",
    );
    page.item(
        "Two weeks before a pick: look how ripe it is, write down what you see, tell the \
         coordinator if it is early or late.",
    );
}

/// Writes what must be picked week by week, beside the days for the dish.
pub(super) fn keep_picked(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    let mut kept = view.kept_picked_of(ours).peekable();
    if kept.peek().is_some() {
        page.heading("Week by week");
    }
    kept.for_each(|kept| page.item(&kept_picked(view, kept)));
}

/// `From 30 Apr to 6 Oct nothing is due in 12 sessions of 5a and 11 sessions of 5b.`
fn sessions(view: &View<'_>, between: &Between) -> String {
    let of_class = |(class, free): &(ClassAt, u32)| {
        let name = &view.garden.class(*class).name;
        format!("{} of {name}", count(*free, "session"))
    };
    let classes: Vec<String> = between.free.iter().map(of_class).collect();
    sentence(&format!(
        "from {} to {} nothing is due in {}.",
        view.words.short(between.from),
        view.words.short(between.to),
        list(&classes)
    ))
}
