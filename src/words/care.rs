//! Who must be found, and who does what the children do not, in words.

use crate::calendar::Date;
use crate::facts::gaps::{Need, OpenGap};
use crate::facts::hands::{Hands, OtherHands};

use super::view::View;
use super::{choice, list, step_words, steps};

/// `Sat 3 Apr to Sun 11 Apr (Spring break): leek seedlings.`
pub(crate) fn gap(view: &View<'_>, gap: &OpenGap<'_>) -> String {
    let needs: Vec<String> = gap.needs.iter().map(what).collect();
    format!("{}: {}.", gap_days(view, gap), list(&needs))
}

/// The days of a gap with the name of the break in it.
pub(crate) fn gap_days(view: &View<'_>, gap: &OpenGap<'_>) -> String {
    let name = gap.pause.map(|b| format!(" ({})", b.name));
    let days = view.words.days(gap.from, gap.to);
    format!("{days}{}", name.unwrap_or_default())
}

/// What needs care: a seedbed, seedlings, potted seedlings.
fn what(need: &Need<'_>) -> String {
    (step_words::of(need.after).tended)(need.ingredient, need.on_shelf)
}

/// Who does what, and when.
pub(crate) fn of_others(
    view: &View<'_>,
    OtherHands { planting, hands }: &OtherHands<'_>,
) -> String {
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
        Hands::OtherChildren { team, from, kinds } => {
            let names: Vec<String> = kinds.iter().map(|kind| name(*kind)).collect();
            format!(
                "The children then in {}: {} {ingredient}, after moving up on {}.",
                view.team_name(*team),
                list(&names),
                view.words.day(*from)
            )
        }
    }
}
