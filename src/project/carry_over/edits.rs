//! Edits of a text by place: all else in it stays as it was written.

use std::ops::Range;

/// Edits to be made, each at its place in the text as it was.
pub struct Edits<'t> {
    /// The text as it was.
    pub text: &'t str,
    edits: Vec<(Range<usize>, String)>,
}

impl<'t> Edits<'t> {
    /// None yet.
    pub fn of(text: &'t str) -> Self {
        Self {
            text,
            edits: Vec::new(),
        }
    }

    /// Something else in place of a part of the text.
    pub fn put(&mut self, place: Range<usize>, new: String) {
        self.edits.push((place, new));
    }

    /// A line before the one in which a place lies, with its indent.
    pub fn line_before(&mut self, at: usize, line: &str) {
        let start = self.line_of(at).start;
        let indent: String = self.blanks_from(start).collect();
        self.put(start..start, format!("{indent}{line}\n"));
    }

    /// Takes a key with its value out of its table: with its line where that holds nothing else but a remark, else
    /// with one comma beside it.
    pub fn take_out(&mut self, place: Range<usize>) {
        let line = self.line_of(place.start).start..self.line_of(place.end).end;
        let before = self.text.get(line.start..place.start).unwrap_or_default();
        let after = self.text.get(place.end..line.end).unwrap_or_default();
        let is_remark = |rest: &str| rest.trim().is_empty() || rest.trim().starts_with('#');
        let place = if before.trim().is_empty() && is_remark(after.trim().trim_start_matches(',')) {
            line
        } else if let Some(rest) = after.trim_start().strip_prefix(',') {
            let end = line.end - rest.trim_start().len();
            place.start..end
        } else {
            let before = before.trim_end();
            let before = before.strip_suffix(',').map_or(before, str::trim_end);
            line.start + before.len()..place.end
        };
        self.put(place, String::new());
    }

    /// The line in which a place lies, with its end.
    pub fn line_of(&self, at: usize) -> Range<usize> {
        let (before, after) = (self.text.get(..at), self.text.get(at..));
        let start = before
            .and_then(|text| text.rfind('\n'))
            .map_or(0, |n| n + 1);
        let end = after.and_then(|text| text.find('\n'));
        start..end.map_or(self.text.len(), |n| at + n + 1)
    }

    fn blanks_from(&self, at: usize) -> impl Iterator<Item = char> {
        let rest = self.text.get(at..).unwrap_or_default().chars();
        rest.take_while(|c| *c == ' ' || *c == '\t')
    }

    /// The text with all edits made. What lies in a part that another one takes out falls away.
    pub fn made(mut self) -> String {
        self.edits.sort_by_key(|(place, _)| place.start);
        let (mut made, mut at) = (String::new(), 0);
        for (place, new) in self.edits {
            if place.start >= at || place.end > at {
                made += self.text.get(at..place.start).unwrap_or_default();
                made += &new;
                at = place.end;
            }
        }
        made + self.text.get(at..).unwrap_or_default()
    }
}
