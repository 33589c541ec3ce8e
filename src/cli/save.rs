//! Saving a text so that the old one is lost only when the new one is whole.

use std::path::Path;

use crate::handouts::folder::unfinished;

use super::answer::Trouble;

/// Writes beside the old file first, then takes its place. What is no file, such as a pipe,
/// is written to as it is, never replaced.
pub(super) fn save(path: &Path, text: &str) -> Result<(), Trouble> {
    let written = if path.exists() && !path.is_file() {
        std::fs::write(path, text)
    } else {
        replace(path, text)
    };
    written.map_err(|error| Trouble::writing(path, &error))
}

fn replace(path: &Path, text: &str) -> std::io::Result<()> {
    let unfinished = unfinished(path);
    std::fs::write(&unfinished, text)
        .and_then(|()| std::fs::rename(&unfinished, path))
        .inspect_err(|_| {
            // It may never have been made.
            let _ = std::fs::remove_file(&unfinished);
        })
}
