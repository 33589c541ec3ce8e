//! The lines of a file that may be larger than the memory: one at a time, none without an end.

use std::io::{BufRead, Read as _, Result};

/// Longer lines, in bytes, are of no table.
pub const LONGEST_LINE: u64 = 1 << 16;

/// A line without its break. What is not UTF-8 in it becomes replacement signs.
#[derive(Debug, Clone, Copy)]
pub struct Line<'a> {
    /// Counted from 1.
    pub number: usize,
    /// Its text.
    pub text: &'a str,
}

/// Hands on every line until `with` says that it is enough; gives the number of a line that is too long.
///
/// # Errors
/// The file cannot be read on.
pub fn each(
    mut file: impl BufRead,
    mut with: impl FnMut(Line<'_>) -> bool,
) -> Result<Option<usize>> {
    let mut bytes = Vec::new();
    for number in 1.. {
        bytes.clear();
        let read = file
            .by_ref()
            .take(LONGEST_LINE)
            .read_until(b'\n', &mut bytes)?;
        if read == 0 {
            break;
        }
        if read as u64 == LONGEST_LINE && !bytes.ends_with(b"\n") {
            return Ok(Some(number));
        }
        let line = bytes.as_slice();
        let line = match number {
            1 => line.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(line),
            _ => line,
        };
        let text = String::from_utf8_lossy(line);
        let text = text.trim_end_matches(['\n', '\r']);
        if !with(Line { number, text }) {
            break;
        }
    }
    Ok(None)
}
