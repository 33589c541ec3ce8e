//! Tells slips and mends them in a copy of the text that has the same length.

use crate::diagnostic::{Code, Findings, Problem, Read, Reported, Span};

use super::super::names::quote;
use super::super::tokens::{Piece, Quotes, invisible};

/// A text that is being mended.
pub struct Mend<'t, 'f> {
    text: &'t str,
    copy: Vec<u8>,
    /// The last that was told.
    told: Option<Reported>,
    readable: bool,
    findings: &'f mut Findings,
}

impl<'t, 'f> Mend<'t, 'f> {
    /// A text as it is.
    pub fn new(text: &'t str, findings: &'f mut Findings) -> Self {
        Self {
            text,
            copy: text.as_bytes().to_vec(),
            told: None,
            readable: true,
            findings,
        }
    }

    /// The copy, if it can be read.
    pub fn text(self) -> Read<String> {
        match (self.told, String::from_utf8(self.copy)) {
            (Some(told), _) if !self.readable => Err(told),
            (_, Ok(copy)) => Ok(copy),
            // Signs are put in place of whole signs only.
            (_, Err(_)) => Ok(self.text.to_owned()),
        }
    }

    /// What stands at a place.
    pub fn at(&self, span: Span) -> &'t str {
        self.text.get(span.start..span.end).unwrap_or_default()
    }

    /// Tells a slip.
    pub fn tell(&mut self, cause: impl Into<String>, at: Span, remedy: impl Into<String>) {
        let problem = Problem::new(Code::Syntax, cause).at(at, "");
        self.tell_problem(problem.remedy(remedy));
    }

    /// Tells a slip that has several places.
    pub fn tell_problem(&mut self, problem: Problem) {
        self.told = Some(self.findings.report(problem));
    }

    /// Puts something in a place of the copy; false if it does not fit.
    pub fn put(&mut self, span: Span, new: &str) -> bool {
        let Some(old) = self.copy.get_mut(span.start..span.end) else {
            return false;
        };
        if new.len() > old.len() {
            return false;
        }
        let mut signs = new.bytes();
        // Lines stay lines, so that the copy is read as the text would be.
        for old in old.iter_mut().filter(|old| **old != b'\n') {
            *old = signs.next().unwrap_or(b' ');
        }
        true
    }

    /// Takes a value out of the copy. An empty table stands in its place: the error that it is none is
    /// not told.
    pub fn spoil(&mut self, span: Span) {
        self.findings.mark(span);
        self.readable &= self.put(span, "{}");
    }

    /// Mends signs that are wrong wherever they stand, and leaves the pieces without them.
    pub fn without_signs(&mut self, pieces: Vec<(Piece, Span)>) -> Vec<(Piece, Span)> {
        let mut kept = Vec::new();
        for (piece, span) in pieces {
            match piece {
                Piece::Invisible(sign) => self.invisible(sign, span),
                Piece::Slashes => self.slashes(span),
                Piece::Text(Quotes::Curly) => {
                    self.curly(span);
                    kept.push((Piece::Text(Quotes::Straight), span));
                }
                piece => kept.push((piece, span)),
            }
        }
        kept
    }

    fn invisible(&mut self, sign: char, span: Span) {
        let name = invisible(sign).unwrap_or("an unknown sign");
        let cause = format!(
            "a sign that nobody sees: {name} (U+{:04X})",
            u32::from(sign)
        );
        let remedy = "delete what looks like a blank here, and type a blank; such signs come with \
                      text that was copied from elsewhere";
        self.tell(cause, span, remedy);
        self.put(span, "");
    }

    fn slashes(&mut self, span: Span) {
        let remedy = format!(
            "write # in place of //: # {}",
            self.at(span).trim_matches('/').trim()
        );
        self.tell("a remark begins with #, not with //", span, remedy);
        self.put(Span::from(span.start..span.start + 1), "#");
    }

    fn curly(&mut self, span: Span) {
        let text = self.at(span);
        let mut signs = text.chars();
        let (open, close) = (
            signs.next().map_or(0, char::len_utf8),
            signs.next_back().map_or(0, char::len_utf8),
        );
        let inner = signs.as_str();
        let remedy = format!(
            "write straight quotes: \"{inner}\"; a word processor sets curly ones, a plain text editor does not"
        );
        self.tell("these are curly quotes", span, remedy);
        self.put(Span::from(span.start..span.start + open), "\"");
        let end = Span::from(span.end - close..span.end);
        self.put(end, &format!("{}\"", " ".repeat(close - 1)));
    }

    /// A heading that lacks a bracket.
    pub fn open_heading(&mut self, span: Span, brackets: usize) {
        let name = self.at(span).trim_matches(['[', ']', ' ']);
        let (open, close) = ("[".repeat(brackets), "]".repeat(brackets));
        let remedy = format!("write {open}{name}{close}");
        self.tell("a bracket of this section's name is missing", span, remedy);
        self.readable = false;
    }

    /// `name: "x"`.
    pub fn colon(&mut self, key: Span, colon: Span) {
        let rest = self.text.get(colon.end..).unwrap_or_default();
        let value = rest.split(['\n', ',', '}', '#']).next().unwrap_or_default();
        let remedy = format!("write {} = {}", self.at(key), value.trim());
        let cause = "between a key and its value stands =, not a colon";
        self.tell(cause, colon, remedy);
        self.put(colon, "=");
    }

    /// `name "x"`.
    pub fn no_equals(&mut self, key: Span, value: Span) {
        let remedy = format!("write {} = {}", self.at(key), self.at(value));
        let whole = Span::from(key.start..value.end);
        self.tell("there is no = between a key and its value", whole, remedy);
        self.put(Span::from(key.end..key.end + 1), "=");
    }

    /// `name == "x"`.
    pub fn equals_twice(&mut self, second: Span) {
        self.tell("one = is enough", second, "write key = value");
        self.put(second, "");
    }

    /// `name =`.
    pub fn no_value(&mut self, key: Span) {
        let name = self.at(key);
        let remedy =
            format!("write a value behind {name} =, or put # before the line to leave it out");
        self.tell(format!("`{name}` has no value"), key, remedy);
        self.readable = false;
    }

    /// A line that is neither a section, nor a key with a value, nor a remark.
    pub fn no_statement(&mut self, line: Span) {
        let remedy = "write key = value; a remark begins with #";
        let cause = "this line is no section, no key with a value and no remark";
        self.tell(cause, line, remedy);
        self.put(Span::from(line.start..line.start + 1), "#");
    }

    /// A semicolon at the end of a line, taken off the value that stands before it.
    pub fn without_semicolon(&mut self, span: Span) -> Span {
        let value = self.at(span).trim_end_matches([';', ',', ' ']);
        let end = span.start + value.len();
        if end < span.end {
            self.needless(Span::from(end..span.end));
        }
        Span::from(span.start..end)
    }

    /// A comma or semicolon where nothing follows.
    pub fn needless(&mut self, span: Span) {
        let cause = format!("a line does not end with {}", quote(self.at(span)));
        self.tell(
            cause,
            span,
            "remove it: each key stands on a line of its own",
        );
        self.put(span, "");
    }

    /// A bracket that closes what nobody opened.
    pub fn never_opened(&mut self, close: Span, sign: char, value: Span) {
        let (open, what) = if sign == ']' {
            ('[', "list")
        } else {
            ('{', "table")
        };
        let cause = format!("this {sign} closes a {what} that is not open");
        let remedy = format!("write {open} before the first value, or remove the {sign}");
        self.tell(cause, close, remedy);
        self.spoil(value);
    }

    /// A list or a table without end.
    pub fn never_closed(&mut self, open: Span, key: Span, next: Span) {
        let (sign, what) = closing(self.at(open));
        let name = match key == open {
            true => String::new(),
            false => format!(" of `{}`", self.at(key)),
        };
        let problem = Problem::new(
            Code::Syntax,
            format!("the {what}{name} has no closing {sign}"),
        )
        .at(open, "it opens here")
        .remedy(format!("write {sign} behind its last value"));
        let problem = match next.start < self.text.len() {
            true => problem.also(next, "and is still open here"),
            false => problem,
        };
        self.tell_problem(problem);
    }

    /// A list that ends with a brace.
    pub fn wrong_close(&mut self, open: Span, close: Span, sign: char) {
        let (right, what) = closing(self.at(open));
        let problem = Problem::new(Code::Syntax, format!("this {what} ends with {sign}"))
            .at(close, "")
            .also(open, "it opens here")
            .remedy(format!("write {right} in its place"));
        self.tell_problem(problem);
        self.put(close, &right.to_string());
    }

    /// A table whose list ends before it; false if the copy cannot be mended.
    pub fn missing_brace(&mut self, open: Span, list_end: Span) -> bool {
        let problem = Problem::new(Code::Syntax, "the table has no closing }")
            .at(open, "it opens here")
            .also(list_end, "and is still open here")
            .remedy("write } behind its last value");
        self.tell_problem(problem);
        let before = Span::from(list_end.start.saturating_sub(1)..list_end.start);
        self.at(before) == " " && self.put(before, "}")
    }

    /// A sign between two values: it is a comma, and a value stands before it.
    pub fn comma(&mut self, sign: Span, nothing_before: bool) {
        if nothing_before {
            self.tell(
                "a comma too many",
                sign,
                "write one comma between two values",
            );
            self.put(sign, "");
        } else if self.at(sign) != "," {
            self.tell(
                "between values stands a comma",
                sign,
                "write , in its place",
            );
            self.put(sign, ",");
        }
    }

    /// Two values without a comma; false if the copy cannot be mended.
    pub fn no_comma(&mut self, before: Span, after: Span) -> bool {
        let gap = Span::from(before.end..before.end + 1);
        let places = Span::from(before.end.saturating_sub(1)..before.end);
        let remedy = "write a comma behind each value but the last";
        let problem = Problem::new(Code::Syntax, "there is no comma between two values")
            .at(places, "behind this")
            .also(after, "and before this");
        self.tell_problem(problem.remedy(remedy));
        before.end < after.start && {
            let fits = self.at(gap) != "\n" || after.start > before.end + 1;
            let gap = match self.at(gap) {
                "\n" => Span::from(gap.start + 1..gap.end + 1),
                _ => gap,
            };
            fits && self.put(gap, ",")
        }
    }

    /// What is not clear.
    pub fn unclear(&mut self, open: Span, here: Span) {
        let (_, what) = closing(self.at(open));
        let form = match what {
            "list" => "[1, 2, 3]",
            _ => "{ name = \"2a\", children = 20 }",
        };
        let problem = Problem::new(Code::Syntax, format!("this cannot stand in a {what}"))
            .at(here, "")
            .also(open, format!("the {what} opens here"))
            .remedy(format!("it is written like this: {form}"));
        self.tell_problem(problem);
    }

    /// A text without its closing quote.
    pub fn open_text(&mut self, key: Span, text: Span) {
        let words = self.at(text).chars().skip(1).collect::<String>();
        let words = words.trim_end_matches(['}', ']', ',', ' ']);
        let key = self.at(key);
        let whole = format!("the whole text in quotes: {key} = {}", quote(words));
        let remedy = match words.trim().parse::<f64>() {
            Ok(_) => format!(
                "write the number without quotes: {key} = {}; or {whole}",
                words.trim()
            ),
            Err(_) => format!("write {whole}"),
        };
        self.tell("this text has no closing quote", text, remedy);
    }
}

/// The sign that closes what a sign opens, and what that is.
fn closing(open: &str) -> (char, &'static str) {
    match open {
        "[" => (']', "list"),
        _ => ('}', "table"),
    }
}
