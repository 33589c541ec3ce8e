//! The principal's page: beds and shelf over the weeks against what there is, how little of them
//! would do, lesson time per class, and the days on which people must be found.

use std::collections::BTreeMap;

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::explain::LeastSpace;
use crate::garden::{ClassAt, Garden};
use crate::plan::{Plan, When};
use crate::units::Minutes;

use super::page::{Look, Page};
use super::screen::occasion;
use super::view::View;
use super::words::minutes;
use super::{care, least_space, space, verdict};

/// What `tureen show --space` prints.
#[must_use]
pub fn principal(garden: &Garden, checked: &CheckedPlan, least: &LeastSpace, look: Look) -> String {
    let view = View::new(garden, checked);
    let mut page = Page::new(look);
    page.title(&occasion(garden));
    page.paragraph(&verdict::sentence(&view));
    space::write(&view, &mut page);
    least_space::write(&view, least, &mut page);
    lessons(&view, &mut page);
    care::gaps(&view, &mut page);
    care::other_hands(&view, &mut page);
    page.finish()
}

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

fn lessons(view: &View<'_>, page: &mut Page) {
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
