//! What is done and when: every planting's steps with dates per class.

use crate::plan::Planting;

use crate::page::Page;
use crate::words::view::View;
use crate::words::{list, plantings, steps};

/// Width of the column of step names.
const LABEL: usize = 12;

/// All grades in order.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("What is done when");
    for (_, planting) in view.by_grade() {
        page.line(&plantings::with_grades(view, planting));
        steps_of(view, planting, page);
    }
    for note in hand_overs(view) {
        page.item(&note);
    }
}

/// The steps of one planting, a line each.
pub(super) fn steps_of(view: &View<'_>, planting: &Planting, page: &mut Page) {
    for (name, text) in steps::lines(planting, view.words) {
        page.entry(name, LABEL, &text);
    }
}

/// Who carries on after moving up; grades of which the same is true share a sentence.
fn hand_overs(view: &View<'_>) -> Vec<String> {
    let mut grades: Vec<(String, Vec<&str>)> = Vec::new();
    for grade in view.garden.grade_positions() {
        if let Some(text) = plantings::hand_over(view, grade) {
            let name = view.grade_name(grade);
            match grades.iter_mut().find(|(other, _)| *other == text) {
                Some((_, names)) => names.push(name),
                None => grades.push((text, vec![name])),
            }
        }
    }
    grades
        .into_iter()
        .map(|(text, names)| format!("{}: {text}", list(&names)))
        .collect()
}
