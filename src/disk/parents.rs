//! Folders that are made on the way to a place.

use std::fs;
use std::path::{Path, PathBuf};

use super::beside::{folder_of, sync_folder};
use super::failed::Failed;

/// Folders made on the way to a place; cleared away again unless they are kept.
#[derive(Debug)]
pub struct Parents {
    made: Vec<PathBuf>,
    kept: bool,
}

impl Parents {
    /// Makes a folder and those above it, as far as they are not there yet.
    ///
    /// # Errors
    /// The first that cannot be made; the others are gone again.
    pub fn make(folder: &Path) -> Result<Self, Failed> {
        let missing = folder
            .ancestors()
            .take_while(|folder| !folder.as_os_str().is_empty() && !folder.exists());
        let mut missing: Vec<PathBuf> = missing.map(Path::to_owned).collect();
        missing.reverse();
        let mut parents = Self {
            made: Vec::new(),
            kept: false,
        };
        for folder in missing {
            fs::create_dir(&folder).map_err(Failed::at(&folder))?;
            parents.made.push(folder);
        }
        Ok(parents)
    }

    /// They stay.
    ///
    /// # Errors
    /// The disk cannot say that they do.
    pub fn keep(mut self) -> Result<(), Failed> {
        self.kept = true;
        for folder in &self.made {
            let above = folder_of(folder);
            sync_folder(above).map_err(Failed::at(above))?;
        }
        Ok(())
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
