//! What a person changed is kept beside the new file, once, under a name that says so.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::beside;

/// The name under which what a person changed is kept beside the new file: `plan.html` as
/// `plan.edited.html`, then `plan.edited-2.html`.
#[must_use]
pub fn kept_name(name: &str, time: usize) -> String {
    let which = match time {
        0 | 1 => "edited".to_owned(),
        n => format!("edited-{n}"),
    };
    match name.rsplit_once('.') {
        Some((stem, ending)) if !stem.is_empty() => format!("{stem}.{which}.{ending}"),
        _ => format!("{name}.{which}"),
    }
}

/// Gives a file a second name beside its own, before something else takes its place. A run that
/// was killed after this may have done so already; then it is not done again.
pub fn keep(path: &Path) -> io::Result<PathBuf> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let mut time = 1;
    loop {
        let kept = path.with_file_name(kept_name(&name, time));
        match second_name(path, &kept) {
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                if fs::read(path)? == fs::read(&kept).unwrap_or_default() {
                    return Ok(kept);
                }
                time += 1;
            }
            other => return other.map(|()| kept),
        }
    }
}

/// A second name for the same file where the disk has that, else a copy.
fn second_name(path: &Path, kept: &Path) -> io::Result<()> {
    match fs::hard_link(path, kept) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists => {
            let mut copy = beside::new_file(kept)?;
            copy.write_all(&fs::read(path)?)?;
            copy.as_file()
                .set_permissions(fs::metadata(path)?.permissions())?;
            copy.as_file().sync_all()?;
            copy.persist_noclobber(kept)?;
            Ok(())
        }
        other => other,
    }
}
