//! A text file of ours that carries a mark of itself in its first line, by which the program knows
//! it again, and whether a person changed it.

use crate::checksum::digits;
use crate::disk::Author;

/// What stands between the words of the first line and the mark.
const MARK: &str = ", checksum ";

/// A file of a first line and all that comes after it; the line ends with a mark of both.
pub(crate) fn marked(first: &str, rest: &str) -> String {
    let mark = digits(format!("{first}\n{rest}").as_bytes());
    format!("{first}{MARK}{mark}\n{rest}")
}

/// Whose a file is, where all of its kind open with the same words.
pub(crate) fn author(bytes: &[u8], opening: &str) -> Author {
    let Some(text) = std::str::from_utf8(bytes)
        .ok()
        .filter(|t| t.starts_with(opening))
    else {
        return Author::Other;
    };
    let as_written = || {
        let (line, rest) = text.split_once('\n')?;
        let (first, _) = line.rsplit_once(MARK)?;
        Some(marked(first, rest) == text)
    };
    match as_written() {
        Some(true) => Author::Program,
        _ => Author::Edited,
    }
}
