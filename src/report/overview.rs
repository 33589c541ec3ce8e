//! The table of who grows what: one row per ingredient.

use crate::checker::IngredientReplay;
use crate::garden::{Ingredient, IngredientAt};
use crate::plan::{Planting, StepKind};

use super::idle;
use crate::facts::places;
use crate::facts::spans::span_of;
use crate::page::Page;
use crate::words::view::View;
use crate::words::{Words, list, step_words};

/// The kinds of steps that have a column of dates, each with its head.
pub(super) fn dated() -> impl Iterator<Item = (StepKind, &'static str)> {
    let kinds = StepKind::ALL.iter();
    kinds.filter_map(|kind| Some((*kind, step_words::of(*kind).overview_head?)))
}

/// Writes the table and its footnote.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("Who grows what");
    let words = words(view);
    let rows: Vec<Vec<String>> = view
        .ingredients()
        .map(|(at, ingredient, seen)| row(view, words, at, ingredient, seen))
        .collect();
    let mut header = vec!["Grade", "Ingredient"];
    header.extend(dated().map(|(_, head)| head));
    header.extend(["Bed", "Ready", "Target"]);
    // Numbers stand to the right.
    let numbers = [header.len() - 2, header.len() - 1];
    page.table(&header, &rows, &numbers);
    page.gap();
    if let Some(note) = years_apart(view) {
        page.line(&note);
    }
    let more = match view
        .ingredients()
        .any(|(.., seen)| seen.expected_share.0 > 1.0)
    {
        true => "; over 100 % is more than the kitchen asks for",
        false => "",
    };
    page.line(&format!(
        "Ready: in how many of {} enough of it is in the pot. Target: the part of the \
         kitchen's amount that the garden grows in a poor year and in an ordinary one{more}.",
        view.years_of_column()
    ));
    for line in idle::lines(view) {
        page.line(&line);
    }
    let ingredients = view.garden.ingredients.iter();
    let chosen: Vec<&str> = ingredients
        .filter(|i| i.only_team().is_none())
        .map(|i| i.name.as_str())
        .collect();
    if !chosen.is_empty() {
        page.line(&format!(
            "The program chose the grade for {}: the file leaves it open.",
            list(&chosen)
        ));
    }
}

/// How dates are written in the table: without a year, where a line under it tells the years.
pub(super) fn words(view: &View<'_>) -> Words {
    match years_apart(view) {
        Some(_) => view.words.without_years(),
        None => view.words,
    }
}

/// Which dates are of the year before the feast's, where the table needs no years.
pub(super) fn years_apart(view: &View<'_>) -> Option<String> {
    let kinds: Vec<StepKind> = dated().map(|(kind, _)| kind).collect();
    let apart = view.years_apart(&kinds)?;
    Some(format!(
        "In this table the dates from {} to the end of December are of {}, all others of {}.",
        view.words.month_day(apart.from),
        apart.year - 1,
        apart.year
    ))
}

fn row(
    view: &View<'_>,
    words: Words,
    at: IngredientAt,
    ingredient: &Ingredient,
    seen: &IngredientReplay,
) -> Vec<String> {
    let plantings = view.plantings_named(&ingredient.name);
    let beds: Vec<String> = plantings.map(beds).collect();
    let mut row = names(view, ingredient);
    row.extend(dated().map(|(kind, _)| spans(view, words, ingredient, kind)));
    row.extend([beds.join("\n"), view.ready_cell(at), shares(seen)]);
    row
}

/// The first cells of a row: the grade and its ingredient.
pub(super) fn names(view: &View<'_>, ingredient: &Ingredient) -> Vec<String> {
    let grades = view.names_of(view.grown_by(ingredient)).into_iter();
    // The name of a grade stays on one line where there is room.
    let grades: Vec<String> = grades.map(|name| name.replace(' ', "\u{a0}")).collect();
    vec![list(&grades), ingredient.name.clone()]
}

/// From when to when an ingredient's steps of one kind are done, a line for each planting; nothing
/// where none has such a step.
pub(super) fn spans(
    view: &View<'_>,
    words: Words,
    ingredient: &Ingredient,
    kind: StepKind,
) -> String {
    let span = |planting: &Planting| match span_of(planting, kind) {
        Some((from, to)) => words.span(from, to),
        None => String::new(),
    };
    let plantings = view.plantings_named(&ingredient.name);
    let cells: Vec<String> = plantings.map(span).collect();
    match cells.iter().all(String::is_empty) {
        true => String::new(),
        false => cells.join("\n"),
    }
}

/// The beds of a planting: `3, 4`, or `patch`.
fn beds(planting: &Planting) -> String {
    match places::beds(&planting.places).as_slice() {
        [] => "patch".to_owned(),
        ids => ids.join(", "),
    }
}

/// `41-70 %`: the part of the target in a poor and in an ordinary year.
pub(super) fn shares(seen: &IngredientReplay) -> String {
    let [low, expected] = [seen.low_share, seen.expected_share].map(|s| s.0 * 100.0);
    format!("{low:.0}-{expected:.0}\u{a0}%")
}
