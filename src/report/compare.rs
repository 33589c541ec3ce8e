//! The plan as it is and with changes to the project file, side by side: what gets better,
//! what gets worse, and which dates move.

use crate::explain::{Trial, years_back};
use crate::facts::Facts;
use crate::facts::compared::{self, Moved, Spans};
use crate::plan::{Aim, StepKind};
use crate::project::Change;

use super::given_back;
use super::overview::{self, shares};
use super::ran_out;
use crate::page::Page;
use crate::words::no_plan::why_none;
use crate::words::occasion::occasion;
use crate::words::view::{View, readiness};
use crate::words::{list, promise, step_words};

/// What stands in the table for a plan that does not exist.
const NONE: &str = "-";

/// What `tureen try` prints. The first trial is the file as it stands.
#[must_use]
pub fn compare(trials: &[Trial]) -> Page {
    let mut page = Page::new();
    let Some(first) = trials.first() else {
        return page;
    };
    page.title(&occasion(&first.garden));
    page.paragraph("The file stays as it is; this is what the changes would bring.");
    let labels = labels(trials);
    ran_out::of_trials(labels.iter().cloned().zip(trials), &mut page);
    page.heading("What is tried");
    let width = labels.iter().map(String::len).max().unwrap_or(0);
    for (label, trial) in labels.iter().zip(trials) {
        page.entry(label, width, &what_is_tried(trial));
    }
    let planned: Vec<Option<Facts<'_>>> = trials
        .iter()
        .map(|t| Some(Facts::new(&t.garden, t.outcome.as_ref().ok()?)))
        .collect();
    let views: Vec<Option<View<'_>>> = planned
        .iter()
        .map(|facts| facts.as_ref().map(View::of))
        .collect();
    page.heading("What comes of it");
    figures(&labels, trials, &views, &mut page);
    years_given_back(&labels, trials, &mut page);
    without_plan(&labels, trials, &mut page);
    moved(&labels, trials, &views, &mut page);
    page
}

/// `As it is`, `Change 1`, `Change 2`, `Together`.
fn labels(trials: &[Trial]) -> Vec<String> {
    let all = trials.last().map_or(&[][..], |trial| &trial.changes);
    let label = |trial: &Trial| match trial.changes.as_slice() {
        [] => "As it is".to_owned(),
        [one] => {
            let at = all.iter().position(|change| change == one);
            format!("Change {}", at.unwrap_or(0) + 1)
        }
        _ => "Together".to_owned(),
    };
    trials.iter().map(label).collect()
}

fn what_is_tried(trial: &Trial) -> String {
    match trial.changes.as_slice() {
        [] => "no change".to_owned(),
        [one] => change_text(one),
        several => {
            let texts: Vec<String> = several.iter().map(change_text).collect();
            format!("all of these: {}", texts.join(", "))
        }
    }
}

fn change_text(change: &Change) -> String {
    match change {
        Change::Set(text) => text.clone(),
        Change::OtherDay(days) => format!("the feast {days} days later"),
        Change::OtherDish(dish) => dish.name.clone(),
    }
}

/// The table: one column a trial.
fn figures(labels: &[String], trials: &[Trial], views: &[Option<View<'_>>], page: &mut Page) {
    let mut header = vec![""];
    let whole: Vec<String> = labels.iter().map(|l| l.replace(' ', "\u{a0}")).collect();
    header.extend(whole.iter().map(String::as_str));
    let row = |name: &str, cell: &dyn Fn(&View<'_>) -> String| -> Vec<String> {
        // Cells stay in one piece; only names wrap.
        let whole = |view: &View<'_>| cell(view).replace(' ', "\u{a0}");
        let cells = views
            .iter()
            .map(|view| view.as_ref().map_or_else(|| NONE.to_owned(), whole));
        std::iter::once(name.to_owned()).chain(cells).collect()
    };
    let mut rows = vec![row("Whole dish ready", &|v| readiness(v.promised()))];
    if trials.iter().any(|t| t.garden.feast.rain_date.is_some()) {
        rows.push(row("On the rain date", &on_the_rain_date));
    }
    for name in ingredient_names(trials) {
        rows.push(row(&format!("  {name} ready"), &|v| ready(v, &name)));
    }
    for name in ingredient_names(trials) {
        rows.push(row(&format!("  {name}, part grown"), &|v| grown(v, &name)));
    }
    rows.push(row("Shelf, fullest week", &|v| {
        let shelf = v.shelf_use().into_iter().next();
        let peak = shelf.and_then(|used| used.peak()).map_or(0, |(n, _)| n);
        format!("{peak} of {} flats", v.garden.shelf.flats)
    }));
    rows.push(row("Beds, fullest week", &|v| {
        let beds = v.all_beds_use();
        let peak = beds.peak().map_or(0, |(n, _)| n);
        format!("{peak} of {} strips", beds.capacity)
    }));
    let aims = [
        ("Steps that one lost session spoils", Aim::Slack),
        ("Days to find someone for", Aim::UnattendedDays),
    ];
    for (name, aim) in aims {
        rows.push(row(name, &|v| aim_value(v, aim)));
    }
    write_rows(&header, rows, page);
    let mut planned = views.iter().flatten();
    let years = planned.clone().next().map(View::years_of_column);
    page.line(&format!(
        "Ready: in how many of {} enough of it is in the pot. Part grown: of the kitchen's amount, in \
         a poor year and in an ordinary one.",
        years.as_deref().unwrap_or("the years")
    ));
    if let Some(text) = planned.find_map(promise::only_own_years) {
        page.line(text);
    }
}

/// The rows in which something changes, as a table; the others in a sentence.
fn write_rows(header: &[&str], rows: Vec<Vec<String>>, page: &mut Page) {
    let (same, different): (Vec<_>, Vec<_>) = rows.into_iter().partition(|row| {
        let mut cells = row.iter().skip(1);
        let first = cells.next();
        cells.all(|cell| Some(cell) == first)
    });
    if !different.is_empty() {
        page.table_in_parts(header, different, 2);
        page.gap();
    }
    if !same.is_empty() {
        let same: Vec<String> = same
            .iter()
            .filter_map(|row| Some(format!("{} {}", row.first()?.trim(), row.get(1)?)))
            .collect();
        page.line(&format!("The same in all: {}.", list(&same)));
        page.gap();
    }
}

fn on_the_rain_date(view: &View<'_>) -> String {
    let seen = view.on_rain_date();
    seen.map_or_else(|| NONE.to_owned(), |seen| readiness(seen.promised))
}

/// The names of all ingredients, in the order of the files.
fn ingredient_names(trials: &[Trial]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for ingredient in trials.iter().flat_map(|t| &t.garden.ingredients) {
        if !names.contains(&ingredient.name) {
            names.push(ingredient.name.clone());
        }
    }
    names
}

fn ready(view: &View<'_>, name: &str) -> String {
    let at = view.garden.ingredient_named(name);
    at.map_or_else(|| NONE.to_owned(), |at| readiness(view.promised_of(at)))
}

fn grown(view: &View<'_>, name: &str) -> String {
    view.seen(name).map_or_else(|| NONE.to_owned(), shares)
}

fn aim_value(view: &View<'_>, aim: Aim) -> String {
    let result = view.plan.aims.iter().find(|r| r.aim == aim);
    result.map_or_else(|| NONE.to_owned(), |r| format!("{:.0}", r.value.abs()))
}

/// Where a plan has fewer ready years than are possible, because it gave some back.
fn years_given_back(labels: &[String], trials: &[Trial], page: &mut Page) {
    for (label, trial) in labels.iter().zip(trials) {
        let Ok(checked) = &trial.outcome else {
            continue;
        };
        let back = years_back(checked);
        if !back.is_empty() {
            page.line(&format!(
                "{label}: given back to what is aimed at later: {}.",
                given_back::years(&back)
            ));
        }
    }
}

/// Why there is no plan, for each trial without one.
fn without_plan(labels: &[String], trials: &[Trial], page: &mut Page) {
    let failed = || {
        trials
            .iter()
            .zip(labels)
            .filter(|(t, _)| t.outcome.is_err())
    };
    if failed().next().is_none() {
        return;
    }
    page.heading("Where there is no plan");
    for (trial, label) in failed() {
        if let Err(why) = &trial.outcome {
            page.item(&format!("{label}: {}", why_none(&trial.garden, why)));
        }
    }
}

/// The steps whose dates differ from those of the file as it stands, and other grades.
fn moved(labels: &[String], trials: &[Trial], views: &[Option<View<'_>>], page: &mut Page) {
    let Some((Some(as_it_is), changed)) = views.split_first() else {
        return;
    };
    let kinds: Vec<StepKind> = overview::dated().map(|(kind, _)| kind).collect();
    let mut lines = Vec::new();
    for (view, label) in changed.iter().zip(labels.iter().skip(1)) {
        let Some(view) = view else { continue };
        for name in ingredient_names(trials) {
            if let Some(moved) = compared::moved(as_it_is, view, &name, &kinds) {
                let texts = moves(as_it_is, view, &moved).join("; ");
                lines.push(format!("{label}, {name}: {texts}."));
            }
        }
    }
    if lines.is_empty() {
        return;
    }
    page.heading("Which dates move");
    for line in lines {
        page.item(&line);
    }
}

/// `sow 8-15 Feb instead of 1-8 Feb`, `grown by Grade 3 instead of Grade 2`.
fn moves(as_it_is: &View<'_>, view: &View<'_>, moved: &Moved) -> Vec<String> {
    let told = |view: &View<'_>, spans: &Spans| {
        let spans = spans.iter().map(|(from, to)| view.words.span(*from, *to));
        spans.collect::<Vec<_>>().join(" and ")
    };
    let step = |(kind, old, new): &(StepKind, Spans, Spans)| {
        let word = step_words::of(*kind).plain;
        let (old, new) = (told(as_it_is, old), told(view, new));
        match (old.is_empty(), new.is_empty()) {
            (true, _) => format!("{word} {new}"),
            (_, true) => format!("no longer {word}"),
            _ => format!("{word} {new} instead of {old}"),
        }
    };
    let grown_by = moved.teams.map(|(old, new)| {
        let (old, new) = (as_it_is.team_name(old), view.team_name(new));
        format!("grown by {new} instead of {old}")
    });
    moved.steps.iter().map(step).chain(grown_by).collect()
}
