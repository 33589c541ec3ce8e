//! Slips of the pen in a project file that is not well formed: each is told once, with its place and
//! the right form, and mended in a copy of the text, so that the rest can be read and checked too.
//!
//! The copy has the same length, so that all places stay what they are.

mod mend;
mod reader;
mod scalar;

use crate::diagnostic::{Findings, Read, Span};

use super::tokens::{Piece, Quotes, pieces};

use mend::Mend;
use reader::Reader;
use scalar::Around;

/// The copy of a text without its slips, all of them told.
///
/// # Errors
/// That what is left cannot be read.
pub fn mended(text: &str, findings: &mut Findings) -> Read<String> {
    // Texts of several lines are for people who know the language.
    if text.contains("\"\"\"") || text.contains("'''") {
        return Ok(text.to_owned());
    }
    let mut mend = Mend::new(text, findings);
    let pieces = mend.without_signs(pieces(text));
    let mut reader = Reader {
        pieces,
        at: 0,
        depth: 0,
        mend,
    };
    while reader.at < reader.pieces.len() {
        reader.statement();
    }
    match reader.depth <= MOST_DEEP {
        true => reader.mend.text(),
        // The parser says so.
        false => Ok(text.to_owned()),
    }
}

/// Lists and tables within one another; no key of a project lies so deep.
const MOST_DEEP: usize = 16;

/// How a value ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum End {
    /// Where it should.
    Whole,
    /// It was spoiled as far as this; its statement is told and done.
    Spoiled,
}

impl Reader<'_, '_> {
    /// A line that begins at the outermost level.
    fn statement(&mut self) {
        match self.piece(0) {
            Some(Piece::Break) | None => self.at += 1,
            Some(Piece::Sign('[')) => self.heading(),
            _ => self.key_and_value(),
        }
    }

    /// `[name]` or `[[name]]`.
    fn heading(&mut self) {
        let from = self.at;
        self.skip_line();
        let signs = |sign: char| {
            let pieces = self.pieces.get(from..self.at).unwrap_or_default();
            pieces
                .iter()
                .filter(|(p, _)| *p == Piece::Sign(sign))
                .count()
        };
        let (opened, closed) = (signs('['), signs(']'));
        if opened != closed {
            let span = self.since(from);
            self.mend.open_heading(span, opened.max(closed));
        }
    }

    /// `key = value`.
    fn key_and_value(&mut self) {
        let key = self.here();
        let from = self.at;
        let after = self.piece(1);
        match after {
            Some(Piece::Sign('=')) => self.at += 2,
            Some(Piece::Sign(':')) => {
                self.mend.colon(key, self.span(self.at + 1));
                self.at += 2;
            }
            Some(Piece::Text(_) | Piece::Word) if self.is_value_alone(1) => {
                self.mend.no_equals(key, self.span(self.at + 1));
                self.at += 1;
            }
            _ => {
                self.skip_line();
                let line = self.since(from);
                return self.mend.no_statement(line);
            }
        }
        if self.is_sign(0, '=') {
            self.mend.equals_twice(self.here());
            self.at += 1;
        }
        if self.is_break() {
            return self.mend.no_value(key);
        }
        let value = self.at;
        let end = match self.piece(0) {
            Some(Piece::Word) => {
                self.skip_line();
                let rest = self.since(value);
                let rest = self.mend.without_semicolon(rest);
                self.mend.scalar(key, rest, Around::Line);
                End::Whole
            }
            _ => self.value(key, self.here().start),
        };
        if end == End::Whole && !self.is_break() {
            self.leftover(value);
        }
        self.skip_line();
    }

    /// True if a piece is the only one on the rest of its line, and stands for a value.
    fn is_value_alone(&self, ahead: usize) -> bool {
        let span = self.span(self.at + ahead);
        let is_value = match self.piece(ahead) {
            Some(Piece::Text(_)) => true,
            _ => self.mend.is_scalar(span),
        };
        is_value && matches!(self.piece(ahead + 1), Some(Piece::Break))
    }

    /// What stands behind a whole value.
    fn leftover(&mut self, value: usize) {
        let span = self.here();
        match self.piece(0) {
            Some(Piece::Sign(';' | ',')) => self.mend.needless(span),
            Some(Piece::Sign(sign @ (']' | '}'))) => {
                let whole = Span::from(self.span(value).start..span.end);
                self.mend.never_opened(span, sign, whole);
            }
            _ => {}
        }
    }

    /// A text, a list or a table; words are for the caller. `statement` is where the outermost value
    /// begins.
    fn value(&mut self, key: Span, statement: usize) -> End {
        match self.piece(0) {
            Some(Piece::Sign(sign @ ('[' | '{'))) => self.nested(sign, key, statement),
            Some(Piece::Text(Quotes::Open)) => {
                let text = self.here();
                self.mend.open_text(key, text);
                self.spoil(statement)
            }
            _ => {
                self.at += 1;
                End::Whole
            }
        }
    }

    /// A list or a table, unless there are too many around it.
    fn nested(&mut self, sign: char, key: Span, statement: usize) -> End {
        self.depth += 1;
        if self.depth > MOST_DEEP {
            self.at = self.pieces.len();
            return End::Spoiled;
        }
        let end = match sign {
            '[' => self.list(key, statement),
            _ => self.table(statement),
        };
        if self.depth <= MOST_DEEP {
            self.depth -= 1;
        }
        end
    }

    /// A list, from its bracket on.
    fn list(&mut self, key: Span, statement: usize) -> End {
        let open = self.here();
        self.at += 1;
        let mut value_before: Option<Span> = None;
        loop {
            let first_on_line = self.piece(0) == Some(Piece::Break);
            self.skip_breaks();
            if self.at >= self.pieces.len() || first_on_line && self.begins_statement() {
                self.mend.never_closed(open, key, self.here());
                return self.spoil(statement);
            }
            let (from, start) = (self.at, self.here());
            match self.piece(0) {
                Some(Piece::Sign(']')) => break,
                Some(Piece::Sign('}')) => {
                    self.mend.wrong_close(open, start, '}');
                    break;
                }
                Some(Piece::Sign(',' | ';')) => {
                    self.mend.comma(start, value_before.is_none());
                    value_before = None;
                    self.at += 1;
                    continue;
                }
                Some(Piece::Sign(sign)) if !"[{".contains(sign) => {
                    return self.broken(open, statement);
                }
                _ => {}
            }
            if let Some(before) = value_before
                && !self.mend.no_comma(before, start)
            {
                return self.spoil(statement);
            }
            let end = match self.piece(0) {
                Some(Piece::Word) => self.words(key),
                _ => self.value(key, statement),
            };
            if end == End::Spoiled {
                return end;
            }
            value_before = Some(self.since(from));
        }
        self.at += 1;
        End::Whole
    }

    /// One value of words in a list: several that are each a value lack commas.
    fn words(&mut self, key: Span) -> End {
        let from = self.at;
        while self.piece(0) == Some(Piece::Word) {
            self.at += 1;
        }
        let words: Vec<Span> = (from..self.at).map(|at| self.span(at)).collect();
        if words.len() > 1 && words.iter().all(|word| self.mend.is_scalar(*word)) {
            for pair in words.windows(2) {
                if let [before, after] = pair {
                    self.mend.no_comma(*before, *after);
                }
            }
            return End::Whole;
        }
        self.mend.scalar(key, self.since(from), Around::List);
        End::Whole
    }

    /// A table in braces, from its brace on.
    fn table(&mut self, statement: usize) -> End {
        let open = self.here();
        self.at += 1;
        let mut value_before: Option<Span> = None;
        loop {
            self.skip_breaks();
            let start = self.here();
            if self.at >= self.pieces.len() || self.begins_heading() {
                self.mend.never_closed(open, open, start);
                return self.spoil(statement);
            }
            match self.piece(0) {
                Some(Piece::Sign('}')) => break,
                Some(Piece::Sign(']')) => {
                    if self.mend.missing_brace(open, start) {
                        return End::Whole;
                    }
                    return self.spoil(statement);
                }
                Some(Piece::Sign(',' | ';')) => {
                    self.mend.comma(start, value_before.is_none());
                    self.at += 1;
                    if let (Some(before), Some(Piece::Word)) = (value_before, self.piece(0))
                        && !matches!(self.piece(1), Some(Piece::Sign('=' | ':')))
                    {
                        self.mend.comma_in_figure(before, self.here());
                        self.at += 1;
                    } else {
                        value_before = None;
                    }
                    continue;
                }
                _ => {}
            }
            if let Some(before) = value_before
                && !self.mend.no_comma(before, start)
            {
                return self.spoil(statement);
            }
            match self.piece(1) {
                Some(Piece::Sign('=')) => {}
                Some(Piece::Sign(':')) => self.mend.colon(start, self.span(self.at + 1)),
                _ => return self.broken(open, statement),
            }
            self.at += 2;
            let from = self.at;
            let end = match self.piece(0) {
                Some(Piece::Word) => self.one_value(start),
                Some(Piece::Break | Piece::Sign(',' | '}' | ']')) => self.broken(open, statement),
                _ => self.value(start, statement),
            };
            if end == End::Spoiled {
                return end;
            }
            value_before = Some(self.since(from));
        }
        self.at += 1;
        End::Whole
    }

    /// The words of one value in a table; a word before `=` is the next key.
    fn one_value(&mut self, key: Span) -> End {
        let from = self.at;
        while self.piece(0) == Some(Piece::Word) && !matches!(self.piece(1), Some(Piece::Sign('=')))
        {
            self.at += 1;
        }
        if self.at == from {
            self.at += 1;
        }
        self.mend.scalar(key, self.since(from), Around::List);
        End::Whole
    }

    /// Something that fits nowhere: the parser says more of it than we know.
    fn broken(&mut self, open: Span, statement: usize) -> End {
        self.mend.unclear(open, self.here());
        self.spoil(statement)
    }

    /// Goes on to the next statement and takes the value so far out of the copy.
    fn spoil(&mut self, statement: usize) -> End {
        while self.at < self.pieces.len() {
            let first_on_line =
                self.at > 0 && matches!(self.pieces.get(self.at - 1), Some((Piece::Break, _)));
            if first_on_line && self.begins_statement() {
                self.at -= 1;
                break;
            }
            self.at += 1;
        }
        let end = self.here().start;
        self.mend.spoil(Span::from(statement..end));
        End::Spoiled
    }
}
