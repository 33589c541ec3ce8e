//! Names in messages: quoted, cut to a bearable length, and the nearest known one.

use crate::harmless;

/// The longest part of a user's text that a message repeats.
const LONGEST_QUOTE: usize = 40;

/// A text in quotes, made harmless, cut if it is long.
pub fn quote(text: &str) -> String {
    let text = harmless::lines(text).replace('\n', " ");
    let mut quoted: String = text.chars().take(LONGEST_QUOTE).collect();
    if text.chars().nth(LONGEST_QUOTE).is_some() {
        quoted += "...";
    }
    format!("\"{quoted}\"")
}

/// A key of the file, as messages show it.
pub fn code(key: &str) -> String {
    let quoted = quote(key);
    format!("`{}`", quoted.trim_matches('"'))
}

/// A short list of names for a message: `"2", "3", "4" and 12 more`.
pub fn listed<'n>(names: impl IntoIterator<Item = &'n str>) -> String {
    const MOST: usize = 12;
    let names: Vec<&str> = names.into_iter().collect();
    let shown: Vec<String> = names.iter().take(MOST).map(|n| quote(n)).collect();
    match names.len().saturating_sub(MOST) {
        0 => shown.join(", "),
        more => format!("{} and {more} more", shown.join(", ")),
    }
}

/// The known name that is most like `name`, if one is near.
#[must_use]
pub fn near<'n>(name: &str, known: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    if name.len() > LONGEST_QUOTE {
        return None;
    }
    let name = name.trim().to_lowercase();
    known
        .into_iter()
        .map(|other| (distance(&name, &other.to_lowercase()), other))
        .filter(|(far, other)| {
            *far <= bearable(&name, &other.to_lowercase()) && *far < name.len().max(other.len())
        })
        .min_by_key(|(far, _)| *far)
        .map(|(_, other)| other)
}

/// So many letters may differ: one, more in long names, and two in a word of equal length that begins
/// alike, which is how a word is misspelt by ear ("kail" for "kale").
fn bearable(name: &str, other: &str) -> usize {
    let letters = name.chars().count();
    let begins_alike = name.chars().take(2).eq(other.chars().take(2));
    let by_ear = letters >= 4 && letters == other.chars().count() && begins_alike;
    (letters / 4).max(if by_ear { 2 } else { 1 })
}

/// Letters to change; a name that only leaves out a last part ("onion (from seed)") is near.
fn distance(name: &str, other: &str) -> usize {
    let first_word = other.split([' ', '(']).next().unwrap_or_default();
    if name.len() > 3 && (first_word == name || other.ends_with(&format!(" {name}"))) {
        return 1;
    }
    strsim::damerau_levenshtein(name, other)
}
