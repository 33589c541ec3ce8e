//! What must be known of a saved plan before anything else is read of it: that it was edited, or
//! that the project has changed since it was made.

use crate::checker::{Changed, CheckedPlan, Fault, Quantity, Refused, Standing};
use crate::facts::Facts;
use crate::garden::Garden;
use crate::plan::saved::Since;

use super::broken;
use crate::page::Page;
use crate::words::view::View;
use crate::words::{Words, count, faults, promise};

/// So many figures that have changed are told.
const MOST_FIGURES: usize = 12;

/// A page of a saved plan, opened by what happened since it was made.
#[must_use]
pub fn opened(garden: &Garden, checked: &CheckedPlan, page: Page) -> Page {
    let mut opened = Page::new();
    write(&View::of(&Facts::new(garden, checked)), &mut opened);
    if !opened.blocks().is_empty() {
        opened.gap();
    }
    opened.append(page);
    opened
}

/// Writes what happened since a plan was made, with the figures that are others now.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    notice(view, page);
    figures(view, page);
}

/// Writes the figures that are others now than when a plan was made.
pub(super) fn figures(view: &View<'_>, page: &mut Page) {
    if let Standing::Changed(changed) = view.standing() {
        differences(changed, view.words, page);
    }
}

/// Writes what happened since a plan was made, in a sentence or two.
pub(super) fn notice(view: &View<'_>, page: &mut Page) {
    match view.standing() {
        Standing::Planned | Standing::Saved => {}
        Standing::Edited => page.title(
            "This plan was edited since it was made. It keeps every rule; whether a better one is \
             possible is not known.",
        ),
        Standing::Changed(changed) => {
            let figures = match changed.differences.len() {
                0 => "All its figures still hold".to_owned(),
                n => format!("It keeps every rule, but {} changed", count(n, "figure")),
            };
            page.title(&format!(
                "{}. {figures}; whether a better plan is possible now is not known.",
                has_changed(changed)
            ));
        }
    }
}

/// What has changed, and what to do about it.
fn has_changed(changed: &Changed) -> String {
    let what = match changed.since {
        Since::ProjectChanged | Since::Edited => "project",
        Since::ProgramChanged => "program, and perhaps the project,",
        Since::Nothing => "program",
    };
    format!("The {what} has changed since this plan was made: plan again, or see what still holds")
}

/// The figures that are others now, the most important first.
fn differences(changed: &Changed, words: Words, page: &mut Page) {
    let all = &changed.differences;
    if all.is_empty() {
        return;
    }
    page.heading("What has changed (in the plan -> now)");
    for difference in all.iter().take(MOST_FIGURES) {
        page.item(&faults::difference(difference, words));
    }
    let rest = all.get(MOST_FIGURES..).unwrap_or_default();
    if !rest.is_empty() {
        let minutes = rest.iter().all(|d| d.what == Quantity::Minutes);
        let what = if minutes { " (minutes of steps)" } else { "" };
        page.item(&format!("And {} more{what}.", count(rest.len(), "figure")));
    }
}

/// What `tureen verify` prints for a plan that keeps every rule.
#[must_use]
pub fn sound(garden: &Garden, checked: &CheckedPlan) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.title("The plan keeps every rule.");
    write(&view, &mut page);
    page.paragraph(&promise::sentence(&view));
    page
}

/// What is printed of a saved plan that breaks rules.
#[must_use]
pub fn refused(garden: &Garden, refused: &Refused) -> Page {
    let mut page = Page::new();
    match &refused.standing {
        Standing::Planned | Standing::Saved => {
            broken::write(garden, &refused.violations, &mut page);
        }
        Standing::Edited => {
            broken::write(garden, &refused.violations, &mut page);
            page.gap();
            page.paragraph(&remedy(refused));
        }
        Standing::Changed(changed) => {
            page.title(&format!("{}.", has_changed(changed)));
            if !missing(refused, &mut page) {
                differences(changed, Words::of(garden), &mut page);
                page.gap();
                broken::write(garden, &refused.violations, &mut page);
            }
        }
    }
    page
}

/// What to do about an edited plan that breaks rules.
fn remedy(refused: &Refused) -> String {
    let is_figure = |fault: &Fault| matches!(fault, Fault::Number { .. } | Fault::Aim { .. });
    let figures = refused.violations.iter().any(|v| is_figure(&v.fault));
    let correct = if figures {
        " Where a figure is wrong, write the right one into the file; the list `aims` may be left \
         empty."
    } else {
        ""
    };
    format!(
        "The file was edited since the program wrote it.{correct} If the project was changed as \
         well, plan again."
    )
}

/// Writes the names that the project no longer has; false if it has all.
fn missing(refused: &Refused, page: &mut Page) -> bool {
    let unknown = |fault: &Fault| match fault {
        Fault::Unknown { kind, name } => Some(format!("{} \"{name}\"", faults::named(*kind))),
        _ => None,
    };
    let names: Vec<String> = refused
        .violations
        .iter()
        .filter_map(|v| unknown(&v.fault))
        .collect();
    if names.is_empty() {
        return false;
    }
    page.heading("The plan names what the project no longer has");
    for name in &names {
        page.item(&format!("{name}."));
    }
    page.gap();
    page.line(
        "Where only a name was changed, change it back to see what still holds. What else has \
         changed is told after that.",
    );
    true
}
