//! Who must be found, in words: gaps in which plants need daily care and nobody is on site, and
//! steps that are not done by the children who sowed.

use crate::calendar::Date;
use crate::facts::gaps::{Need, OpenGap};
use crate::facts::hands::{Hands, OtherHands};

use crate::page::Page;
use crate::words::view::View;
use crate::words::{choice, count, list, step_words, steps};

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

/// `Sat 3 Apr to Sun 11 Apr (Spring break): leek seedlings.`
pub(super) fn gap(view: &View<'_>, gap: &OpenGap<'_>) -> String {
    let needs: Vec<String> = gap.needs.iter().map(what).collect();
    format!("{}: {}.", gap_days(view, gap), list(&needs))
}

/// The days of a gap with the name of the break in it.
pub(super) fn gap_days(view: &View<'_>, gap: &OpenGap<'_>) -> String {
    let name = gap.pause.map(|b| format!(" ({})", b.name));
    let days = view.words.days(gap.from, gap.to);
    format!("{days}{}", name.unwrap_or_default())
}

/// What needs care: a seedbed, seedlings, potted seedlings.
fn what(need: &Need<'_>) -> String {
    (step_words::of(need.after).tended)(need.ingredient, need.on_shelf)
}

/// Writes who does the steps that children of the grade that sowed do not do.
pub(super) fn other_hands(view: &View<'_>, page: &mut Page) {
    let all = view.other_hands();
    if all.is_empty() {
        return;
    }
    page.heading("Not done by the children who sowed");
    for hands in &all {
        page.item(&of_others(view, hands));
    }
}

/// Who does what, and when.
fn of_others(view: &View<'_>, OtherHands { planting, hands }: &OtherHands<'_>) -> String {
    let ingredient = &planting.ingredient;
    let name = |kind| step_words::name(planting.method, kind).to_lowercase();
    let what = |kind| format!("{} {ingredient}", name(kind));
    let one_of = |days: &[Date]| {
        let days: Vec<String> = days.iter().map(|day| view.words.day(*day)).collect();
        choice(&days)
    };
    match hands {
        Hands::Families(kind, days) => format!("Families {}: {}.", what(*kind), one_of(days)),
        Hands::Adult(kind, days) => format!("An adult: {}, {}.", what(*kind), one_of(days)),
        Hands::Anyone(kind, from, to) => {
            let days = match kind.follows_harvest() {
                true => steps::cure_text(*from, *to, view.words),
                false => format!("every day, {}", view.words.days(*from, *to)),
            };
            format!("Whoever is there: {}, {days}.", what(*kind))
        }
        Hands::OtherChildren { grade, from, kinds } => {
            let names: Vec<String> = kinds.iter().map(|kind| name(*kind)).collect();
            format!(
                "The children then in {}: {} {ingredient}, after moving up on {}.",
                view.grade_name(*grade),
                list(&names),
                view.words.day(*from)
            )
        }
    }
}
