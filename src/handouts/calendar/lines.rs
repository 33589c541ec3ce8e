//! Content lines of RFC 5545: escaped texts, no line over 75 octets, no letter cut in two.

/// Octets of a line without its line break.
const LONGEST: usize = 75;

/// Lines of a calendar file.
#[derive(Default)]
pub struct Lines {
    text: String,
}

impl Lines {
    /// A line with a value that needs no escaping.
    pub fn add(&mut self, name: &str, value: &str) {
        let mut room = LONGEST;
        for c in name.chars().chain([':']).chain(value.chars()) {
            if c.len_utf8() > room {
                self.text.push_str("\r\n ");
                // The blank at the beginning counts.
                room = LONGEST - 1;
            }
            self.text.push(c);
            room -= c.len_utf8();
        }
        self.text.push_str("\r\n");
    }

    /// A line with a text, which may hold line breaks.
    pub fn add_text(&mut self, name: &str, text: &str) {
        let mut escaped = String::with_capacity(text.len());
        for c in text.chars() {
            match c {
                '\\' | ';' | ',' => escaped.extend(['\\', c]),
                '\n' => escaped.push_str("\\n"),
                c => escaped.push(c),
            }
        }
        self.add(name, &escaped);
    }

    /// The whole file.
    pub fn into_bytes(self) -> Vec<u8> {
        self.text.into_bytes()
    }
}
