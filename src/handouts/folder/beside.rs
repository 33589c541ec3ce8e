//! Building beside a place: the names used there, the new folder, and clearing it away.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::report::folder::FolderError;

/// The name beside a file or folder under which its successor is built.
#[must_use]
pub fn unfinished(path: &Path) -> PathBuf {
    with_ending(path, "unfinished")
}

/// The name beside a folder that it has while its successor takes its place.
pub(super) fn retired(path: &Path) -> PathBuf {
    with_ending(path, "old")
}

fn with_ending(path: &Path, ending: &str) -> PathBuf {
    let mut name = path.as_os_str().to_owned();
    name.push(format!(".{}.{ending}", std::process::id()));
    PathBuf::from(name)
}

/// Folders made on the way to a place; cleared away again unless they are kept.
pub(super) struct Parents {
    made: Vec<PathBuf>,
    kept: bool,
}

/// Makes the folders above a place that are not there yet.
pub(super) fn make_parents(target: &Path) -> Result<Parents, FolderError> {
    let above = target.parent().unwrap_or(Path::new(""));
    let missing = above
        .ancestors()
        .take_while(|folder| !folder.as_os_str().is_empty() && !folder.exists());
    let mut missing: Vec<PathBuf> = missing.map(Path::to_owned).collect();
    missing.reverse();
    let mut parents = Parents {
        made: Vec::new(),
        kept: false,
    };
    for folder in missing {
        fs::create_dir(&folder).map_err(|error| FolderError::Failed(folder.clone(), error))?;
        parents.made.push(folder);
    }
    Ok(parents)
}

impl Parents {
    /// They stay.
    pub fn keep(mut self) {
        self.kept = true;
    }
}

impl Drop for Parents {
    fn drop(&mut self) {
        if !self.kept {
            for folder in self.made.iter().rev() {
                // Only what is empty goes; something else may have come into it.
                let _ = fs::remove_dir(folder);
            }
        }
    }
}

/// The new folder while it is built; cleared away again unless it is kept.
pub(super) struct Fresh {
    path: PathBuf,
    kept: bool,
}

impl Fresh {
    /// Makes it; what stands there already is no business of ours.
    pub fn make(path: PathBuf) -> Result<Self, FolderError> {
        match fs::create_dir(&path) {
            Ok(()) => Ok(Self { path, kept: false }),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {
                Err(FolderError::InTheWay(path))
            }
            Err(error) => Err(FolderError::Failed(path, error)),
        }
    }

    /// Where it is.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// It has taken its place.
    pub fn keep(mut self) {
        self.kept = true;
    }

    /// Writes a file in it.
    pub fn write(&self, path: &str, bytes: &[u8]) -> Result<(), FolderError> {
        let path = self.with_folder_for(path)?;
        fs::write(&path, bytes).map_err(|error| FolderError::Failed(path, error))
    }

    /// Makes a folder in it.
    pub fn make_folder(&self, path: &str) -> Result<(), FolderError> {
        let path = self.path.join(path);
        fs::create_dir_all(&path).map_err(|error| FolderError::Failed(path, error))
    }

    /// Puts another's file into it: a second name for the same file where the disk has that,
    /// else a copy.
    pub fn carry(&self, from: &Path, to: &str) -> Result<(), FolderError> {
        let to = self.with_folder_for(to)?;
        fs::hard_link(from, &to)
            .or_else(|_| fs::copy(from, &to).map(|_| ()))
            .map_err(|error| FolderError::Failed(from.to_owned(), error))
    }

    fn with_folder_for(&self, path: &str) -> Result<PathBuf, FolderError> {
        let path = self.path.join(path);
        let folder = path.parent().unwrap_or(&self.path);
        fs::create_dir_all(folder).map_err(|e| FolderError::Failed(folder.to_owned(), e))?;
        Ok(path)
    }
}

impl Drop for Fresh {
    fn drop(&mut self) {
        if !self.kept {
            // It may be half made; what cannot be removed is no use to anyone.
            let _ = fs::remove_dir_all(&self.path);
        }
    }
}
