//! The list of what the program wrote into a folder, by which it knows the folder again, and
//! each file as its own and unchanged.

use std::collections::BTreeMap;
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::checksum::digits;
use crate::disk;
use crate::report::folder::FolderError;

use super::file::File;

/// The name of the list in its folder.
pub const MANIFEST: &str = ".handouts.json";

/// Nothing that is written here is larger, in bytes; what is, is a person's.
pub(super) const LARGEST_FILE: u64 = 32 << 20;

/// The form of the list that is written, and the only one that is read.
const VERSION: u32 = 1;

/// The list.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Manifest {
    tureen_handouts: u32,
    /// Path below the folder and checksum of each file.
    files: BTreeMap<String, String>,
}

impl Manifest {
    /// The list of some files.
    pub fn of(files: &[File]) -> Self {
        let entry = |file: &File| (file.path.clone(), digits(&file.bytes));
        Self {
            tureen_handouts: VERSION,
            files: files.iter().map(entry).collect(),
        }
    }

    /// Reads a list.
    pub fn read(path: &Path) -> Result<Self, FolderError> {
        let bad = || FolderError::BadList(path.to_owned());
        let bytes = disk::read(path, LARGEST_FILE).map_err(|_| bad())?;
        let list: Self = serde_json::from_slice(&bytes).map_err(|_| bad())?;
        if list.tureen_handouts == VERSION {
            Ok(list)
        } else {
            Err(bad())
        }
    }

    /// The list as a file.
    pub fn to_bytes(&self) -> Vec<u8> {
        // Texts in memory: there is nothing here that can fail. Should it fail after all, the
        // folder is not known again and therefore never replaced.
        let mut bytes = serde_json::to_vec_pretty(self).unwrap_or_default();
        bytes.push(b'\n');
        bytes
    }

    /// The checksum of a file when it was written; `None` if it is not one of ours.
    pub fn checksum(&self, path: &str) -> Option<&str> {
        self.files.get(path).map(String::as_str)
    }

    /// True if some file of ours stood in a folder.
    pub fn has_folder(&self, path: &str) -> bool {
        let inside = format!("{path}/");
        self.files.keys().any(|file| file.starts_with(&inside))
    }
}
