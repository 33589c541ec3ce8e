//! Text that a person gave, made harmless for whatever it is printed on: no control signs, nothing
//! that turns the direction of what stands beside it, nothing hidden. The rest reads as it was meant.

use std::path::Path;

/// The text on one line, without what a reader cannot see. White space, line breaks and tabs
/// become one blank; controls and marks of direction fall away. Letters written from right to
/// left keep their own direction.
#[must_use]
pub fn plain(text: &str) -> String {
    let blanks: String = seen(text)
        .map(|c| if is_blank(c) { ' ' } else { c })
        .collect();
    let mut line = String::with_capacity(blanks.len());
    for word in blanks.split(' ').filter(|word| !word.is_empty()) {
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    line
}

/// The same for a text that is laid out in lines and columns: `\n` and runs of blanks stay.
#[must_use]
pub fn lines(text: &str) -> String {
    let line_or_blank = |c| match c {
        '\n' => c,
        c if c.is_control() || is_line_break(c) => ' ',
        c => c,
    };
    seen(text).map(line_or_blank).collect()
}

/// The same sign by sign, for excerpts in which columns are counted: what cannot be seen stands
/// there as a replacement sign, except for tabs and the ends of lines.
#[must_use]
pub fn in_place(text: &str) -> String {
    let mut signs = text.chars().peekable();
    let mut shown = String::with_capacity(text.len());
    while let Some(sign) = signs.next() {
        let ends_line = sign == '\n' || sign == '\r' && signs.peek() == Some(&'\n');
        let hidden = sign.is_control() || is_line_break(sign) || is_unseen(sign) || is_joiner(sign);
        shown.push(if hidden && !ends_line && sign != '\t' {
            char::REPLACEMENT_CHARACTER
        } else {
            sign
        });
    }
    shown
}

/// The name of a file or folder, on one line.
#[must_use]
pub fn path(path: &Path) -> String {
    plain(&path.to_string_lossy())
}

/// What can be seen, and what joins letters and emoji; in ASCII there is nothing to be joined.
fn seen(text: &str) -> impl Iterator<Item = char> {
    let mut before = None;
    let mut signs = text.chars().filter(|c| !is_unseen(*c)).peekable();
    std::iter::from_fn(move || {
        let mut sign = signs.next()?;
        while is_joiner(sign)
            && !(before.is_some_and(is_joined) && signs.peek().copied().is_some_and(is_joined))
        {
            sign = signs.next()?;
        }
        before = Some(sign);
        before
    })
}

/// White space of every kind but the blanks that keep words together.
fn is_blank(c: char) -> bool {
    c.is_whitespace() && !matches!(c, '\u{a0}' | '\u{202f}')
}

/// White space beyond the controls that begins a new line.
fn is_line_break(c: char) -> bool {
    matches!(c, '\u{2028}' | '\u{2029}')
}

/// Signs without width that join letters and emoji, or part letters that would join.
fn is_joiner(c: char) -> bool {
    matches!(c, '\u{200c}' | '\u{200d}')
}

/// Signs that a joiner may stand between.
fn is_joined(c: char) -> bool {
    !c.is_ascii() && !c.is_whitespace() && !is_joiner(c)
}

/// Controls that are no white space; marks, embeddings, overrides and isolates of direction
/// (Unicode, Bidirectional Algorithm, UAX 9); signs without width (general category Cf), but not
/// those that join, and not those of Arabic and Kaithi that can be seen; and what is no character
/// at all.
fn is_unseen(c: char) -> bool {
    (c.is_control() && !c.is_whitespace())
        || matches!(
            c,
            '\u{ad}'
                | '\u{34f}'
                | '\u{61c}'
                | '\u{70f}'
                | '\u{180e}'
                | '\u{200b}'
                | '\u{200e}'
                | '\u{200f}'
                | '\u{202a}'..='\u{202e}'
                | '\u{2060}'..='\u{206f}'
                | '\u{feff}'
                | '\u{fff9}'..='\u{fffb}'
                | '\u{13430}'..='\u{1343f}'
                | '\u{1bca0}'..='\u{1bca3}'
                | '\u{1d173}'..='\u{1d17a}'
                | '\u{e0000}'..='\u{e007f}'
        )
        || u32::from(c) & 0xfffe == 0xfffe
}
