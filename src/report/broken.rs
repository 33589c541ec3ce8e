//! Broken rules in plain words: one sentence per fault, grouped by rule.

mod faults;

use crate::checker::Violation;
use crate::garden::Garden;
use crate::plan::Rule;

use super::page::Page;
use super::words::{Words, count};

/// What `tureen verify` prints for a plan that breaks rules.
#[must_use]
pub fn broken(garden: &Garden, violations: &[Violation]) -> Page {
    let mut page = Page::new();
    let found = u32::try_from(violations.len()).unwrap_or(u32::MAX);
    page.title(&format!(
        "The plan breaks the rules in {}.",
        count(found, "place")
    ));
    let words = Words::of(garden);
    for rule in Rule::ALL {
        let mut faults = violations.iter().filter(|v| v.rule == rule).peekable();
        if faults.peek().is_none() {
            continue;
        }
        page.heading(rule.name());
        page.line(rule.sentence());
        for violation in faults {
            page.item(&faults::sentence(&violation.fault, words));
        }
    }
    page
}

/// One fault as a sentence.
pub(super) fn in_words(fault: &crate::checker::Fault, words: Words) -> String {
    faults::sentence(fault, words)
}

/// The name of a step without regard to the way of growing.
pub(super) fn kind(kind: crate::plan::StepKind) -> &'static str {
    faults::kind(kind)
}

/// What `tureen verify` prints for a plan that keeps every rule.
#[must_use]
pub fn sound(garden: &Garden, checked: &crate::checker::CheckedPlan) -> Page {
    let view = super::view::View::new(garden, checked);
    let mut page = Page::new();
    page.title("The plan keeps every rule.");
    page.paragraph(&super::verdict::sentence(&view));
    page
}
