//! A place for one file: looked at before the work, written after it.

use std::fmt;
use std::fs;
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use crate::harmless;

use super::beside;
use super::failed::Failed;
use super::kept;

/// Larger files are a person's: nothing that the program writes comes near.
const LARGEST: u64 = 64 << 20;

/// Whose a file is, as its bytes tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Author {
    /// The program wrote it, and it is as it was written.
    Program,
    /// The program wrote it, and a person changed it since.
    Edited,
    /// A person's, or another program's.
    Other,
}

/// A place at which a file may be written.
#[derive(Debug)]
pub struct FilePlace {
    path: PathBuf,
    author: fn(&[u8]) -> Author,
    replace: bool,
    cleared: Vec<PathBuf>,
}

/// What was done beside writing a file.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Saved {
    /// What a person had changed is kept here.
    pub kept: Option<PathBuf>,
    /// What killed runs had left, now gone.
    pub cleared: Vec<PathBuf>,
}

/// Why a file is not written. What stood there is as it was.
#[derive(Debug)]
pub enum Refused {
    /// The program did not write what stands there.
    NotOurs(PathBuf),
    /// It is a folder.
    IsAFolder(PathBuf),
    /// The system does not let it.
    Failed(Failed),
}

/// What stands at a place.
enum Standing {
    /// Nothing.
    Free,
    /// A file of ours, or one with nothing in it.
    Ours,
    /// A file of ours that a person changed.
    Edited,
    /// A file that is not ours, or a link.
    Other,
    /// A pipe or a device, which takes what it is given and keeps nothing.
    Stream,
}

impl FilePlace {
    /// Looks at a place and tries it: whether what stands there may go, and whether a file can be
    /// made. `author` tells of what stands there whose it is; with `replace` anybody's file goes.
    ///
    /// # Errors
    /// Why nothing could be written there.
    pub fn tried(path: &Path, author: fn(&[u8]) -> Author, replace: bool) -> Result<Self, Refused> {
        let mut place = Self {
            path: path.to_owned(),
            author,
            replace,
            cleared: Vec::new(),
        };
        if !matches!(place.standing()?, Standing::Stream) {
            place.cleared = clear(path).map_err(Failed::at(path))?;
            beside::new_file(path)
                .and_then(tempfile::NamedTempFile::close)
                .map_err(Failed::at(path))?;
        }
        Ok(place)
    }

    /// Writes the file: first beside its place, then in it, with the permissions of the one before.
    ///
    /// # Errors
    /// Why not.
    pub fn write(self, bytes: &[u8]) -> Result<Saved, Refused> {
        let path = &self.path;
        // It may have changed during the work.
        let standing = self.standing()?;
        let kept = match standing {
            Standing::Stream => fs::write(path, bytes).map(|()| None),
            Standing::Free | Standing::Ours | Standing::Edited | Standing::Other => {
                replace(path, bytes, &standing)
            }
        };
        Ok(Saved {
            kept: kept.map_err(Failed::at(path))?,
            cleared: self.cleared,
        })
    }

    /// Leaves nothing at the place; what a person changed there is kept beside it.
    ///
    /// # Errors
    /// Why not.
    pub fn vacate(self) -> Result<Saved, Refused> {
        let path = &self.path;
        let removed = match self.standing()? {
            Standing::Free | Standing::Stream => Ok(None),
            Standing::Edited => kept::keep(path).and_then(|kept| {
                fs::remove_file(path)?;
                Ok(Some(kept))
            }),
            Standing::Ours | Standing::Other => fs::remove_file(path).map(|()| None),
        };
        Ok(Saved {
            kept: removed.map_err(Failed::at(path))?,
            cleared: self.cleared,
        })
    }

    fn standing(&self) -> Result<Standing, Refused> {
        let path = &self.path;
        match standing(path, self.author).map_err(Failed::at(path))? {
            None => Err(Refused::IsAFolder(path.clone())),
            Some(Standing::Other) if !self.replace => Err(Refused::NotOurs(path.clone())),
            Some(standing) => Ok(standing),
        }
    }
}

/// What stands at a path; `None` is a folder.
fn standing(path: &Path, author: fn(&[u8]) -> Author) -> io::Result<Option<Standing>> {
    let itself = match fs::symlink_metadata(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Some(Standing::Free)),
        found => found?,
    };
    let is_link = itself.is_symlink();
    let found = match fs::metadata(path) {
        Ok(found) => found,
        // It leads nowhere.
        Err(_) if is_link => return Ok(Some(Standing::Other)),
        Err(error) => return Err(error),
    };
    Ok(match () {
        () if found.is_dir() => None,
        () if !found.is_file() => Some(Standing::Stream),
        () if is_link || found.len() > LARGEST => Some(Standing::Other),
        () if found.len() == 0 => Some(Standing::Ours),
        () => {
            let mut bytes = Vec::with_capacity(usize::try_from(found.len()).unwrap_or(0));
            fs::File::open(path)?
                .take(LARGEST)
                .read_to_end(&mut bytes)?;
            Some(match author(&bytes) {
                Author::Program => Standing::Ours,
                Author::Edited => Standing::Edited,
                Author::Other => Standing::Other,
            })
        }
    })
}

/// The new file takes the place of what stands there; gives where that is kept.
fn replace(path: &Path, bytes: &[u8], standing: &Standing) -> io::Result<Option<PathBuf>> {
    let mut file = beside::new_file(path)?;
    // Held until the end, so that no other run takes it for a rest. Some disks have no locks.
    let _ = file.as_file().try_lock();
    file.write_all(bytes)?;
    if let Ok(old) = fs::symlink_metadata(path)
        && old.is_file()
    {
        like(file.as_file(), &old)?;
    }
    file.as_file().sync_all()?;
    let kept = match standing {
        Standing::Edited => Some(kept::keep(path)?),
        _ => None,
    };
    match standing {
        // Something may have come there just now.
        Standing::Free => file.persist_noclobber(path)?,
        _ => file.persist(path)?,
    };
    beside::sync_folder(beside::folder_of(path))?;
    Ok(kept)
}

/// Gives a new file the permissions of an old one, and its owner as far as the system lets.
fn like(new: &fs::File, old: &fs::Metadata) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::{MetadataExt, fchown};
        // Only an administrator may give files away; others may have a group in common.
        let _ = fchown(new, Some(old.uid()), Some(old.gid()))
            .or_else(|_| fchown(new, None, Some(old.gid())));
    }
    new.set_permissions(old.permissions())
}

/// Clears what killed runs left beside a file.
fn clear(path: &Path) -> io::Result<Vec<PathBuf>> {
    let mut cleared = Vec::new();
    for rest in beside::of(path, beside::UNFINISHED)? {
        let is_file = fs::symlink_metadata(&rest).is_ok_and(|found| found.is_file());
        if is_file && !beside::is_in_use(&rest) && fs::remove_file(&rest).is_ok() {
            cleared.push(rest);
        }
    }
    Ok(cleared)
}

impl From<Failed> for Refused {
    fn from(failed: Failed) -> Self {
        Self::Failed(failed)
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotOurs(path) => write!(
                f,
                "{} is there already, and this program did not write it.",
                harmless::path(path)
            ),
            Self::IsAFolder(path) => {
                write!(f, "Cannot write {}: it is a folder.", harmless::path(path))
            }
            Self::Failed(failed) => failed.fmt(f),
        }
    }
}

impl std::error::Error for Refused {}

impl Refused {
    /// What to do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::NotOurs(_) => "Give another name, or add --replace if it may go for good.",
            Self::IsAFolder(_) => "Give the name of a file.",
            Self::Failed(_) => "Give a place where you may write and that has room.",
        }
    }
}
