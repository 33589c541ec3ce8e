//! A folder that is built beside its place and then takes it by two renames: between them the old
//! one is whole under a name of its own, to which the next run finds back.

use std::collections::BTreeSet;
use std::fs::{self, File, TryLockError};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use super::beside::{self, OLD, UNFINISHED, folder_of, sync_folder};
use super::failed::Failed;

/// A new folder while it is built; cleared away again unless it takes its place.
#[derive(Debug)]
pub struct Building {
    folder: tempfile::TempDir,
    /// On its first file; tells other runs that this one is alive.
    lock: Lock,
}

/// The folder that was replaced, under the name that it has until it is removed.
pub type Retired = PathBuf;

/// What a run that was broken off left beside a place.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Interrupted {
    /// New folders that did not take their place.
    pub unfinished: Vec<PathBuf>,
    /// Old folders that had left theirs.
    pub old: Vec<PathBuf>,
}

/// What runs that were broken off left beside a place; `None` while another run goes on there,
/// which holds a lock on the file `first` of its folder.
///
/// # Errors
/// The folder around it cannot be read.
pub fn interrupted(target: &Path, first: &str) -> Result<Option<Interrupted>, Failed> {
    let all = |ending| beside::of(target, ending).map_err(Failed::at(target));
    let is_folder = |path: &PathBuf| fs::symlink_metadata(path).is_ok_and(|found| found.is_dir());
    let found = Interrupted {
        unfinished: all(UNFINISHED)?.into_iter().filter(is_folder).collect(),
        old: all(OLD)?.into_iter().filter(is_folder).collect(),
    };
    let mut locks = found
        .unfinished
        .iter()
        .chain(&found.old)
        .map(|folder| folder.join(first));
    let goes_on = locks.any(|lock| lock.is_file() && beside::is_in_use(&lock));
    Ok((!goes_on).then_some(found))
}

/// Keeps other runs away as long as it lives. Where a folder cannot be moved while one of its
/// files is open, as in Windows, there is none, and two runs at a time are the reader's own risk.
#[derive(Debug)]
pub struct Lock {
    _file: Option<File>,
}

impl Lock {
    /// A lock on a file of a folder; `None` if another run has it.
    ///
    /// # Errors
    /// The file cannot be opened.
    pub fn on(path: &Path) -> Result<Option<Self>, Failed> {
        let file = File::open(path).map_err(Failed::at(path))?;
        match file.try_lock() {
            Err(TryLockError::WouldBlock) => Ok(None),
            // Some disks have no locks.
            Ok(()) | Err(TryLockError::Error(_)) => Ok(Some(Self::holding(file))),
        }
    }

    fn holding(file: File) -> Self {
        Self {
            _file: cfg!(unix).then_some(file),
        }
    }
}

/// Tries whether a folder can be made beside a place.
///
/// # Errors
/// Why not.
pub fn try_beside(target: &Path) -> Result<(), Failed> {
    let made = beside::new_folder(target).and_then(tempfile::TempDir::close);
    made.map_err(Failed::at(target))
}

/// An old folder that had left its place stands there again.
///
/// # Errors
/// It cannot be moved.
pub fn put_back(old: &Path, target: &Path) -> Result<(), Failed> {
    let moved = fs::rename(old, target).and_then(|()| sync_folder(folder_of(target)));
    moved.map_err(Failed::at(target))
}

impl Building {
    /// Makes a folder beside a place, with its first file.
    ///
    /// # Errors
    /// It cannot be made.
    pub fn beside(target: &Path, first: &str, bytes: &[u8]) -> Result<Self, Failed> {
        let folder = beside::new_folder(target).map_err(Failed::at(target))?;
        let path = folder.path().join(first);
        let mut file = File::create_new(&path).map_err(Failed::at(&path))?;
        // Some disks have no locks.
        let _ = file.try_lock();
        let written = file.write_all(bytes).and_then(|()| file.sync_all());
        written.map_err(Failed::at(&path))?;
        Ok(Self {
            folder,
            lock: Lock::holding(file),
        })
    }

    /// Where it is.
    #[must_use]
    pub fn path(&self) -> &Path {
        self.folder.path()
    }

    /// Writes a file in it.
    ///
    /// # Errors
    /// It cannot be written.
    pub fn write(&self, path: &str, bytes: &[u8]) -> Result<(), Failed> {
        let path = self.with_folder_for(path)?;
        let written = File::create_new(&path).and_then(|mut file| {
            file.write_all(bytes)?;
            file.sync_all()
        });
        written.map_err(Failed::at(&path))
    }

    /// Makes a folder in it.
    ///
    /// # Errors
    /// It cannot be made.
    pub fn make_folder(&self, path: &str) -> Result<(), Failed> {
        let path = self.path().join(path);
        fs::create_dir_all(&path).map_err(Failed::at(&path))
    }

    /// Puts another's file into it: a second name for the same file where the disk has that,
    /// else a copy.
    ///
    /// # Errors
    /// It can be had in neither way.
    pub fn carry(&self, from: &Path, to: &str) -> Result<(), Failed> {
        let to = self.with_folder_for(to)?;
        let copied = || fs::copy(from, &to).and_then(|_| File::open(&to)?.sync_all());
        fs::hard_link(from, &to)
            .or_else(|_| copied())
            .map_err(Failed::at(from))
    }

    fn with_folder_for(&self, path: &str) -> Result<PathBuf, Failed> {
        let path = self.path().join(path);
        let folder = path.parent().unwrap_or(self.path());
        fs::create_dir_all(folder).map_err(Failed::at(folder))?;
        Ok(path)
    }

    /// It takes its place; what stood there, if anything did, has another name then.
    ///
    /// # Errors
    /// It cannot; what stood there stands there again, or else the next run puts it back.
    pub fn take_place(self, target: &Path) -> Result<Option<Retired>, Failed> {
        let failed = Failed::at(target);
        let Self { folder, lock } = self;
        match swap(folder.path(), target) {
            Ok(retired) => {
                // It has another name now, under which nothing is to be cleared away.
                let _ = folder.keep();
                let above = folder_of(target);
                sync_folder(above).map_err(Failed::at(above))?;
                drop(lock);
                Ok(retired)
            }
            Err(error) => Err(failed(error)),
        }
    }
}

fn swap(fresh: &Path, target: &Path) -> io::Result<Option<Retired>> {
    sync_below(fresh)?;
    if fs::symlink_metadata(target).is_err() {
        return fs::rename(fresh, target).map(|()| None);
    }
    fs::set_permissions(fresh, fs::metadata(target)?.permissions())?;
    let old = old_name(fresh);
    fs::rename(target, &old)?;
    fs::rename(fresh, target).inspect_err(|_| {
        // The old one goes back; where even that fails, the next run does it.
        let _ = fs::rename(&old, target);
    })?;
    Ok(Some(old))
}

/// `NAME.<chance>.old` for `NAME.<chance>.unfinished`.
fn old_name(fresh: &Path) -> PathBuf {
    fresh.with_extension(OLD.trim_start_matches('.'))
}

/// Has the disk take note of the names in a folder and below.
fn sync_below(folder: &Path) -> io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_type()?.is_dir() {
            sync_below(&entry.path())?;
        }
    }
    sync_folder(folder)
}

/// Removes the files of a folder that are named, its file `last` after all others, and what is
/// empty then. Files that are not named stay, and `last` with them; they are given back.
///
/// # Errors
/// What cannot be removed.
pub fn remove(
    folder: &Path,
    files: &BTreeSet<String>,
    all: &[(String, bool)],
    last: &str,
) -> Result<Vec<PathBuf>, Failed> {
    let mut left = Vec::new();
    let of_kind = |wanted: bool| {
        all.iter()
            .filter(move |(_, is_folder)| *is_folder == wanted)
    };
    for (path, _) in of_kind(false).filter(|(path, _)| path != last) {
        let there = folder.join(path);
        if files.contains(path) {
            fs::remove_file(&there).map_err(Failed::at(&there))?;
        } else {
            left.push(there);
        }
    }
    if !left.is_empty() {
        return Ok(left);
    }
    for (path, _) in of_kind(false).filter(|(path, _)| path == last) {
        let there = folder.join(path);
        fs::remove_file(&there).map_err(Failed::at(&there))?;
    }
    for (path, _) in of_kind(true).collect::<Vec<_>>().into_iter().rev() {
        let there = folder.join(path);
        fs::remove_dir(&there).map_err(Failed::at(&there))?;
    }
    fs::remove_dir(folder).map_err(Failed::at(folder))?;
    Ok(left)
}
