//! Lesson time in words: a row for every class.

use crate::facts::lessons::Fullest;
use crate::garden::ClassAt;

use crate::page::Page;
use crate::words::minutes;
use crate::words::view::View;

/// Writes a row for every class.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("Lesson time");
    let rows: Vec<Vec<String>> = view
        .garden
        .grade_positions()
        .flat_map(|g| view.garden.classes_of(g))
        .map(|class| lesson_row(view, class))
        .collect();
    page.table(
        &[
            "Grade",
            "Class",
            "Sessions used",
            "Minutes in all",
            "Fullest session",
        ],
        &rows,
        &[2, 3],
    );
    page.gap();
    page.line(
        "Sessions are those that the class has anyway. A harvest may be one session of \
         several set aside for it, so the minutes are the most that can fall due.",
    );
}

fn lesson_row(view: &View<'_>, class: ClassAt) -> Vec<String> {
    let lessons = view.lessons_of(class);
    let fullest = lessons.fullest.map(|fullest: Fullest| {
        format!(
            "{}: {} of {}",
            view.words.day(fullest.day),
            minutes(fullest.minutes),
            minutes(fullest.of)
        )
    });
    vec![
        view.grade_name(class.grade).to_owned(),
        view.garden.class(class).name.clone(),
        format!("{} of {}", lessons.given, lessons.of),
        minutes(lessons.minutes),
        fullest.unwrap_or_default(),
    ]
}
