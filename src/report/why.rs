//! Why there is no plan, and what would give one: every repair named here was made, planned and
//! checked.

use crate::checker::CheckedPlan;
use crate::explain::{Diagnosis, Kind, Repair};
use crate::facts::Facts;
use crate::facts::no_plan::Hindrance;
use crate::facts::space::{all_strips, most};
use crate::garden::Garden;
use crate::project::Change;

use super::no_plan;
use super::space::weeks_of;
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::promise;
use crate::words::repairs::what_changes;
use crate::words::view::{View, readiness};
use crate::words::{count, list, sentence};

/// What `tureen why` prints when no plan keeps the rules.
#[must_use]
pub fn why_no_plan(garden: &Garden, found: &Hindrance, diagnosis: &Diagnosis) -> Page {
    let mut page = Page::new();
    no_plan::in_the_way(garden, found, &mut page);
    if diagnosis.cut_short {
        page.paragraph("Time ran out before all changes were tried; --time-limit gives more time.");
    }
    if garden.ingredients.len() > 1 {
        page.heading("The heart of it");
        page.line(&heart(garden, diagnosis));
    }
    page.heading("What would be enough");
    if let Some(several) = &diagnosis.together {
        together(garden, diagnosis, several, &mut page);
    }
    match (diagnosis.repairs.is_empty(), &diagnosis.together) {
        (false, None) => page.line("Each of these is enough by itself. All were planned and checked."),
        (false, Some(_)) => {
            page.gap();
            page.line("Each of these is enough by itself too.");
        }
        (true, None) => page.line(
            "Nothing that was tried: fewer grams, other crops, freezing or drying, a later day for the kitchen, more \
             flats, beds, minutes and sessions, someone there in the breaks, fleece, other days.",
        ),
        (true, Some(_)) => {}
    }
    for repair in &diagnosis.repairs {
        page.gap();
        repaired(garden, repair, &mut page);
    }
    page
}

/// What `tureen why` prints where there is a plan.
#[must_use]
pub fn plan_exists(garden: &Garden, checked: &CheckedPlan) -> Page {
    let mut page = Page::new();
    page.paragraph(&occasion(garden));
    page.title(&format!(
        "There is a plan. {}",
        promise::sentence(&View::of(&Facts::new(garden, checked)))
    ));
    page
}

/// The fewest ingredients that do not go together.
fn heart(garden: &Garden, diagnosis: &Diagnosis) -> String {
    match diagnosis.hopeless.as_slice() {
        [] if !diagnosis.conflict_is_least => format!(
            "{} do not go together. Whether fewer of them would was not settled in the time allowed.",
            sentence(&list(&diagnosis.conflict))
        ),
        [] if diagnosis.conflict.len() == garden.ingredients.len() => {
            "All ingredients together are too much; with any one fewer the others fit.".to_owned()
        }
        [] => format!(
            "{} alone do not go together, whatever else is grown; with any one of them fewer the \
             others of them fit.",
            sentence(&list(&diagnosis.conflict))
        ),
        [one] => format!(
            "{} cannot be in the pot, even if it were the only ingredient.",
            sentence(one)
        ),
        several => format!(
            "{} cannot be in the pot, even if each were the only ingredient.",
            sentence(&list(several))
        ),
    }
}

/// A repair of several changes.
fn together(garden: &Garden, diagnosis: &Diagnosis, several: &Repair, page: &mut Page) {
    page.line(match diagnosis.repairs.is_empty() {
        true => {
            "No single change that was tried is enough. All of these together are; the plan was \
             made and checked."
        }
        false => "All of these together are enough; the plan was made and checked.",
    });
    page.gap();
    repaired(garden, several, page);
}

/// What a repair changes, and what comes of it.
fn repaired(garden: &Garden, repair: &Repair, page: &mut Page) {
    for kind in &repair.kinds {
        page.item(&what_changes(garden, kind));
    }
    outcome(garden, repair, page);
}

/// What comes of a repair, and how `tureen try` takes it.
fn outcome(garden: &Garden, repair: &Repair, page: &mut Page) {
    if let Ok(checked) = &repair.trial.outcome {
        let facts = Facts::new(&repair.trial.garden, checked);
        let view = View::of(&facts);
        page.entry(
            "",
            0,
            &format!(
                "Then the whole dish is ready in {} years{}.",
                readiness(view.promised()),
                promise::unseen(&view)
            ),
        );
    }
    for text in new_room(garden, repair) {
        page.entry("", 0, &text);
    }
    for change in &repair.trial.changes {
        match change {
            Change::Set(text) => page.entry("", 0, &format!("To try it: --set '{text}'")),
            Change::OtherDay(_) | Change::OtherDish(_) => {}
        }
    }
}

/// When the plan of a repair uses more room than there is now.
fn new_room(garden: &Garden, repair: &Repair) -> Vec<String> {
    let Ok(checked) = &repair.trial.outcome else {
        return Vec::new();
    };
    let facts = Facts::new(&repair.trial.garden, checked);
    let view = View::of(&facts);
    let flats = garden.shelf.flats;
    let beds = view.all_beds_use().weeks;
    let strips = all_strips(garden);
    let room = |kind: &Kind| match kind {
        Kind::MoreFlats { .. } => wanted(&view, &view.replay.flats_by_week, flats, "flat"),
        Kind::MoreBeds { .. } => wanted(&view, &beds, strips, "strip"),
        _ => None,
    };
    repair.kinds.iter().filter_map(room).collect()
}

/// `In the weeks of 12 Apr to 26 Apr up to 6 flats are wanted, 4 stand ready.`
fn wanted(view: &View<'_>, by_week: &[u32], there: u32, thing: &str) -> Option<String> {
    let weeks = weeks_of(view, by_week, |used| used > there)?;
    let most = most(by_week).unwrap_or(0);
    Some(format!(
        "In {weeks} up to {} are wanted, {} ready.",
        count(most, thing),
        match there {
            1 => "1 stands".to_owned(),
            n => format!("{n} stand"),
        }
    ))
}
