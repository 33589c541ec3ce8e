//! One key of a section [crop."..."] put in the place of a figure, and what is said where it has no effect.

use crate::diagnostic::{Code, Problem, Span};

use super::super::kind::Kind;
use super::super::table::Table;

/// A key with its meaning and the figures of the catalogue whose place it takes.
pub(super) type Own = (&'static str, &'static str, &'static [&'static str]);

/// Puts a figure in its place if the file gives it.
pub(super) fn set<T>(t: &mut Table<'_, '_>, own: Own, kind: Kind<'_, T>, put: impl FnOnce(T)) {
    let (key, meaning, figures) = own;
    if let Ok(Some(given)) = t.own(key, meaning, figures, kind) {
        put(given.value);
    }
}

/// Says that a key has no effect, and why.
pub(super) fn without_effect(t: &mut Table<'_, '_>, span: Span, why: &str) {
    let problem = Problem::new(Code::KeyWithoutEffect, format!("this has no effect: {why}"));
    t.report(problem.at(span, "").remedy("remove it"));
}
