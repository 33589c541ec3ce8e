//! The cells of a line, each with its place in it. The `csv` crate tells no place within a line, which a
//! message needs.

use std::ops::Range;

/// What stands between the columns.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Separator {
    /// `,`
    Comma,
    /// `;`
    Semicolon,
    /// A tab.
    Tab,
    /// One blank or more.
    Blanks,
}

impl Separator {
    /// All, in the order in which they are tried.
    pub const ALL: [Self; 4] = [Self::Semicolon, Self::Tab, Self::Comma, Self::Blanks];

    fn sign(self) -> Option<char> {
        match self {
            Self::Comma => Some(','),
            Self::Semicolon => Some(';'),
            Self::Tab => Some('\t'),
            Self::Blanks => None,
        }
    }
}

/// A value without blanks and quotes around it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell<'l> {
    /// The value.
    pub text: &'l str,
    /// Its place in the line, quotes left out.
    pub at: Range<usize>,
}

/// The cells of a line. Within double quotes a separator separates nothing.
pub fn cells(line: &str, separator: Separator) -> Vec<Cell<'_>> {
    let mut found = Vec::new();
    let mut start = 0;
    let mut quoted = false;
    let parts = |c: char| match separator.sign() {
        Some(sign) => c == sign,
        None => c.is_whitespace(),
    };
    for (at, sign) in line.char_indices() {
        if sign == '"' {
            quoted = !quoted;
        } else if !quoted && parts(sign) {
            found.push(cell(line, start..at));
            start = at + sign.len_utf8();
        }
    }
    found.push(cell(line, start..line.len()));
    if separator == Separator::Blanks {
        found.retain(|cell| !cell.text.is_empty());
    }
    found
}

fn cell(line: &str, at: Range<usize>) -> Cell<'_> {
    let start = at.start;
    let whole = line.get(at).unwrap_or_default();
    let text = whole.trim().trim_matches('"').trim();
    let blanks = text.as_ptr() as usize - whole.as_ptr() as usize;
    let start = start + blanks;
    Cell {
        text,
        at: start..start + text.len(),
    }
}
