//! Texts that a person gave, made harmless for any file: no control characters, nothing that
//! turns the direction of what stands beside it. What is left reads as it was meant.

/// The text on one line, without what a reader cannot see. White space, line breaks and tabs
/// become one blank; controls and marks of direction fall away. Letters written from right to
/// left keep their own direction.
#[must_use]
pub fn plain(text: &str) -> String {
    let shown = text.chars().filter(|c| !is_unseen(*c));
    let blanks: String = shown.map(|c| if is_blank(c) { ' ' } else { c }).collect();
    let mut line = String::with_capacity(blanks.len());
    for word in blanks.split(' ').filter(|word| !word.is_empty()) {
        if !line.is_empty() {
            line.push(' ');
        }
        line.push_str(word);
    }
    line
}

/// White space of every kind but the blanks that keep words together.
fn is_blank(c: char) -> bool {
    c.is_whitespace() && !matches!(c, '\u{a0}' | '\u{202f}')
}

/// Controls that are no white space; marks, embeddings, overrides and isolates of direction
/// (Unicode, Bidirectional Algorithm, UAX 9); signs without width, but not those that join
/// letters and emoji; and what is no character at all.
fn is_unseen(c: char) -> bool {
    (c.is_control() && !c.is_whitespace())
        || matches!(
            c,
            '\u{61c}'
                | '\u{200b}'
                | '\u{200e}'
                | '\u{200f}'
                | '\u{202a}'..='\u{202e}'
                | '\u{2060}'..='\u{206f}'
                | '\u{feff}'
                | '\u{fff9}'..='\u{fffb}'
                | '\u{fffe}'
                | '\u{ffff}'
        )
}

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
