//! Who must be found: gaps in which plants need daily care and nobody is on site, and
//! steps that are not done by the children who sowed.

use crate::checker::Unattended;
use crate::garden::{Garden, Method};
use crate::plan::{Step, StepKind, When};

use super::page::Page;
use super::steps;
use super::view::{View, by_children};
use super::words::{Dates, count, list};

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
        gap_days(view.garden, view.dates, unattended),
        list(&needs)
    )
}

/// The days of a gap with the name of the break in it.
pub(super) fn gap_days(garden: &Garden, dates: Dates, unattended: &Unattended) -> String {
    let gap = unattended.gap;
    let name = garden
        .school_year
        .breaks
        .iter()
        .find(|b| gap.touches(b.from, b.to))
        .map_or_else(String::new, |b| format!(" ({})", b.name));
    format!("{}{name}", dates.days(gap.from, gap.to))
}

/// What needs care: a seedbed, seedlings, potted seedlings.
fn what(view: &View<'_>, ingredient: &str, kind: StepKind) -> String {
    let indoor = view
        .plantings_named(ingredient)
        .any(|p| p.method == Method::Indoor);
    match kind {
        StepKind::Sow if indoor => format!("{ingredient} seedlings on the shelf"),
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
        for step in &planting.steps {
            let name = steps::name(planting.method, step.kind).to_lowercase();
            let what = format!("{name} {}", ingredient.name);
            match &step.when {
                When::Families(day) => {
                    lines.push(format!("Families: {what}, {}.", view.dates.day(*day)));
                }
                When::Adult(day) => {
                    lines.push(format!("An adult: {what}, {}.", view.dates.day(*day)));
                }
                When::Daily { from, to } => lines.push(format!(
                    "Every day, by whoever is on site: {what}, {}.",
                    view.dates.days(*from, *to)
                )),
                When::Sessions(_) => {}
            }
        }
        if let Some(line) = taken_over(view, planting.steps.iter(), ingredient.grade) {
            lines.push(format!("{}: {line}", ingredient.name));
        }
    }
    if lines.is_empty() {
        return;
    }
    page.heading("Not done by the children who sowed");
    for line in lines {
        page.item(&line);
    }
}

/// Which later steps of a planting other children do.
fn taken_over<'s>(
    view: &View<'_>,
    steps: impl Iterator<Item = &'s Step>,
    grade: crate::garden::GradeAt,
) -> Option<String> {
    let kinds: std::collections::BTreeSet<StepKind> = steps
        .filter(|s| by_children(s))
        .filter(|s| {
            s.when
                .first()
                .is_some_and(|day| !view.garden.same_children(grade, day))
        })
        .map(|s| s.kind)
        .collect();
    if kinds.is_empty() {
        return None;
    }
    let names: Vec<String> = kinds
        .iter()
        .map(|k| steps::name(Method::Direct, *k).to_lowercase())
        .collect();
    let moves_up = view.garden.school_year.moves_up?;
    let by = view.grade_name(view.garden.tending(grade, moves_up));
    Some(format!(
        "{} after moving up ({}) is done by the children then in {by}.",
        list(&names),
        view.dates.day(moves_up)
    ))
}
