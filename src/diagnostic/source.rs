//! A text, a part of it, and a value with its place.

use std::ops::Range;

/// A text file, named as the user named it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Its name, as printed.
    pub name: String,
    /// Its text, or those of its lines that are spoken of; empty if it could not be read.
    pub text: String,
    /// The numbers of the lines of `text`, counted from 1, where it is not the whole file.
    numbers: Option<Vec<usize>>,
}

impl Source {
    /// A file with all of its text.
    #[must_use]
    pub fn whole(name: String, text: String) -> Self {
        let numbers = None;
        Self {
            name,
            text,
            numbers,
        }
    }

    /// A file whose text could not be read.
    #[must_use]
    pub fn unread(name: String) -> Self {
        Self::whole(name, String::new())
    }

    /// Some lines of a file too long to be kept, each with a line break at its end, and their numbers.
    #[must_use]
    pub fn of_lines(name: String, text: String, numbers: Vec<usize>) -> Self {
        let numbers = Some(numbers);
        Self {
            name,
            text,
            numbers,
        }
    }

    /// The line of the file in which a byte of the text stands; lines count from 1.
    #[must_use]
    pub fn line_number(&self, at: usize) -> usize {
        let before = self.text.get(..at).unwrap_or_default();
        let line = before.matches('\n').count();
        let numbers = self.numbers.as_ref();
        numbers
            .and_then(|numbers| numbers.get(line).copied())
            .unwrap_or(line + 1)
    }
}

/// A part of a text, in bytes from its start.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// True if the two share a byte.
    #[must_use]
    pub fn overlaps(self, other: Self) -> bool {
        self.start < other.end && other.start < self.end
    }
}

impl From<Range<usize>> for Span {
    fn from(range: Range<usize>) -> Self {
        Self {
            start: range.start,
            end: range.end,
        }
    }
}

/// A value as the file gives it, with its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Given<T> {
    /// The value.
    pub value: T,
    /// Where it stands.
    pub span: Span,
}
