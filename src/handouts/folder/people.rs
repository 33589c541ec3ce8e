//! What in an old folder is a person's: what was added goes into the new folder as it is, what
//! was changed under another name.

use std::collections::BTreeSet;
use std::fs;
use std::io::ErrorKind;
use std::path::Path;

use crate::checksum::digits;
use crate::disk::{self, kept_name};
use crate::report::folder::FolderError;

use super::file::File;
use super::manifest::{LARGEST_FILE, MANIFEST, Manifest};

/// What becomes of the old folder's files.
#[derive(Default)]
pub(super) struct Plan {
    /// Folders of a person, also empty ones.
    pub folders: Vec<String>,
    /// Files of a person, old path and new path.
    pub carried: Vec<(String, String)>,
    /// Files of ours that fall away.
    pub removed: Vec<String>,
    /// All that stands in the old folder.
    pub found: Found,
}

/// What stands in a folder and below, in order: path with `/`, and whether it is a folder.
pub(super) type Found = Vec<(String, bool)>;

impl Plan {
    /// Looks through the old folder.
    pub fn of(target: &Path, list: &Manifest, files: &[File]) -> Result<Self, FolderError> {
        let found = all_in(target)?;
        let mut taken = Taken::new(files, &found);
        let mut plan = Self::default();
        for (path, is_folder) in found.iter().cloned() {
            let there = target.join(&path);
            if is_folder {
                if taken.is_file(&path) {
                    return Err(FolderError::InTheWay(there));
                }
                if !list.has_folder(&path) {
                    plan.folders.push(path);
                }
                continue;
            }
            if path == MANIFEST {
                continue;
            }
            if taken.is_folder(&path) {
                return Err(FolderError::InTheWay(there));
            }
            match fate(&there, &path, list, files)? {
                Fate::Ours if taken.is_file(&path) => {}
                Fate::Ours => plan.removed.push(path),
                Fate::Added if !taken.is_file(&path) => plan.carried.push((path.clone(), path)),
                Fate::Added | Fate::Changed => {
                    let kept = taken.free_name(&path);
                    plan.carried.push((path, kept));
                }
            }
        }
        plan.found = found;
        Ok(plan)
    }

    /// What is kept under another name.
    pub fn kept(&self) -> Vec<(String, String)> {
        let renamed = self.carried.iter().filter(|(from, to)| from != to);
        renamed.cloned().collect()
    }
}

/// What a file of the old folder is.
enum Fate {
    /// Ours and as it was written, or just what is written now.
    Ours,
    /// Ours, but a person changed it.
    Changed,
    /// A person's.
    Added,
}

fn fate(there: &Path, path: &str, list: &Manifest, files: &[File]) -> Result<Fate, FolderError> {
    let failed = |error| FolderError::Failed(there.to_owned(), error);
    let is_plain = fs::symlink_metadata(there).map_err(failed)?.is_file();
    let Some(written) = list.checksum(path).filter(|_| is_plain) else {
        return Ok(Fate::Added);
    };
    let bytes = match disk::read(there, LARGEST_FILE) {
        Err(error) if error.kind() == ErrorKind::FileTooLarge => return Ok(Fate::Changed),
        read => read.map_err(failed)?,
    };
    let new = files.iter().find(|file| file.path == path);
    let as_it_was = digits(&bytes) == written || new.is_some_and(|new| new.bytes == bytes);
    Ok(if as_it_was { Fate::Ours } else { Fate::Changed })
}

/// Everything in a folder and below, in order.
pub(super) fn all_in(folder: &Path) -> Result<Found, FolderError> {
    let mut found = Found::new();
    look(folder, "", &mut found)?;
    Ok(found)
}

/// Everything in a folder and below, in order. Links are files here: nobody goes through them.
fn look(target: &Path, below: &str, found: &mut Found) -> Result<(), FolderError> {
    let folder = target.join(below);
    let failed = |error| FolderError::Failed(folder.clone(), error);
    let mut names = Vec::new();
    for entry in fs::read_dir(&folder).map_err(failed)? {
        let entry = entry.map_err(failed)?;
        let is_folder = entry.file_type().map_err(failed)?.is_dir();
        let name = entry.file_name().into_string();
        // A name that is no text cannot be carried over safely: better to stop.
        let name = name.map_err(|name| FolderError::InTheWay(folder.join(name)))?;
        names.push((name, is_folder));
    }
    names.sort();
    for (name, is_folder) in names {
        let path = match below {
            "" => name,
            _ => format!("{below}/{name}"),
        };
        found.push((path.clone(), is_folder));
        if is_folder {
            look(target, &path, found)?;
        }
    }
    Ok(())
}

/// The names that are given away, without regard to capitals: some systems have none.
struct Taken {
    files: BTreeSet<String>,
    folders: BTreeSet<String>,
    old: BTreeSet<String>,
}

impl Taken {
    fn new(files: &[File], found: &Found) -> Self {
        let new = files.iter().map(|file| file.path.to_lowercase());
        let new: BTreeSet<String> = new.chain([MANIFEST.to_lowercase()]).collect();
        let mut folders = BTreeSet::new();
        for path in &new {
            let cuts = path.char_indices().filter(|(_, c)| *c == '/');
            folders.extend(cuts.map(|(at, _)| path[..at].to_owned()));
        }
        Self {
            files: new,
            folders,
            old: found.iter().map(|(path, _)| path.to_lowercase()).collect(),
        }
    }

    fn is_file(&self, path: &str) -> bool {
        self.files.contains(&path.to_lowercase())
    }

    fn is_folder(&self, path: &str) -> bool {
        self.folders.contains(&path.to_lowercase())
    }

    /// A name beside a file that nothing else has; it is then taken.
    fn free_name(&mut self, path: &str) -> String {
        let (folder, name) = match path.rsplit_once('/') {
            Some((folder, name)) => (format!("{folder}/"), name),
            None => (String::new(), path),
        };
        let mut names = (1..).map(|time| format!("{folder}{}", kept_name(name, time)));
        let free = |name: &String| {
            let name = name.to_lowercase();
            !self.files.contains(&name) && !self.old.contains(&name)
        };
        let name = names.find(free).unwrap_or_else(|| path.to_owned());
        self.old.insert(name.to_lowercase());
        name
    }
}
