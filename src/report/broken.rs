//! Broken rules in plain words: one sentence per fault, grouped by rule.

mod faults;

use crate::checker::{Difference, Violation};
use crate::garden::Garden;
use crate::plan::Rule;

use crate::page::Page;
use crate::words::{Words, count};

/// What is printed of a plan that breaks rules.
#[must_use]
pub fn broken(garden: &Garden, violations: &[Violation]) -> Page {
    let mut page = Page::new();
    write(garden, violations, &mut page);
    page
}

/// Writes every broken rule with its faults.
pub(super) fn write(garden: &Garden, violations: &[Violation], page: &mut Page) {
    page.title(&format!(
        "The plan breaks the rules in {}.",
        count(violations.len(), "place")
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
}

/// A figure that is another now: `carrot, ready years: 27 -> 25`.
pub(super) fn difference(difference: &Difference, words: Words) -> String {
    faults::difference(difference, words)
}

/// One fault as a sentence.
pub(super) fn in_words(fault: &crate::checker::Fault, words: Words) -> String {
    faults::sentence(fault, words)
}

/// What kind of thing a name stands for.
pub(super) fn named(kind: crate::checker::Named) -> &'static str {
    faults::named(kind)
}
