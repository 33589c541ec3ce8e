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

    /// The part of the text at which it stands, if it is about one.
    pub(super) fn span(&self) -> Option<Span> {
        self.at.as_ref().map(|(span, _)| *span)
    }
}
