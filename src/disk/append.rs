//! A file that only grows: what is added is on the disk before anyone is told, and two who add at once wait for
//! each other.

use std::fs::OpenOptions;
use std::io::{Read as _, Seek as _, SeekFrom, Write as _};
use std::path::Path;

use super::failed::Failed;

/// Adds a text to the end of a file, which begins with `opening` if it is new. Where a killed run left half a line,
/// the text begins on a line of its own.
///
/// # Errors
/// What the system refuses. What stood in the file stands there still.
pub fn append(path: &Path, opening: &str, text: &str) -> Result<(), Failed> {
    let failed = || Failed::at(path);
    let mut options = OpenOptions::new();
    let mut file = options
        .read(true)
        .append(true)
        .create(true)
        .open(path)
        .map_err(failed())?;
    file.lock().map_err(failed())?;
    let length = file.metadata().map_err(failed())?.len();
    let mut last = [b'\n'];
    if length > 0 {
        file.seek(SeekFrom::End(-1))
            .and_then(|_| file.read_exact(&mut last))
            .map_err(failed())?;
    }
    let before = match (length, last) {
        (0, _) => opening,
        (_, [b'\n']) => "",
        _ => "\n",
    };
    // One write, so that a killed run leaves all of it or a part at the end, never a gap.
    file.write_all(format!("{before}{text}").as_bytes())
        .map_err(failed())?;
    file.sync_data().map_err(failed())
}
