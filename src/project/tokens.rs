//! The pieces of a project file whose syntax is broken: texts, words, signs and line breaks, each with
//! its place. It reads what people write, so a text may be in curly quotes and have no end.

use crate::diagnostic::Span;

/// What a piece is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// A text in quotes of any kind.
    Text(Quotes),
    /// Letters, digits and the signs that numbers, dates and times have.
    Word,
    /// One of the signs `[ ] { } = , : ;`.
    Sign(char),
    /// Two slashes, with which other languages begin a remark.
    Slashes,
    /// A sign that nobody sees.
    Invisible(char),
    /// The end of a line.
    Break,
}

/// The quotes of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quotes {
    /// As the file needs them.
    Straight,
    /// As word processors set them.
    Curly,
    /// The closing one is missing.
    Open,
}

/// Quotes as word processors set them.
const CURLY: &str =
    "\u{201c}\u{201d}\u{201e}\u{201f}\u{2018}\u{2019}\u{201a}\u{ab}\u{bb}\u{2039}\u{203a}";

/// Signs that nobody sees, with their names.
const INVISIBLE: [(char, &str); 14] = [
    ('\u{a0}', "a no-break space"),
    ('\u{ad}', "a soft hyphen"),
    ('\u{2002}', "a wide space"),
    ('\u{2003}', "a wide space"),
    ('\u{2007}', "a no-break space for figures"),
    ('\u{2009}', "a thin space"),
    ('\u{200b}', "a space of no width"),
    ('\u{200c}', "a mark of no width"),
    ('\u{200d}', "a mark of no width"),
    ('\u{200e}', "a mark of direction"),
    ('\u{200f}', "a mark of direction"),
    ('\u{202f}', "a narrow no-break space"),
    ('\u{3000}', "a wide space"),
    ('\u{feff}', "a byte order mark"),
];

/// The name of a sign that nobody sees.
pub fn invisible(sign: char) -> Option<&'static str> {
    let found = INVISIBLE.iter().find(|(known, _)| *known == sign);
    found.map(|(_, name)| *name)
}

/// All pieces; remarks and blanks are left out.
pub fn pieces(text: &str) -> Vec<(Piece, Span)> {
    let mut pieces = Vec::new();
    let mut at = 0;
    while let Some(first) = text.get(at..).and_then(|rest| rest.chars().next()) {
        let rest = text.get(at..).unwrap_or_default();
        let (piece, length) = match first {
            '\n' => (Some(Piece::Break), 1),
            '#' => (None, line(rest).len()),
            _ if invisible(first).is_some() => (Some(Piece::Invisible(first)), first.len_utf8()),
            _ if first.is_whitespace() => (None, first.len_utf8()),
            '/' if rest.starts_with("//") => (Some(Piece::Slashes), line(rest).len()),
            '[' | ']' | '{' | '}' | '=' | ',' | ':' | ';' => (Some(Piece::Sign(first)), 1),
            '"' | '\'' => quoted(line(rest), first),
            _ if CURLY.contains(first) => curly(line(rest), first),
            _ => (Some(Piece::Word), word(rest)),
        };
        pieces.extend(piece.map(|piece| (piece, Span::from(at..at + length))));
        at += length;
    }
    pieces.push((Piece::Break, Span::from(at..at)));
    pieces
}

/// The rest of a line.
fn line(rest: &str) -> &str {
    let line = rest.split('\n').next().unwrap_or_default();
    line.trim_end_matches('\r')
}

/// A text in straight quotes, to its end or that of the line.
fn quoted(line: &str, quote: char) -> (Option<Piece>, usize) {
    let mut escaped = false;
    for (at, c) in line.char_indices().skip(1) {
        if c == quote && !escaped {
            return (Some(Piece::Text(Quotes::Straight)), at + 1);
        }
        escaped = quote == '"' && c == '\\' && !escaped;
    }
    (Some(Piece::Text(Quotes::Open)), line.len())
}

/// A text in curly quotes, to the next quote of any kind.
fn curly(line: &str, first: char) -> (Option<Piece>, usize) {
    // Between double quotes an apostrophe is a letter.
    let single = "\u{2018}\u{2019}\u{201a}\u{2039}\u{203a}'";
    let closes = |c: char| match single.contains(first) {
        true => single.contains(c),
        false => c == '"' || CURLY.contains(c) && !single.contains(c),
    };
    let mut signs = line.char_indices().skip(1);
    match signs.find(|(_, c)| closes(*c)) {
        Some((at, c)) => (Some(Piece::Text(Quotes::Curly)), at + c.len_utf8()),
        None => (Some(Piece::Text(Quotes::Open)), line.len()),
    }
}

/// The length of a word. A colon ends one that is no time of day.
fn word(rest: &str) -> usize {
    let is_time = rest.starts_with(|c: char| c.is_ascii_digit());
    let ends = |c: char| {
        c.is_whitespace()
            || "[]{}=,;\"#".contains(c)
            || invisible(c).is_some()
            || CURLY.contains(c) && c != '\u{2019}'
            || c == ':' && !is_time
    };
    rest.find(ends).unwrap_or(rest.len()).max(1)
}
