//! The problems of one file as they are found, and the proof that one was reported.

use super::problem::Problem;
use super::source::Span;

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
        let span = problem.span();
        let reported = self.report(problem);
        if let Some(span) = span {
            self.mark(span);
        }
        reported
    }

    /// Marks a place as spoiled: what is found there follows from what was told already.
    pub fn mark(&mut self, span: Span) {
        if self.spoiled.len() < MOST_KEPT {
            self.spoiled.push(span);
        }
    }

    /// Adds a problem, unless it is told already or its place is spoiled. One that is told of
    /// another place is only counted there.
    pub fn report(&mut self, problem: Problem) -> Reported {
        let spoiled = |at: Span| self.spoiled.iter().any(|span| span.overlaps(at));
        if problem.span().is_some_and(spoiled) {
            return Reported(());
        }
        if let Some(told) = self.kept.iter_mut().find(|told| told.is_like(&problem)) {
            told.repeat(problem.span());
        } else if self.kept.len() >= MOST_KEPT {
            self.more += 1;
        } else {
            self.kept.push(problem);
        }
        Reported(())
    }

    /// How many were reported; those that repeat count once.
    #[must_use]
    pub fn len(&self) -> usize {
        self.kept.len() + self.more
    }

    /// True if nothing was reported.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// Those that are kept.
    pub(super) fn kept(&self) -> &[Problem] {
        &self.kept
    }

    /// Puts those that are kept in the order of the text.
    pub(super) fn sort(&mut self) {
        self.kept.sort_by_key(Problem::span);
    }
}
