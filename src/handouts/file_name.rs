//! Names of files from names that people gave: readable, the same on every system, no two alike.

use std::collections::BTreeSet;

/// The longest part of a file name that comes from a person's name, in bytes and in letters: with
/// all around it a name stays under the 255 bytes that common file systems allow.
const MOST_BYTES: usize = 160;
const MOST_LETTERS: usize = 60;

/// Gives out names for files of one folder.
#[derive(Debug, Default)]
pub struct FileNames {
    given: BTreeSet<String>,
}

impl FileNames {
    /// `class-2a.ics` for the class 2a; a name that is given already gets a number.
    pub fn name(&mut self, kind: &str, name: &str, ending: &str) -> String {
        let stem = match stem(name) {
            stem if stem.is_empty() => kind.to_owned(),
            stem => format!("{kind}-{stem}"),
        };
        let numbered = (1..).map(|n| match n {
            1 => format!("{stem}.{ending}"),
            n => format!("{stem}-{n}.{ending}"),
        });
        let mut free = numbered.filter(|name| !self.given.contains(name));
        let name = free.next().unwrap_or(stem);
        self.given.insert(name.clone());
        name
    }
}

/// Small letters and digits of any script; all else is a hyphen, and accents that stand alone
/// fall away. So no name leads out of its folder, hides, or is kept for a device.
fn stem(name: &str) -> String {
    let mut stem = String::new();
    let mut letters = 0;
    let accent = |c: &char| ('\u{300}'..='\u{36f}').contains(c);
    let signs = name.chars().flat_map(char::to_lowercase);
    for c in signs.filter(|c| !accent(c)) {
        let c = if c.is_alphanumeric() { c } else { '-' };
        let full = letters == MOST_LETTERS || stem.len() + c.len_utf8() > MOST_BYTES;
        if full {
            break;
        }
        if c != '-' || !(stem.is_empty() || stem.ends_with('-')) {
            stem.push(c);
            letters += 1;
        }
    }
    stem.trim_end_matches('-').to_owned()
}
