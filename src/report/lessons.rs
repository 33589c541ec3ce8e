//! Lesson time: how many of its sessions each class gives, how many minutes, and the fullest.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::garden::ClassAt;
use crate::plan::{Plan, When};
use crate::units::Minutes;

use super::page::Page;
use super::view::View;
use super::words::{list, minutes};

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

/// Writes a row for every grade that has something to do.
pub(super) fn by_grade(view: &View<'_>, page: &mut Page) {
    page.heading("Lesson time");
    let used = minutes_by_class(view.plan);
    let row = |grade| {
        let classes: Vec<ClassAt> = view.garden.classes_of(grade).collect();
        let days = |class: &ClassAt| used.get(view.garden.class(*class).name.as_str());
        let most = |of: &dyn Fn(&BTreeMap<Date, f64>) -> f64| {
            classes.iter().filter_map(days).map(of).fold(0.0, f64::max)
        };
        let names: Vec<&str> = classes
            .iter()
            .map(|class| view.garden.class(*class).name.as_str())
            .collect();
        let (sessions, all) = (most(&|d| d.len() as f64), most(&|d| d.values().sum()));
        let fullest = most(&|d| d.values().copied().fold(0.0, f64::max));
        (sessions > 0.0).then(|| {
            vec![
                view.grade_name(grade).to_owned(),
                list(&names),
                format!("{sessions:.0}"),
                minutes(Minutes(all)),
                minutes(Minutes(fullest)),
            ]
        })
    };
    let rows: Vec<Vec<String>> = view.garden.grade_positions().filter_map(row).collect();
    page.table(
        &[
            "Grade",
            "Classes",
            "Sessions, at most",
            "Minutes in all, at most",
            "Fullest session",
        ],
        &rows,
        &[2, 3, 4],
    );
    page.line("Of each class, in sessions that it has anyway.");
}
