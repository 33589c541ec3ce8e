//! A text, a part of it, and a value with its place.

use std::ops::Range;

/// A text file, named as the user named it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Source {
    /// Its name, as printed.
    pub name: String,
    /// Its text; empty if it could not be read.
    pub text: String,
}

impl Source {
    /// A file whose text could not be read.
    #[must_use]
    pub fn unread(name: String) -> Self {
        let text = String::new();
        Self { name, text }
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
