//! Who must be found: gaps in which plants need daily care and nobody is on site, and
//! steps that are not done by the children who sowed.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::checker::Unattended;
use crate::garden::{Garden, Ingredient, Method};
use crate::plan::{Planting, Step, StepKind, When};

use super::page::Page;
use super::step_words;
use super::steps;
use super::view::View;
use super::words::{Words, choice, count, list};
use crate::facts::spans::by_children;

/// Writes the gaps; one line if there is none.
pub(super) fn gaps(view: &View<'_>, page: &mut Page) {
    page.heading("Days without anyone");
    if view.replay.unattended.is_empty() {
        page.line("Nothing needs daily care on days when nobody is on site.");
        return;
    }
    let days: u32 = view
        .replay
        .unattended
        .iter()
        .map(|u| u.gap.unattended_days())
        .sum();
    page.line(&format!(
        "Someone must be found for {}, counted beyond the two days of a weekend:",
        count(days, "day")
    ));
    for unattended in &view.replay.unattended {
        page.item(&gap(view, unattended));
    }
}

/// `Sat 3 Apr to Sun 11 Apr (Spring break): leek seedlings.`
pub(super) fn gap(view: &View<'_>, unattended: &Unattended) -> String {
    let needs: Vec<String> = unattended
        .needs
        .iter()
        .map(|(ingredient, kind)| what(view, ingredient, *kind))
        .collect();
    format!(
        "{}: {}.",
        gap_days(view.garden, view.words, unattended),
        list(&needs)
    )
}

/// The days of a gap with the name of the break in it.
pub(super) fn gap_days(garden: &Garden, words: Words, unattended: &Unattended) -> String {
    let gap = unattended.gap;
    let name = garden
        .school_year
        .breaks
        .iter()
        .find(|b| gap.touches(b.from, b.to))
        .map_or_else(String::new, |b| format!(" ({})", b.name));
    format!("{}{name}", words.days(gap.from, gap.to))
}

/// What needs care: a seedbed, seedlings, potted seedlings.
fn what(view: &View<'_>, ingredient: &str, kind: StepKind) -> String {
    let indoor = view
        .plantings_named(ingredient)
        .any(|p| p.method == Method::Indoor);
    (step_words::of(kind).tended)(ingredient, indoor)
}

/// Writes who does the steps that children of the grade that sowed do not do.
pub(super) fn other_hands(view: &View<'_>, page: &mut Page) {
    let mut lines = Vec::new();
    for (planting, ingredient) in view.planted() {
        lines.extend(by_adults(view, planting, &ingredient.name));
        lines.extend(taken_over(view, planting, ingredient));
    }
    if lines.is_empty() {
        return;
    }
    page.heading("Not done by the children who sowed");
    for line in lines {
        page.item(&line);
    }
}

/// Steps of families, of an adult, and of whoever is there every day.
fn by_adults(view: &View<'_>, planting: &Planting, ingredient: &str) -> Vec<String> {
    let mut lines = Vec::new();
    for steps in planting.steps.chunk_by(|a, b| a.kind == b.kind) {
        let Some(step) = steps.first() else { continue };
        let what = format!(
            "{} {ingredient}",
            step_words::name(planting.method, step.kind).to_lowercase()
        );
        let families = days_of(view, steps, |w| match w {
            When::Families(day) => Some(*day),
            _ => None,
        });
        let adult = days_of(view, steps, |w| match w {
            When::Adult(day) => Some(*day),
            _ => None,
        });
        lines.extend(families.map(|days| format!("Families {what}: {days}.")));
        lines.extend(adult.map(|days| format!("An adult: {what}, {days}.")));
        if let When::Daily { from, to } = step.when {
            let days = match step.kind.follows_harvest() {
                true => steps::cure_text(from, to, view.words),
                false => format!("every day, {}", view.words.days(from, to)),
            };
            lines.push(format!("Whoever is there: {what}, {days}."));
        }
    }
    lines
}

/// The days on which certain hands do a step, with "or" between; `None` if never.
fn days_of(view: &View<'_>, steps: &[Step], day: impl Fn(&When) -> Option<Date>) -> Option<String> {
    let days: Vec<String> = steps
        .iter()
        .filter_map(|s| day(&s.when))
        .map(|d| view.words.day(d))
        .collect();
    (!days.is_empty()).then(|| choice(&days))
}

/// Which later steps of a planting other children do.
fn taken_over(view: &View<'_>, planting: &Planting, ingredient: &Ingredient) -> Option<String> {
    let moves_up = view.garden.school_year.moves_up?;
    let grade = view.grade_of(planting)?;
    let by_others = |step: &&Step| {
        by_children(step)
            && step
                .when
                .first()
                .is_some_and(|day| !view.garden.same_children(grade, day))
    };
    let kinds: BTreeSet<StepKind> = planting
        .steps
        .iter()
        .filter(by_others)
        .map(|s| s.kind)
        .collect();
    let names: Vec<String> = kinds
        .iter()
        .map(|k| step_words::name(planting.method, *k).to_lowercase())
        .collect();
    (!names.is_empty()).then(|| {
        format!(
            "The children then in {}: {} {}, after moving up on {}.",
            view.grade_name(view.garden.tending(grade, moves_up)),
            list(&names),
            ingredient.name,
            view.words.day(moves_up)
        )
    })
}
