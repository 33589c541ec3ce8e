//! What is done and when: every planting's steps with dates per class.

use crate::garden::{GradeAt, HandOver, Method};
use crate::plan::Planting;

use crate::page::Page;
use crate::words::view::View;
use crate::words::{list, places, steps, tasks};

/// Width of the column of step names.
const LABEL: usize = 12;

/// All grades in order.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("What is done when");
    for grade in view.garden.grade_positions() {
        for (planting, _) in view.planted_by(grade) {
            page.line(&format!(
                "{}: {}",
                view.grade_name(grade),
                title(view, planting)
            ));
            steps_of(view, planting, page);
        }
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

/// `carrot, second sowing, bed 3, strips 1 to 6`.
pub(super) fn title(view: &View<'_>, planting: &Planting) -> String {
    let mut parts = vec![planting.ingredient.clone()];
    parts.extend(sowing(view, planting));
    match planting.method {
        Method::Patch => parts.push("from the standing patch".to_owned()),
        Method::Growing => parts.push("already growing".to_owned()),
        Method::Seedlings => parts.push("from seedlings on the shelf".to_owned()),
        Method::Direct | Method::Indoor | Method::Pieces | Method::Bought => {}
    }
    if !planting.places.is_empty() {
        parts.push(places::in_words(view.garden, &planting.places));
    }
    parts.join(", ")
}

/// `second sowing`, where an ingredient has several.
pub(super) fn sowing(view: &View<'_>, planting: &Planting) -> Option<String> {
    tasks::sowing(view.sowing_of(planting))
}

/// Who carries on after moving up; grades of which the same is true share a sentence.
fn hand_overs(view: &View<'_>) -> Vec<String> {
    let mut grades: Vec<(String, Vec<&str>)> = Vec::new();
    for grade in view.garden.grade_positions() {
        if let Some(text) = hand_over(view, grade) {
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

/// Who carries the grade's plantings on after moving up, if something is left to do then.
pub(super) fn hand_over(view: &View<'_>, grade: GradeAt) -> Option<String> {
    let over = view.handed_over(grade)?;
    let who = match over.to {
        HandOver::SameChildren => {
            "the same children carry on, one grade up (class names as before)".to_owned()
        }
        HandOver::SameGrade => format!(
            "the children who then enter {} take over",
            view.grade_name(grade)
        ),
        HandOver::Leaves { adopter } => format!("{} takes over", view.grade_name(adopter)),
    };
    Some(format!(
        "from {}, when the grades move up, {who}.",
        view.words.day(over.from)
    ))
}
