//! Broken rules in plain words: one sentence per fault, grouped by rule.

use crate::checker::Violation;
use crate::garden::Garden;
use crate::plan::Rule;

use crate::page::Page;
use crate::words::rule_words::rule_sentence;
use crate::words::{Words, count, faults};

/// What is printed of a plan that breaks rules.
#[must_use]
pub fn broken(garden: &Garden, violations: &[Violation]) -> Page {
    let mut page = Page::new();
    write(garden, violations, &mut page);
    page
}

/// The same of a plan that the program made itself.
#[must_use]
pub fn broken_by_program(garden: &Garden, violations: &[Violation]) -> Page {
    let mut page = broken(garden, violations);
    page.paragraph(
        "The program made this plan itself, so this is a fault of the program. Please report it \
         with the project file.",
    );
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
        page.line(rule_sentence(rule));
        for violation in faults {
            page.item(&faults::told(&violation.fault, words).sentence());
        }
    }
}
