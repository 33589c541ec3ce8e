//! What can wait and what cannot: by how many weeks each step alone may be earlier or later, a
//! line a planting.

use crate::calendar::monday_of;
use crate::checker::{bearable, bears};
use crate::explain::StepSlack;
use crate::garden::Method;
use crate::plan::{Planting, Step, StepKind, When};

use super::page::Page;
use super::step_words;
use super::view::View;
use super::words::count;

/// A step that one cancelled session loses, in the table and in the list.
pub(super) const NO_SLACK: &str = "no slack";
/// A step that has nowhere to go because of what is done beside it.
const NO_ROOM: &str = "no room";

/// A step that was not looked at in time.
const UNKNOWN: &str = "?";

/// The section of the plan's screen.
pub(super) fn write(view: &View<'_>, slack: &[StepSlack], page: &mut Page) {
    page.heading("What can wait");
    let mut header = vec!["Grade", "Ingredient"];
    header.extend(moved().map(|(_, head)| head));
    let mut rows = Vec::new();
    for grade in view.garden.grade_positions() {
        for (planting, ingredient) in view.planted_by(grade) {
            let mut row = vec![view.grade_name(grade).to_owned(), ingredient.name.clone()];
            row.extend(moved().map(|(kind, _)| cell(view, slack, planting, kind)));
            rows.push(row);
        }
    }
    page.table(&header, &rows, &[]);
    page.gap();
    page.line(&legend(view, &rows));
}

/// The kinds of steps that have a column, each with its head.
fn moved() -> impl Iterator<Item = (StepKind, &'static str)> {
    let kinds = StepKind::ALL.iter();
    kinds.filter_map(|kind| Some((*kind, step_words::of(*kind).slack_head?)))
}

/// What the words of the table mean.
fn legend(view: &View<'_>, rows: &[Vec<String>]) -> String {
    let says = |word: &str| rows.iter().flatten().any(|cell| cell.contains(word));
    let mut text = format!(
        "By how many weeks one step alone may be earlier or later, all others as planned (a sowing \
         with its thinning): every rule still holds, and {}.",
        promise(view)
    );
    if says(NO_SLACK) {
        text += " No slack: if it is cancelled, the next round of sessions is too late.";
    }
    if says(NO_ROOM) {
        text +=
            " No room: the crop would bear the next round, but lessons, shelf or beds are full.";
    }
    if says("missed") {
        text += " Missed: so many of the rounds kept for picking may fall out for every class, one of them at a \
                 time.";
    }
    if says(UNKNOWN) {
        text += " ?: there was no time to look at it.";
    }
    text += " Day by day, and what to do when a step fails: tureen show FILE --slack.";
    text
}

/// `neither an ingredient nor the whole dish loses more than one in ten of its ready years`.
pub(super) fn promise(view: &View<'_>) -> &'static str {
    let ready = view.ingredients().map(|(.., seen)| seen.ready_years());
    match ready.max().map_or(0, bearable) {
        0 => "no ready year is lost",
        _ => {
            "neither an ingredient nor the whole dish loses more than one in ten of its ready years"
        }
    }
}

/// What is said of a planting's steps of one kind.
fn cell(view: &View<'_>, slack: &[StepSlack], planting: &Planting, kind: StepKind) -> String {
    let of_kind: Vec<&StepSlack> = slack
        .iter()
        .filter(|s| step_of(view, s).is_some_and(|(p, step)| p == planting && step.kind == kind))
        .collect();
    match of_kind.as_slice() {
        [] if planting.steps_of(kind).next().is_some() => UNKNOWN.to_owned(),
        [] => String::new(),
        [one] if !kind.is_harvest() || planting.method == Method::Patch => weeks(one),
        [_] => format!("{NO_SLACK} (one session)"),
        many => {
            let free = many
                .iter()
                .filter(|s| may_fall_out(view, planting, s))
                .count();
            format!("{free} of {} can be missed", many.len())
        }
    }
}

/// The planting and the step that a slack is about.
pub(super) fn step_of<'a>(view: &View<'a>, slack: &StepSlack) -> Option<(&'a Planting, &'a Step)> {
    view.plan.step(slack.at)
}

/// True if the plan keeps its promise where a pick falls out.
pub(super) fn may_fall_out(view: &View<'_>, planting: &Planting, slack: &StepSlack) -> bool {
    let seen = view.seen(&planting.ingredient);
    let now = seen.map_or(0, |seen| seen.ready_years());
    let whole = view.replay.whole_dish_years();
    bears(now, slack.missed.ready_years) && bears(whole, slack.missed.whole_dish_years)
}

/// `3 later, 1 earlier`; in words where it cannot be later.
fn weeks(slack: &StepSlack) -> String {
    let (earlier, later) = range(slack);
    let [first, last] = with_thinning(slack);
    let earlier = first.map_or(earlier, |_| weeks_to(slack, first));
    let later = last.map_or(later, |_| weeks_to(slack, last));
    let later = match (slack.fragile, slack.bears_next) {
        (true, _) => NO_SLACK.to_owned(),
        (false, Some(false)) if !slack.next_costs => NO_ROOM.to_owned(),
        _ if later > 0 => format!("{later} later"),
        _ => "not later".to_owned(),
    };
    match earlier {
        0 => later,
        _ => format!("{later}, {earlier} earlier"),
    }
}

/// Weeks by which a step may be earlier and later.
pub(super) fn range(slack: &StepSlack) -> (u32, u32) {
    (
        weeks_to(slack, slack.days.first()),
        weeks_to(slack, slack.days.last()),
    )
}

/// Weeks between the planned days and others.
pub(super) fn weeks_to(slack: &StepSlack, other: Option<&When>) -> u32 {
    let monday = |when: Option<&When>| when.and_then(When::first).map(monday_of);
    let planned = monday(slack.days.get(slack.planned));
    let days = monday(other)
        .zip(planned)
        .map_or(0, |(a, b)| (a - b).num_days().abs());
    u32::try_from(days / 7).unwrap_or(0)
}

/// The earliest and the latest days that only do if the thinning moves too.
pub(super) fn with_thinning(slack: &StepSlack) -> [Option<&When>; 2] {
    let first = slack.with_thinning.first();
    let last = slack.with_thinning.last();
    [
        first.filter(|when| when.first() < slack.days.first().and_then(When::first)),
        last.filter(|when| when.first() > slack.days.last().and_then(When::first)),
    ]
}

/// `2 weeks earlier`, or nothing if there is none.
pub(super) fn weeks_apart(weeks: u32, side: &str) -> Option<String> {
    (weeks > 0).then(|| format!("{} {side}", count(weeks, "week")))
}
