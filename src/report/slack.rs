//! What can wait and what cannot: by how many weeks each step alone may be earlier or later, a
//! line a planting.

use crate::explain::StepSlack;
use crate::facts::slack::{Bearable, Later, Wait};
use crate::plan::StepKind;

use crate::page::Page;
use crate::words::view::View;
use crate::words::{count, step_words};

/// A step that one cancelled session loses, in the table and in the list.
pub(super) const NO_SLACK: &str = "no slack";

/// The section of the plan's screen.
pub(super) fn write(view: &View<'_>, slack: &[StepSlack], page: &mut Page) {
    page.heading("What can wait");
    let mut header = vec!["Grade", "Ingredient"];
    header.extend(moved().map(|(_, head)| head));
    let (mut rows, mut all) = (Vec::new(), Vec::new());
    for (_, planting) in view.by_grade() {
        let waits: Vec<Wait> = moved()
            .map(|(kind, _)| view.wait(slack, planting, kind))
            .collect();
        let grades = view.team_name(view.team_of(planting));
        let mut row = vec![grades, planting.ingredient.clone()];
        row.extend(waits.iter().map(|wait| cell(*wait)));
        rows.push(row);
        all.extend(waits);
    }
    page.table(&header, &rows, &[]);
    page.gap();
    page.line(&legend(view, &all));
}

/// The kinds of steps that have a column, each with its head.
fn moved() -> impl Iterator<Item = (StepKind, &'static str)> {
    let kinds = StepKind::ALL.iter();
    kinds.filter_map(|kind| Some((*kind, step_words::of(*kind).slack_head?)))
}

/// What the words of the table mean, those that stand there.
fn legend(view: &View<'_>, all: &[Wait]) -> String {
    let later = |later: Later| {
        let is = |w: &Wait| matches!(w, Wait::Weeks { later: l, .. } if *l == later);
        all.iter().any(is)
    };
    let mut text = format!(
        "By how many weeks one step alone may be earlier or later, all others as planned (a sowing \
         with its thinning): every rule still holds, and {}.",
        promise(view)
    );
    if later(Later::NoSlack) || all.contains(&Wait::OneSession) {
        text += " No slack: if it is cancelled, the next round of sessions is too late.";
    }
    if later(Later::NoRoom) {
        text +=
            " No room: the crop would bear the next round, but lessons, shelf or beds are full.";
    }
    if all.iter().any(|wait| matches!(wait, Wait::Picks { .. })) {
        text += " Missed: so many of the rounds kept for picking may fall out for every class, one of them at a \
                 time.";
    }
    if all.contains(&Wait::Unknown) {
        text += " ?: there was no time to look at it.";
    }
    text += " Day by day, and what to do when a step fails: tureen show FILE --slack.";
    text
}

/// `neither an ingredient nor the whole dish loses more than one in ten of its ready years`.
pub(super) fn promise(view: &View<'_>) -> &'static str {
    match view.bearable() {
        Bearable::Nothing => "no ready year is lost",
        Bearable::OneInTen => {
            "neither an ingredient nor the whole dish loses more than one in ten of its ready years"
        }
    }
}

/// What is said of a planting's steps of one kind: `3 later, 1 earlier`; in words where it cannot
/// be later.
fn cell(wait: Wait) -> String {
    match wait {
        Wait::None => String::new(),
        Wait::Unknown => "?".to_owned(),
        Wait::OneSession => format!("{NO_SLACK} (one session)"),
        Wait::Picks { free, of } => format!("{free} of {of} can be missed"),
        Wait::Weeks { earlier, later } => {
            let later = match later {
                Later::NoSlack => NO_SLACK.to_owned(),
                Later::NoRoom => "no room".to_owned(),
                Later::Weeks(0) => "not later".to_owned(),
                Later::Weeks(weeks) => format!("{weeks} later"),
            };
            match earlier {
                0 => later,
                _ => format!("{later}, {earlier} earlier"),
            }
        }
    }
}

/// `2 weeks earlier`, or nothing if there is none.
pub(super) fn weeks_apart(weeks: u32, side: &str) -> Option<String> {
    (weeks > 0).then(|| format!("{} {side}", count(weeks, "week")))
}
