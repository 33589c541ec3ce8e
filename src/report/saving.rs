//! What is said where a file was saved and something stood there, or a killed run left something.

use std::path::Path;

use crate::disk::Saved;
use crate::harmless;

/// What was done beside writing a file; a line each, often none.
#[must_use]
pub fn saved_beside(path: &Path, saved: &Saved) -> String {
    let kept = saved.kept.iter().map(|now| kept(path, now));
    let lines = kept.chain(saved.cleared.iter().map(|rest| cleared(rest)));
    lines.map(|line| line + "\n").collect()
}

/// A rest of a killed run was removed.
pub(super) fn cleared(rest: &Path) -> String {
    let rest = harmless::path(rest);
    format!("A run that was broken off had left {rest}; it was needed no longer and is gone.")
}

/// A file that a person changed is kept under another name.
pub(super) fn kept(was: &Path, now: &Path) -> String {
    let (was, now) = (harmless::path(was), harmless::path(now));
    format!("Your own {was} is kept as {now}.")
}
