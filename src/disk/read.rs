//! Reading a file that may be anything: no more than a limit, and nothing that never ends.

use std::fs::File;
use std::io::{Error, ErrorKind, Read as _, Result};
use std::path::Path;

/// A file to be read bit by bit, however large it is. A pipe or a device is refused before it is
/// opened: opening a pipe waits until somebody writes to it, and a device may never end.
///
/// # Errors
/// It is not there, may not be read, is a folder (`IsADirectory`), a pipe or a device (`InvalidInput`).
pub fn open(path: &Path) -> Result<File> {
    let kind = std::fs::metadata(path)?.file_type();
    if kind.is_dir() {
        return Err(ErrorKind::IsADirectory.into());
    }
    if !kind.is_file() {
        let what = "it is a pipe or a device, not a file";
        return Err(Error::new(ErrorKind::InvalidInput, what));
    }
    File::open(path)
}

/// What a file holds, if it has at most `limit` bytes.
///
/// # Errors
/// As with `open`, and where it is too large (`FileTooLarge`).
pub fn read(path: &Path, limit: u64) -> Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let read = open(path)?.take(limit + 1).read_to_end(&mut bytes)?;
    if read as u64 > limit {
        let what = format!("it is larger than {} MB", limit >> 20);
        return Err(Error::new(ErrorKind::FileTooLarge, what));
    }
    Ok(bytes)
}

/// The same for a text in UTF-8.
///
/// # Errors
/// Also where it is no such text (`InvalidData`).
pub fn read_text(path: &Path, limit: u64) -> Result<String> {
    let no_text = |_| Error::new(ErrorKind::InvalidData, "it is not text in UTF-8");
    String::from_utf8(read(path, limit)?).map_err(no_text)
}
