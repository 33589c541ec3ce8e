//! Lesson time: how many of its sessions each class gives, how many minutes, and the fullest.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::{ClassAt, GradeAt};
use crate::plan::{Plan, When};
use crate::units::Minutes;

use super::page::Page;
use super::view::View;
use super::words::minutes;

/// Minutes that each class gives on each day on which it has something to do.
fn minutes_by_class(plan: &Plan) -> BTreeMap<&str, BTreeMap<Date, f64>> {
    let mut used: BTreeMap<&str, BTreeMap<Date, f64>> = BTreeMap::new();
    for step in plan.plantings.iter().flat_map(|p| &p.steps) {
        if let When::Sessions(visits) = &step.when {
            for visit in visits {
                *used
                    .entry(&visit.class)
                    .or_default()
                    .entry(visit.date)
                    .or_default() += step.minutes.0;
            }
        }
    }
    used
}

/// Writes a row for every class.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("Lesson time");
    let used = minutes_by_class(view.plan);
    let rows: Vec<Vec<String>> = view
        .garden
        .grade_positions()
        .flat_map(|g| view.garden.classes_of(g))
        .map(|class| lesson_row(view, class, &used))
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

fn lesson_row(
    view: &View<'_>,
    class: ClassAt,
    used: &BTreeMap<&str, BTreeMap<Date, f64>>,
) -> Vec<String> {
    let name = view.garden.class(class).name.as_str();
    let none = BTreeMap::new();
    let days = used.get(name).unwrap_or(&none);
    let fullest = days
        .iter()
        .max_by(|a, b| a.1.total_cmp(b.1).then(b.0.cmp(a.0)))
        .map_or_else(String::new, |(day, used)| {
            format!(
                "{}: {} of {}",
                view.words.day(*day),
                minutes(Minutes(*used)),
                minutes(view.garden.session_minutes(class, *day))
            )
        });
    vec![
        view.grade_name(class.grade).to_owned(),
        name.to_owned(),
        format!("{} of {}", days.len(), view.garden.sessions(class).len()),
        minutes(Minutes(days.values().sum())),
        fullest,
    ]
}

/// What a grade's classes give at the most: sessions, minutes in all, minutes of one session.
pub(super) struct Given {
    pub sessions: usize,
    pub all: Minutes,
    pub fullest: Minutes,
}

/// What the classes of a grade give at the most, each by itself; `None` where they have nothing to
/// do.
pub(super) fn of_grade(view: &View<'_>, grade: GradeAt) -> Option<Given> {
    let used = minutes_by_class(view.plan);
    let classes = view.garden.classes_of(grade);
    classes
        .filter_map(|class| used.get(view.garden.class(class).name.as_str()))
        .map(|days| Given {
            sessions: days.len(),
            all: Minutes(days.values().sum()),
            fullest: Minutes(days.values().copied().fold(0.0, f64::max)),
        })
        .reduce(|a, b| Given {
            sessions: a.sessions.max(b.sessions),
            all: a.all.max(b.all),
            fullest: a.fullest.max(b.fullest),
        })
}
