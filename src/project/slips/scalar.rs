//! Slips in a single value: dates, times and figures as people write them, and text without quotes.

use crate::diagnostic::{Code, Problem, Span};

use super::super::form::unit;
use super::super::meant;
use super::super::names::quote;
use super::mend::Mend;

/// What a value stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Around {
    /// Alone on its line, so that a comma in it parts nothing.
    Line,
    /// In a list or a table.
    List,
}

/// Dashes that look like a hyphen.
const DASHES: [char; 6] = [
    '\u{2010}', '\u{2011}', '\u{2012}', '\u{2013}', '\u{2014}', '\u{2212}',
];

/// Words for true and false.
const FLAGS: [(&str, bool); 8] = [
    ("yes", true),
    ("no", false),
    ("true", true),
    ("false", false),
    ("on", true),
    ("off", false),
    ("y", true),
    ("n", false),
];

/// What a value was meant to be.
struct Slip {
    cause: String,
    remedy: String,
    /// As it would be written, if there is no doubt.
    right: Option<String>,
}

impl Mend<'_, '_> {
    /// True if a place holds a number, a date, a time, true or false, well formed.
    pub fn is_scalar(&self, span: Span) -> bool {
        well_formed(self.at(span))
    }

    /// A value of words.
    pub fn scalar(&mut self, key: Span, span: Span, around: Around) {
        let text = self.at(span);
        if well_formed(text) || is_date_in_form(text) {
            return;
        }
        let key = self.at(key);
        let slip = dash(key, text)
            .or_else(|| date(key, text))
            .or_else(|| time(key, text))
            .or_else(|| decimal_comma(key, text, around))
            .or_else(|| flag(key, text))
            .or_else(|| with_unit(key, text))
            .unwrap_or_else(|| words(key, text));
        let Slip {
            cause,
            remedy,
            right,
        } = slip;
        self.tell(cause, span, remedy);
        if !right.is_some_and(|right| self.put(span, &right)) {
            self.spoil(span);
        }
    }

    /// `minutes = 37,5` in a table.
    pub fn comma_in_figure(&mut self, before: Span, after: Span) {
        let span = Span::from(before.start..after.end);
        let right = self.at(span).replacen(',', ".", 1).replace(' ', "");
        let problem = Problem::new(
            Code::Syntax,
            "a comma parts two values, and is no decimal point",
        )
        .at(span, "")
        .remedy(format!("write {right}"));
        self.tell_problem(problem);
        self.put(span, &right);
    }
}

/// True for a value as the file may hold it.
fn well_formed(text: &str) -> bool {
    format!("value = {text}").parse::<toml::Table>().is_ok()
}

/// True for year-month-day in digits: whether that day exists, the parser tells.
fn is_date_in_form(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let digits = |part: &&str| part.chars().all(|c| c.is_ascii_digit());
    parts.iter().map(|part| part.len()).eq([4, 2, 2]) && parts.iter().all(digits)
}

fn dash(key: &str, text: &str) -> Option<Slip> {
    let right = text.replace(DASHES, "-");
    (right != text && (well_formed(&right) || is_date_in_form(&right))).then(|| Slip {
        cause: "a long dash stands where a hyphen should be".to_owned(),
        remedy: format!("write {key} = {right}, with the short sign of the keyboard"),
        right: Some(right),
    })
}

fn date(key: &str, text: &str) -> Option<Slip> {
    let dates = meant::dates(text);
    let right = match dates.as_slice() {
        [] => return None,
        [one] => Some(one.to_string()),
        _ => None,
    };
    let which = match right.is_some() {
        true => "",
        false => ", whichever is meant",
    };
    Some(Slip {
        cause: format!("{} is not how a date is written here", quote(text)),
        remedy: format!(
            "write year-month-day: {key} = {}{which}",
            meant::written(&dates)
        ),
        right,
    })
}

fn time(key: &str, text: &str) -> Option<Slip> {
    let clock = text.contains(':') || text.to_lowercase().ends_with('m') && key == "at";
    if !clock || !text.starts_with(|c: char| c.is_ascii_digit()) {
        return None;
    }
    let right = meant::time(text).map(|time| time.format("%H:%M").to_string());
    Some(Slip {
        cause: format!("{} is not how a time of day is written here", quote(text)),
        remedy: match &right {
            Some(right) => format!("write two digits for hours and for minutes: {key} = {right}"),
            None => "write hours and minutes, 00:00 to 23:59".to_owned(),
        },
        right,
    })
}

fn decimal_comma(key: &str, text: &str, around: Around) -> Option<Slip> {
    let (before, after) = text.split_once(',').filter(|_| around == Around::Line)?;
    let digits = |part: &str| !part.is_empty() && part.chars().all(|c| c.is_ascii_digit());
    let after = after.trim();
    let before = before.trim();
    if !digits(before.trim_start_matches(['-', '+'])) || !digits(after) {
        return None;
    }
    let right = format!("{before}.{after}");
    Some(Slip {
        cause: format!("{} has a comma for the decimal point", quote(text)),
        remedy: format!("write {key} = {right}"),
        right: Some(right),
    })
}

fn flag(key: &str, text: &str) -> Option<Slip> {
    let low = text.to_lowercase();
    let (_, right) = FLAGS.iter().find(|(word, _)| *word == low)?;
    Some(Slip {
        cause: format!("{} is neither true nor false", quote(text)),
        remedy: format!("write {key} = {right}, in small letters and without quotes"),
        right: Some(right.to_string()),
    })
}

fn with_unit(key: &str, text: &str) -> Option<Slip> {
    let (figure, given) = meant::figure(text).filter(|(_, given)| !given.is_empty())?;
    if !given.starts_with(['%', '\u{b0}', '\'', '"']) && !meant::is_unit(&given.to_lowercase()) {
        return None;
    }
    let right = meant::converted(figure, given, unit(key)).map(|right| right.to_string());
    let of_what = unit(key).map_or_else(String::new, |unit| format!("; it is in {unit}"));
    Some(Slip {
        cause: format!("{} has its unit beside it", quote(text)),
        remedy: match &right {
            Some(right) => format!("write digits only: {key} = {right}{of_what}"),
            None => format!("write digits only: {key} = {figure}{of_what}"),
        },
        right,
    })
}

/// What is nothing that a file holds: text without quotes, or a figure that is none.
fn words(key: &str, text: &str) -> Slip {
    let right = quote(text);
    let (cause, remedy) = match text.starts_with(char::is_alphabetic) {
        // What has a unit is a figure.
        true if unit(key).is_some() => (
            format!("{right} is no number"),
            format!("write digits: {key} = ..."),
        ),
        true => (
            "this text is not in quotes".to_owned(),
            format!("write {key} = {right}"),
        ),
        false => (
            format!("{right} is no number, no date and no time of day"),
            format!(
                "a number is 2.4, a date is 2027-10-08, a time is 10:15; if it is a text, write \
                 {key} = {right}"
            ),
        ),
    };
    Slip {
        cause,
        remedy,
        right: None,
    }
}
