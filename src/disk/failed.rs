//! What the system refuses, with the file or folder that it was about.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::harmless;

/// A file or folder that cannot be read or written, and why.
#[derive(Debug)]
pub struct Failed {
    /// Which.
    pub path: PathBuf,
    /// Why.
    pub error: io::Error,
}

impl Failed {
    /// For `map_err`: the failure of something at a path.
    pub fn at(path: &Path) -> impl FnOnce(io::Error) -> Self + use<> {
        let path = path.to_owned();
        |error| Self { path, error }
    }
}

impl fmt::Display for Failed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let path = harmless::path(&self.path);
        write!(f, "Cannot write {path}: {}.", self.error)
    }
}

impl std::error::Error for Failed {}
