//! Who keeps picked what would else stop bearing, in words.

use crate::facts::kept_picked::{Picker, PickingTurns, Turn};

use super::view::View;
use super::{count, list, sentence};

/// `Tomato, from about 20 Aug to 6 Oct: pick all that is ripe at least once in 7 days, ...`
#[must_use]
pub fn kept_picked(view: &View<'_>, kept: &PickingTurns<'_>) -> String {
    let turns: Vec<String> = kept.turns.iter().map(|turn| who(view, *turn)).collect();
    let (from, to) = (view.words.short(kept.from), view.words.short(kept.to));
    let every = count(kept.every_days as usize, "day");
    let text = format!(
        "{}, from about {from} to {to}: pick all that is ripe at least once in {every}, for the kitchen or to \
         share, so that it goes on bearing: {}.{}",
        kept.planting.ingredient,
        list(&turns),
        counts(view, kept)
    );
    sentence(&text)
}

/// `Grade 5 in its lessons, 30 Aug - 6 Oct`.
fn who(view: &View<'_>, turn: Turn) -> String {
    let days = view.words.span(turn.from, turn.to);
    match turn.who {
        Picker::Team(team) => {
            let whose = if team.size() > 1 { "their" } else { "its" };
            format!("{} in {whose} lessons, {days}", view.team_name(team))
        }
        Picker::Adult => format!("an adult, {days}"),
        Picker::Staff => format!("staff who water, {days}"),
        Picker::Families => format!("families who water, {days}"),
    }
}

/// How much hangs on it.
fn counts(view: &View<'_>, kept: &PickingTurns<'_>) -> String {
    match kept.counts {
        0 => String::new(),
        years => format!(
            " Without that it would have stopped too soon in {years} of {} years.",
            view.years()
        ),
    }
}
