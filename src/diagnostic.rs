//! What is wrong in a file: a stable code, the cause, the place and a remedy. All problems
//! of a file are gathered before any is shown.

mod code;
mod findings;
mod problem;
mod render;
mod source;

use std::fmt;

pub use code::Code;
pub use findings::{Findings, Read, Reported, peek};
pub use problem::Problem;
pub use source::{Given, Source, Span};

/// Everything that is wrong with a project, file by file. Never empty where it is an error.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Problems {
    files: Vec<(Source, Findings)>,
}

impl Problems {
    /// Adds what was found in a file, in the order of the text; nothing if nothing was found.
    pub fn add(&mut self, source: Source, mut findings: Findings) {
        if !findings.is_empty() {
            findings.sort();
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
            .flat_map(|(_, found)| found.kept().iter().map(Problem::code))
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
