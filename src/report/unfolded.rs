//! What `tureen plan` prints first while the season is under way: as of which day, what moves and why, and what it
//! costs.

use crate::checker::CheckedPlan;
use crate::facts::unfolded::{changes, years};
use crate::page::Page;
use crate::pipeline::Unfolded;
use crate::words::{Words, unfolded as said};

/// As of which day is planned: the first lines, also where there is no plan.
#[must_use]
pub fn as_of(unfolded: &Unfolded) -> Page {
    let mut page = Page::new();
    page.paragraph(&said::as_of(unfolded, Words::of(&unfolded.garden)));
    page
}

/// A plan that was made again, with what it changes before it.
#[must_use]
pub fn unfolded(checked: &CheckedPlan, unfolded: &Unfolded, plan: Page) -> Page {
    let mut page = as_of(unfolded);
    let changes = changes(unfolded, checked.plan());
    let row = |change| said::row(&unfolded.garden, change);
    let rows: Vec<Vec<String>> = changes.iter().map(row).collect();
    match rows.is_empty() {
        true => page.line("No date moves."),
        false => {
            page.heading("What changes");
            page.table(&["Who", "What", "Was", "Now", "Because"], &rows, &[]);
        }
    }
    let weather_years = checked.plan().promise.weather_years;
    page.line(&said::years(&years(unfolded, checked), weather_years));
    if let Some(text) = said::without_effect(&unfolded.without_effect) {
        page.line(&text);
    }
    page.gap();
    page.append(plan);
    page
}
