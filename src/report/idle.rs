//! Grades that grow nothing in a plan, in words: why, and what they can do all the same.

use crate::facts::idle::Idle;
use crate::garden::GradeAt;

use crate::page::Page;
use crate::words::idle::{INSTEAD, because};
use crate::words::list;
use crate::words::view::View;

/// A line for each reason, with the grades of which it is true.
pub(super) fn lines(view: &View<'_>) -> Vec<String> {
    let line = |(why, grades): (Idle, Vec<GradeAt>)| {
        let names: Vec<&str> = grades.iter().map(|g| view.grade_name(*g)).collect();
        let [grow, whose, they, whom] = match names.len() {
            1 => ["grows", "its", "It", "it"],
            _ => ["grow", "their", "They", "them"],
        };
        format!(
            "{} {grow} nothing of {whose} own: {}. {they} can {INSTEAD}. To change that, add an \
             ingredient, or name another grade in the `grade` of one.",
            list(&names),
            because(why, whom),
        )
    };
    view.idle_grades().into_iter().map(line).collect()
}

/// Which grades grow nothing, and no more.
pub(super) fn in_short(view: &View<'_>) -> Option<String> {
    let idle = view.idle_grades();
    let grades = idle.iter().flat_map(|(_, grades)| grades);
    let names: Vec<&str> = grades.map(|g| view.grade_name(*g)).collect();
    let grow = if names.len() == 1 { "grows" } else { "grow" };
    (!names.is_empty()).then(|| format!("{} {grow} nothing of their own.", list(&names)))
}

/// What its own page says.
pub(super) fn on_its_page(view: &View<'_>, grade: GradeAt, page: &mut Page) {
    if let Some(why) = view.idle(grade) {
        page.heading("What we do instead");
        page.line(&format!(
            "We grow nothing of our own: {}. We can {INSTEAD}. Ask the coordinator when.",
            because(why, "us")
        ));
    }
}
