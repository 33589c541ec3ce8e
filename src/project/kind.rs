//! The kinds of values that the project file holds: text, numbers in a range, dates, words
//! from a list, and lists. Each reads a value or reports what is wrong with it.

use std::fmt::Display;
use std::ops::RangeInclusive;

use chrono::{Datelike, NaiveDate};
use toml::Spanned;
use toml::de::{DeInteger, DeValue};
use toml::value::Datetime;

use crate::calendar::{Date, Time};
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::Sun;

use super::names::{code, near, quote};

/// Years that a date may lie in.
const YEARS: RangeInclusive<i32> = 1900..=2200;

/// Letters that a text may have.
const LONGEST_TEXT: usize = 200;

/// The words for sun.
const SUN: [(&str, Sun); 3] = [
    ("full", Sun::Full),
    ("part", Sun::Part),
    ("shade", Sun::Shade),
];

/// A value of the file with its key.
pub struct Value<'t> {
    /// The key, or the list's key for a value of a list.
    pub key: &'t str,
    /// Where the value stands.
    pub span: Span,
    /// The value.
    pub value: &'t DeValue<'t>,
}

impl<'t> Value<'t> {
    /// A value under a key.
    pub fn new(key: &'t str, value: &'t Spanned<DeValue<'t>>) -> Self {
        Self {
            key,
            span: value.span().into(),
            value: value.get_ref(),
        }
    }

    /// The problem that the value is not `wanted`.
    pub fn wrong_type(&self, wanted: &str) -> Problem {
        Problem::new(
            Code::WrongType,
            format!("{} should be {wanted}", code(self.key)),
        )
        .at(self.span, format!("this is {}", type_in_words(self.value)))
    }

    fn out_of_range(&self, range: impl Display) -> Problem {
        Problem::new(
            Code::OutOfRange,
            format!("{} should be {range}", code(self.key)),
        )
        .at(self.span, "this is out of range")
    }
}

fn type_in_words(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) => "a whole number",
        DeValue::Float(_) => "a number with a decimal point",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(at) if at.date.is_none() => "a time",
        DeValue::Datetime(at) if at.time.is_some() => "a date with a time",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// A text that is not empty and fits on a line.
pub fn text(value: &Value<'_>, findings: &mut Findings) -> Read<String> {
    let DeValue::String(text) = value.value else {
        let problem = value.wrong_type("text");
        return Err(findings.report(problem.remedy("put it in quotes: \"...\"")));
    };
    if text.trim().is_empty() {
        let cause = format!("{} is empty", code(value.key));
        let problem = Problem::new(Code::EmptyText, cause)
            .at(value.span, "")
            .remedy("write something between the quotes, or remove the key if it is not needed");
        return Err(findings.report(problem));
    }
    let printable = !text.chars().any(char::is_control);
    if !printable || text.chars().count() > LONGEST_TEXT {
        let cause = format!("{} cannot be printed in a report", code(value.key));
        let label = match printable {
            true => format!("more than {LONGEST_TEXT} letters"),
            false => "this holds a tab, a line break or another control sign".to_owned(),
        };
        let problem = Problem::new(Code::BadText, cause).at(value.span, label);
        return Err(findings.report(problem.remedy("write it in one short line")));
    }
    Ok(text.trim().to_owned())
}

/// True or false.
pub fn flag(value: &Value<'_>, findings: &mut Findings) -> Read<bool> {
    value
        .value
        .as_bool()
        .ok_or_else(|| findings.report(value.wrong_type("true or false, without quotes")))
}

/// A number in a range.
pub fn number(range: RangeInclusive<f64>) -> impl Fn(&Value<'_>, &mut Findings) -> Read<f64> {
    move |value, findings| {
        let parsed = match value.value {
            DeValue::Integer(digits) => whole(digits).map(|n| n as f64),
            DeValue::Float(digits) => digits.as_str().parse().ok(),
            _ => {
                let problem = value.wrong_type("a number");
                return Err(findings.report(problem.remedy("write digits without quotes")));
            }
        };
        let limits = format!("{} to {}", range.start(), range.end());
        parsed
            .filter(|n| range.contains(n))
            .ok_or_else(|| findings.report(value.out_of_range(limits)))
    }
}

/// A whole number in a range.
pub fn count(range: RangeInclusive<u32>) -> impl Fn(&Value<'_>, &mut Findings) -> Read<u32> {
    move |value, findings| {
        let DeValue::Integer(digits) = value.value else {
            let problem = value.wrong_type("a whole number");
            let remedy = "write digits without quotes and without a decimal point";
            return Err(findings.report(problem.remedy(remedy)));
        };
        let limits = format!("{} to {}", range.start(), range.end());
        whole(digits)
            .and_then(|n| u32::try_from(n).ok())
            .filter(|n| range.contains(n))
            .ok_or_else(|| findings.report(value.out_of_range(limits)))
    }
}

fn whole(digits: &DeInteger<'_>) -> Option<i64> {
    i64::from_str_radix(digits.as_str(), digits.radix()).ok()
}

/// A date without a time.
pub fn date(value: &Value<'_>, findings: &mut Findings) -> Read<Date> {
    let DeValue::Datetime(Datetime {
        date: Some(date),
        time: None,
        offset: None,
    }) = value.value
    else {
        let problem = value.wrong_type("a date");
        let remedy = "write year-month-day without quotes and without a time, such as 2027-10-08";
        return Err(findings.report(problem.remedy(remedy)));
    };
    let day = NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into());
    day.filter(|day| YEARS.contains(&day.year()))
        .ok_or_else(|| {
            let limits = format!("in the years {} to {}", YEARS.start(), YEARS.end());
            findings.report(value.out_of_range(limits))
        })
}

/// A time of day without a date, to the minute.
pub fn time(value: &Value<'_>, findings: &mut Findings) -> Read<Time> {
    let DeValue::Datetime(Datetime {
        date: None,
        time: Some(time),
        offset: None,
    }) = value.value
    else {
        let problem = value.wrong_type("a time of day");
        let remedy = "write hours and minutes without quotes, such as 10:15";
        return Err(findings.report(problem.remedy(remedy)));
    };
    let whole = time.second.unwrap_or(0) == 0 && time.nanosecond.unwrap_or(0) == 0;
    Time::from_hms_opt(time.hour.into(), time.minute.into(), 0)
        .filter(|_| whole)
        .ok_or_else(|| findings.report(value.out_of_range("a whole minute of the day")))
}

/// One of a few words, in any case.
pub fn word<T: Copy>(words: &[(&'static str, T)]) -> impl Fn(&Value<'_>, &mut Findings) -> Read<T> {
    move |value, findings| {
        let list: Vec<String> = words.iter().map(|(w, _)| quote(w)).collect();
        let list = list.join(", ");
        let Some(given) = value.value.as_str() else {
            return Err(findings.report(value.wrong_type(&format!("one of {list}"))));
        };
        let found = words
            .iter()
            .find(|(w, _)| w.eq_ignore_ascii_case(given.trim()));
        found.map(|(_, meaning)| *meaning).ok_or_else(|| {
            let cause = format!("{} cannot be {}", code(value.key), quote(given));
            let remedy = match near(given, words.iter().map(|(w, _)| *w)) {
                Some(other) => format!("did you mean {}? It may be {list}", quote(other)),
                None => format!("it may be {list}"),
            };
            let problem = Problem::new(Code::UnknownWord, cause).at(value.span, "");
            findings.report(problem.remedy(remedy))
        })
    }
}

/// How much sun there is.
pub fn sun(value: &Value<'_>, findings: &mut Findings) -> Read<Sun> {
    word(&SUN)(value, findings)
}

/// A list of values of one kind.
pub fn list<T>(
    kind: impl Fn(&Value<'_>, &mut Findings) -> Read<T>,
) -> impl Fn(&Value<'_>, &mut Findings) -> Read<Vec<Given<T>>> {
    move |value, findings| {
        let DeValue::Array(items) = value.value else {
            return Err(findings.report(value.wrong_type("a list, in square brackets")));
        };
        let read: Vec<Read<Given<T>>> = items
            .iter()
            .map(|item| {
                let item = Value::new(value.key, item);
                let span = item.span;
                kind(&item, findings).map(|value| Given { value, span })
            })
            .collect();
        read.into_iter().collect()
    }
}

/// A list that holds at least one value.
pub fn some<T>(
    kind: impl Fn(&Value<'_>, &mut Findings) -> Read<T>,
) -> impl Fn(&Value<'_>, &mut Findings) -> Read<Vec<Given<T>>> {
    let list = list(kind);
    move |value, findings| {
        let items = list(value, findings)?;
        if items.is_empty() {
            let cause = format!("{} must hold at least one", code(value.key));
            let problem = Problem::new(Code::EmptyList, cause).at(value.span, "");
            return Err(findings.report(problem.remedy("put it between the brackets")));
        }
        Ok(items)
    }
}

/// One value, or a list that holds at least one.
pub fn one_or_some<T>(
    kind: impl Fn(&Value<'_>, &mut Findings) -> Read<T>,
) -> impl Fn(&Value<'_>, &mut Findings) -> Read<Vec<Given<T>>> {
    move |value, findings| match value.value {
        DeValue::Array(_) => some(&kind)(value, findings),
        _ => {
            let span = value.span;
            kind(value, findings).map(|value| vec![Given { value, span }])
        }
    }
}

/// Exactly `N` numbers of one kind.
pub fn exactly<const N: usize>(
    kind: impl Fn(&Value<'_>, &mut Findings) -> Read<f64>,
    meaning: &str,
) -> impl Fn(&Value<'_>, &mut Findings) -> Read<[f64; N]> {
    let list = list(kind);
    move |value, findings| {
        let items = list(value, findings)?;
        let numbers: Vec<f64> = items.iter().map(|given| given.value).collect();
        <[f64; N]>::try_from(numbers).map_err(|numbers| {
            let cause = format!("{} should hold {N} numbers, {meaning}", code(value.key));
            let label = format!("these are {}", numbers.len());
            findings.report(Problem::new(Code::WrongLength, cause).at(value.span, label))
        })
    }
}
