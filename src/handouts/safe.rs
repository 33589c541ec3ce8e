//! Texts that a person gave, made harmless for pages and tables, beyond what `harmless` does for
//! every place.

use crate::harmless::plain;

/// A text of a page or picture, without marks of direction of its own, in which a name that is written from right to
/// left turns nothing that stands after it: a mark from left to right ends the name.
#[must_use]
pub fn steady(content: &str) -> String {
    let letters: Vec<char> = plain(content).chars().collect();
    let mut steady = String::new();
    for (at, letter) in letters.iter().enumerate() {
        steady.push(*letter);
        let mut after = letters.iter().skip(at + 1).filter(|c| c.is_alphanumeric());
        let ends = after.next().is_none_or(|next| !is_leftward(*next));
        if is_leftward(*letter) && ends {
            steady.push('\u{200e}');
        }
    }
    steady
}

/// Letters of the scripts that are written from right to left (Unicode, blocks Hebrew to Arabic
/// Extended-A and the presentation forms of both).
fn is_leftward(c: char) -> bool {
    matches!(c, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}')
}

/// The same for a cell of a table, for spreadsheets that take a text for a formula: an
/// apostrophe stands before what begins like one. OWASP, "CSV Injection", names the signs
/// `=`, `+`, `-`, `@`, tab and line breaks (which `plain` removes), and their wide forms.
#[must_use]
pub fn cell(text: &str) -> String {
    let text = plain(text);
    match text.chars().next() {
        Some('=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}') => {
            format!("'{text}")
        }
        _ => text,
    }
}
