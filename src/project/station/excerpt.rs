//! What is wrong in a file that is not kept: the problems, and of the file only the lines that they are about.

use std::ops::Range;

use crate::diagnostic::{Findings, Problem, Problems, Read, Reported, Source, Span};

use super::lines::Line;

/// Lines that are kept with their text; of further ones only the numbers are told.
const MOST_TEXTS: usize = 300;

/// Wrong lines after which a file is read no further: it is not the table that it was taken for.
const MOST_LINES: usize = 10_000;

/// Bytes of a line that are kept.
const LONGEST_TEXT: usize = 1000;

/// The problems of a file, and the lines that they are about.
pub struct Excerpt {
    name: String,
    text: String,
    numbers: Vec<usize>,
    found: Findings,
}

impl Excerpt {
    /// Nothing wrong yet.
    pub fn new(name: String) -> Self {
        Self {
            name,
            text: String::new(),
            numbers: Vec::new(),
            found: Findings::default(),
        }
    }

    /// Reports what is wrong with a part of a line.
    pub fn report(&mut self, line: Line<'_>, at: Range<usize>, problem: Problem) -> Reported {
        let start = self.start_of(line);
        // Of a line that is not kept nothing can be marked.
        let end = self.text.len().saturating_sub(1).max(start);
        let span = Span {
            start: (start + at.start).min(end),
            end: (start + at.end).min(end),
        };
        self.found.report(problem.at(span, ""))
    }

    /// Reports what is wrong with the file as a whole.
    pub fn report_whole(&mut self, problem: Problem) -> Reported {
        self.found.report(problem)
    }

    /// True if so many lines are wrong that reading on tells nothing.
    pub fn is_full(&self) -> bool {
        self.numbers.len() >= MOST_LINES
    }

    /// What was made of the file, if nothing is wrong with it; else that is added to the problems.
    pub fn finish<T>(self, made: Read<T>, problems: &mut Problems) -> Option<T> {
        let sound = self.found.is_empty();
        let source = Source::of_lines(self.name, self.text, self.numbers);
        problems.add(source, self.found);
        made.ok().filter(|_| sound)
    }

    /// Where a line begins in the text that is kept; it is added if it is not there.
    fn start_of(&mut self, line: Line<'_>) -> usize {
        let last = self.text.trim_end_matches('\n').rfind('\n');
        if self.numbers.last() == Some(&line.number) {
            return last.map_or(0, |at| at + 1);
        }
        let start = self.text.len();
        if self.numbers.len() < MOST_TEXTS {
            let end = line.text.floor_char_boundary(LONGEST_TEXT);
            self.text.push_str(line.text.get(..end).unwrap_or_default());
        }
        self.text.push('\n');
        self.numbers.push(line.number);
        start
    }
}
