//! Who must be found: gaps in which plants need daily care and nobody is on site, and
//! steps that are not done by the children who sowed.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::facts::gaps::{Need, OpenGap};
use crate::garden::Ingredient;
use crate::plan::{Planting, Step, StepKind, When};

use super::page::Page;
use super::steps;
use super::view::View;
use super::words::{choice, count, list};
use crate::facts::spans::by_children;

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
    let ingredient = need.ingredient;
    match need.after {
        StepKind::Sow if need.on_shelf => format!("{ingredient} seedlings on the shelf"),
        StepKind::Sow => format!("the {ingredient} seedbed"),
        StepKind::PotUp => format!("potted {ingredient} seedlings"),
        StepKind::Harden => format!("{ingredient} plants that harden off"),
        StepKind::PlantOut => format!("newly planted {ingredient}"),
        StepKind::Thin => format!("thinned {ingredient}"),
        StepKind::Pick | StepKind::Cure => format!("the {ingredient} harvest"),
    }
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
            steps::name(planting.method, step.kind).to_lowercase()
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
            let days = match step.kind {
                StepKind::Cure => steps::cure_text(from, to, view.words),
                _ => format!("every day, {}", view.words.days(from, to)),
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
        .map(|k| steps::name(planting.method, *k).to_lowercase())
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
