//! The folder of handouts: it is built beside its place and then takes it, so it is there whole
//! or not at all. What a person added stays, what a person changed is kept under another name.

mod file;
mod manifest;
mod people;
mod recover;

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

use crate::disk::{self, Building, Lock, Parents};
use crate::report::folder::{FolderError, Recovered};

pub use crate::report::folder::Written;
pub use file::File;
pub use manifest::MANIFEST;

use manifest::Manifest;
use people::Plan;
use recover::recover;

/// A place at which the folder may be written.
#[derive(Debug)]
pub struct FolderPlace {
    target: PathBuf,
    standing: Standing,
    /// Keeps other runs away from a folder that stands there.
    lock: Option<Lock>,
    parents: Parents,
    recovered: Recovered,
}

/// What stands at the folder's place.
#[derive(Debug)]
enum Standing {
    /// Nothing, or an empty folder.
    Free,
    /// A folder that was written here, with the list of its files.
    Ours(Manifest),
}

impl FolderPlace {
    /// Looks at a place, sets right what a run left that was broken off, and tries whether a
    /// folder can be made there.
    ///
    /// # Errors
    /// Why no folder could be written there.
    pub fn tried(dir: &Path) -> Result<Self, FolderError> {
        let recovered = recover(&target(dir)?)?;
        let target = target(dir)?;
        let (standing, lock) = standing(&target)?;
        let parents = Parents::make(target.parent().unwrap_or(Path::new("")))?;
        disk::try_beside(&target)?;
        Ok(Self {
            target,
            standing,
            lock,
            parents,
            recovered,
        })
    }

    /// Writes the folder.
    ///
    /// # Errors
    /// Why not; what stood there before is then as it was, and nothing is left beside it.
    pub fn write(self, files: &[File]) -> Result<Written, FolderError> {
        check_names(files)?;
        let target = &self.target;
        let plan = match &self.standing {
            Standing::Free => Plan::default(),
            Standing::Ours(list) => Plan::of(target, list, files)?,
        };
        let list = Manifest::of(files).to_bytes();
        let building = Building::beside(target, MANIFEST, &list)?;
        for file in files {
            building.write(&file.path, &file.bytes)?;
        }
        for folder in &plan.folders {
            building.make_folder(folder)?;
        }
        for (from, to) in &plan.carried {
            building.carry(&target.join(from), to)?;
        }
        let retired = building.take_place(target)?;
        self.parents.keep()?;
        let mut recovered = self.recovered;
        if let Some(old) = retired {
            let known: BTreeSet<String> = plan.found.iter().map(|(path, _)| path.clone()).collect();
            recover::remove(&old, &known, &mut recovered);
        }
        drop(self.lock);
        Ok(Written {
            files: files.len(),
            kept: plan.kept(),
            removed: plan.removed,
            recovered,
        })
    }
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
fn standing(target: &Path) -> Result<(Standing, Option<Lock>), FolderError> {
    let mut entries = match fs::read_dir(target) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok((Standing::Free, None)),
        Err(error) => return Err(FolderError::Failed(target.to_owned(), error)),
    };
    if entries.next().is_none() {
        return Ok((Standing::Free, None));
    }
    let list = target.join(MANIFEST);
    match fs::symlink_metadata(&list) {
        Ok(found) if found.is_file() => {
            let lock = Lock::on(&list)?.ok_or_else(|| FolderError::Busy(target.to_owned()))?;
            Ok((Standing::Ours(Manifest::read(&list)?), Some(lock)))
        }
        _ => Err(FolderError::NotOurs(target.to_owned())),
    }
}
