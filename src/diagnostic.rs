//! What is wrong in a file: a stable code, the cause, the place and a remedy. All problems
//! of a file are gathered before any is shown.

mod code;
mod render;

pub use code::Code;

use std::fmt;
use std::ops::Range;

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

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    code: Code,
    cause: String,
    at: Option<(Span, String)>,
    also: Vec<(Span, String)>,
    remedy: Option<String>,
}

impl Problem {
    /// A problem of a kind, with its cause in one sentence without full stop.
    #[must_use]
    pub fn new(code: Code, cause: impl Into<String>) -> Self {
        Self {
            code,
            cause: cause.into(),
            at: None,
            also: Vec::new(),
            remedy: None,
        }
    }

    /// The place, and what is said beside it.
    #[must_use]
    pub fn at(mut self, span: Span, label: impl Into<String>) -> Self {
        self.at = Some((span, label.into()));
        self
    }

    /// Another place that matters, and what is said beside it.
    #[must_use]
    pub fn also(mut self, span: Span, label: impl Into<String>) -> Self {
        self.also.push((span, label.into()));
        self
    }

    /// What to do about it.
    #[must_use]
    pub fn remedy(mut self, remedy: impl Into<String>) -> Self {
        self.remedy = Some(remedy.into());
        self
    }

    /// Its kind.
    #[must_use]
    pub fn code(&self) -> Code {
        self.code
    }

    /// Its cause.
    #[must_use]
    pub fn cause(&self) -> &str {
        &self.cause
    }
}

/// Proof that a problem was reported: only `Findings::report` makes one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reported(());

/// A value, or proof that its absence was reported.
pub type Read<T> = Result<T, Reported>;

/// A look at what was read, without taking it.
///
/// # Errors
/// The proof that its absence was reported.
pub fn peek<T>(read: &Read<T>) -> Read<&T> {
    read.as_ref().map_err(|reported| *reported)
}

/// Problems that are kept of one file; the rest is only counted.
const MOST_KEPT: usize = 200;

/// The problems of one file as they are found.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Findings {
    kept: Vec<Problem>,
    more: usize,
    spoiled: Vec<Span>,
}

impl Findings {
    /// Adds a problem and marks its place as spoiled: what else is found there follows from it.
    pub fn spoil(&mut self, problem: Problem) -> Reported {
        let span = problem.at.as_ref().map(|(span, _)| *span);
        let reported = self.report(problem);
        let room = MOST_KEPT.saturating_sub(self.spoiled.len());
        self.spoiled.extend(span.into_iter().take(room));
        reported
    }

    /// Adds a problem, unless it is told already or its place is spoiled.
    pub fn report(&mut self, problem: Problem) -> Reported {
        let spoiled = |at: &Span| self.spoiled.iter().any(|span| span.overlaps(*at));
        if problem.at.as_ref().is_some_and(|(at, _)| spoiled(at)) {
            return Reported(());
        }
        if self.kept.len() >= MOST_KEPT {
            self.more += 1;
        } else if !self.kept.contains(&problem) {
            self.kept.push(problem);
        }
        Reported(())
    }

    /// How many were reported.
    #[must_use]
    pub fn len(&self) -> usize {
        self.kept.len() + self.more
    }

    /// True if nothing was reported.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }
}

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

/// Everything that is wrong with a project, file by file. Never empty where it is an error.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Problems {
    files: Vec<(Source, Findings)>,
}

impl Problems {
    /// Adds what was found in a file, in the order of the text; nothing if nothing was found.
    pub fn add(&mut self, source: Source, mut findings: Findings) {
        if !findings.is_empty() {
            findings
                .kept
                .sort_by_key(|p| p.at.as_ref().map(|(span, _)| *span));
            self.files.push((source, findings));
        }
    }

    /// True if nothing is wrong.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.files.is_empty()
    }

    /// How many problems there are.
    #[must_use]
    pub fn len(&self) -> usize {
        self.files.iter().map(|(_, found)| found.len()).sum()
    }

    /// The kinds of all problems that are kept, in the order in which they are shown.
    pub fn codes(&self) -> impl Iterator<Item = Code> {
        self.files
            .iter()
            .flat_map(|(_, found)| found.kept.iter().map(Problem::code))
    }

    /// All problems as text for a reader, at most `width` columns wide, and their number.
    #[must_use]
    pub fn render(&self, color: bool, width: usize) -> String {
        render::render(&self.files, color, width)
    }
}

impl fmt::Display for Problems {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.render(false, render::USUAL_WIDTH))
    }
}

impl std::error::Error for Problems {}
