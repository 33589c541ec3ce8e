//! The folder of handouts: it is built beside its place and then takes it, so it is there whole
//! or not at all. What a person added stays, what a person changed is kept under another name.

mod beside;
mod file;
mod manifest;
mod people;

use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

use crate::report::folder::FolderError;

pub use beside::unfinished;
pub use file::File;
pub use manifest::MANIFEST;

use beside::{Fresh, retired};
use manifest::Manifest;
use people::Plan;

/// What was done.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Written {
    /// How many files were written, the list of them not counted.
    pub files: usize,
    /// What a person had changed, and the name under which it is kept, in order.
    pub kept: Vec<(String, String)>,
    /// Files that the program had written before and that are no longer needed, in order.
    pub removed: Vec<String>,
}

/// What stands at the folder's place.
enum Place {
    /// Nothing, or an empty folder.
    Free,
    /// A folder that was written here, with the list of its files.
    Ours(Manifest),
}

/// Writes a folder.
///
/// # Errors
/// Why not; what stood there before is then as it was, and nothing is left beside it.
pub fn write(dir: &Path, files: &[File]) -> Result<Written, FolderError> {
    check_names(files)?;
    let target = target(dir)?;
    let place = place(&target)?;
    let parents = beside::make_parents(&target)?;
    let fresh = Fresh::make(unfinished(&target))?;
    let written = build(&target, &place, &fresh, files)?;
    swap(&target, fresh.path())?;
    fresh.keep();
    parents.keep();
    Ok(written)
}

/// Every name is a plain way down from the folder, and no two are the same on any system.
fn check_names(files: &[File]) -> Result<(), FolderError> {
    let mut seen = std::collections::BTreeSet::from([MANIFEST.to_lowercase()]);
    for file in files {
        let mut parts = Path::new(&file.path).components();
        let plain = !file.path.is_empty()
            && !file.path.contains('\\')
            && parts.all(|part| matches!(part, Component::Normal(_)));
        if !plain || !seen.insert(file.path.to_lowercase()) {
            return Err(FolderError::BadName(file.path.clone()));
        }
    }
    Ok(())
}

/// The folder's own place: the way to it may go through links, it itself may be none.
fn target(dir: &Path) -> Result<PathBuf, FolderError> {
    let failed = |error| FolderError::Failed(dir.to_owned(), error);
    match fs::symlink_metadata(dir) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => {}
        Err(error) => return Err(failed(error)),
        Ok(found) if !found.is_dir() => return Err(FolderError::NotAFolder(dir.to_owned())),
        Ok(_) => {
            let real = fs::canonicalize(dir).map_err(failed)?;
            let here = std::env::current_dir().and_then(fs::canonicalize);
            if here.is_ok_and(|here| here.starts_with(&real)) {
                return Err(FolderError::NoName(dir.to_owned()));
            }
            return Ok(real);
        }
    }
    match dir.file_name() {
        Some(_) => Ok(dir.to_owned()),
        None => Err(FolderError::NoName(dir.to_owned())),
    }
}

/// What stands there; anything that is not ours is refused.
fn place(target: &Path) -> Result<Place, FolderError> {
    let mut entries = match fs::read_dir(target) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Place::Free),
        Err(error) => return Err(FolderError::Failed(target.to_owned(), error)),
    };
    if entries.next().is_none() {
        return Ok(Place::Free);
    }
    let list = target.join(MANIFEST);
    match fs::symlink_metadata(&list) {
        Ok(found) if found.is_file() => Manifest::read(&list).map(Place::Ours),
        _ => Err(FolderError::NotOurs(target.to_owned())),
    }
}

/// Puts everything into the new folder: our files, their list, what is a person's.
fn build(
    target: &Path,
    place: &Place,
    fresh: &Fresh,
    files: &[File],
) -> Result<Written, FolderError> {
    let plan = match place {
        Place::Free => Plan::default(),
        Place::Ours(list) => Plan::of(target, list, files)?,
    };
    for file in files {
        fresh.write(&file.path, &file.bytes)?;
    }
    fresh.write(MANIFEST, &Manifest::of(files).to_bytes())?;
    for folder in &plan.folders {
        fresh.make_folder(folder)?;
    }
    for (from, to) in &plan.carried {
        fresh.carry(&target.join(from), to)?;
    }
    Ok(Written {
        files: files.len(),
        kept: plan.kept(),
        removed: plan.removed,
    })
}

/// The new folder takes the place of the old one. Between two renames there is no folder of
/// that name; if the second fails, the first is undone.
fn swap(target: &Path, fresh: &Path) -> Result<(), FolderError> {
    let failed = |error| FolderError::Failed(target.to_owned(), error);
    if !target.exists() {
        return fs::rename(fresh, target).map_err(failed);
    }
    let old = retired(target);
    if fs::symlink_metadata(&old).is_ok() {
        return Err(FolderError::InTheWay(old));
    }
    fs::rename(target, &old).map_err(failed)?;
    fs::rename(fresh, target).map_err(|error| {
        // The old one goes back; where even that fails, it is whole under its other name.
        let _ = fs::rename(&old, target);
        failed(error)
    })?;
    // The new folder is in its place. A rest of the old one would do no harm.
    let _ = fs::remove_dir_all(&old);
    Ok(())
}
