//! Names, keys and changes among the arguments: they stand on one line, as those of a file do.

/// Takes an argument that is on one line.
///
/// # Errors
/// What is wrong with one that is not, for the reader.
pub(super) fn one_line(text: &str) -> Result<String, String> {
    let breaks = |c| matches!(c, '\n' | '\r' | '\u{85}' | '\u{2028}' | '\u{2029}');
    match text.contains(breaks) {
        true => Err("it holds a line break; write it on one line".to_owned()),
        false => Ok(text.to_owned()),
    }
}
