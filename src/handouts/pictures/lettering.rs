//! How wide letters are, and how a text is made to fit: shortened or on several lines.

/// Height of the letters of all pictures, in points of 18 cm wide paper.
pub const SIZE: f64 = 10.0;

/// From line to line.
pub const LINE: f64 = 12.0;

/// Where a text was cut.
const CUT: char = '\u{2026}';

/// The width of a text, rather too great than too small: classes of letters, each about as wide as
/// the widest of it in Helvetica and Arial (Adobe's font metrics, from memory).
pub fn width(text: &str) -> f64 {
    let ems: f64 = text.chars().map(letter).sum();
    ems * EM
}

/// By how much the letters of another font can be wider, where only that is installed: DejaVu Sans
/// against Helvetica (from memory). What ends at the edge of a picture keeps so much room.
pub const WIDER: f64 = 1.2;

/// By how much the fonts that systems use for their own texts are wider: Noto Sans against Helvetica (from
/// memory; without it a browser showed words that met).
const USUAL: f64 = 1.08;

/// An em of theirs.
const EM: f64 = SIZE * USUAL;

/// By how much bold letters are wider.
pub const BOLD: f64 = 1.12;

/// The width of bold letters.
pub fn bold_width(text: &str) -> f64 {
    width(text) * BOLD
}

fn letter(c: char) -> f64 {
    match c {
        '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => 0.0,
        'i' | 'j' | 'l' | '\'' | '|' => 0.28,
        ' ' | '\u{a0}' | '.' | ',' | ':' | ';' | '!' | 'I' | 't' | 'f' | 'r' | '(' | ')' | '-' => {
            0.36
        }
        'm' | 'w' | 'M' | 'W' | '%' | CUT => 0.92,
        'A'..='Z' | '&' => 0.75,
        c if c.is_ascii() => 0.58,
        '\u{80}'..='\u{5ff}' => 0.7,
        _ => 1.2,
    }
}

/// The text, cut with an ellipsis if it is wider than the room.
pub fn shorten(text: &str, room: f64) -> String {
    if width(text) <= room {
        return text.to_owned();
    }
    let mut kept = String::new();
    let mut used = letter(CUT) * EM;
    for c in text.chars() {
        used += letter(c) * EM;
        if used > room {
            break;
        }
        kept.push(c);
    }
    // A sign that joins two others must not be left hanging at the cut.
    let kept = kept.trim_end_matches([' ', '\u{a0}', '\u{200d}']);
    format!("{kept}{CUT}")
}

/// The text on as few lines as its words allow; `None` if a word is wider than the room, or if
/// it takes more lines than there may be.
pub fn wrap(text: &str, room: f64, most: usize) -> Option<Vec<String>> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        if width(word) > room {
            return None;
        }
        match lines.last_mut() {
            Some(line) if width(line) + letter(' ') * EM + width(word) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    (lines.len() <= most).then_some(lines)
}
