//! One thing that is wrong: its kind, its cause, its place and a remedy.

use super::code::Code;
use super::source::Span;

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    pub(super) code: Code,
    pub(super) cause: String,
    pub(super) at: Option<(Span, String)>,
    pub(super) also: Vec<(Span, String)>,
    pub(super) remedy: Option<String>,
    /// True if many lines may have it, each with an own cause.
    of_many_lines: bool,
    /// Further places of the same problem.
    pub(super) again: Vec<Span>,
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
            of_many_lines: false,
            again: Vec::new(),
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

    /// The same for a problem that many lines of a table may have: those with the same remedy are told
    /// once, whatever stands in them.
    #[must_use]
    pub fn of_many_lines(mut self) -> Self {
        self.of_many_lines = true;
        self
    }

    /// True if nothing but the place, or what stands in a line of a table, tells the two apart.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        let same_kind = self.code == other.code && self.remedy == other.remedy;
        let of_lines = self.of_many_lines && other.of_many_lines;
        same_kind && (of_lines || self.cause == other.cause)
    }

    /// Notes that it stands at another place too.
    pub(super) fn repeat(&mut self, span: Option<Span>) {
        if let Some(span) = span.filter(|span| self.span() != Some(*span)) {
            self.again.push(span);
        }
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

    /// The part of the text at which it stands, if it is about one.
    pub(super) fn span(&self) -> Option<Span> {
        self.at.as_ref().map(|(span, _)| *span)
    }
}
