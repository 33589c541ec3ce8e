//! The kinds of values that the project file holds: text, numbers in a range, dates, words
//! from a list. Each reads a value or reports what is wrong with it, and tells its form.

use std::ops::RangeInclusive;

use chrono::{Datelike, NaiveDate};
use toml::de::DeValue;
use toml::value::Datetime;

use crate::calendar::{Date, Time};
use crate::diagnostic::{Code, Findings, Problem, Read, Span};
use crate::garden::Sun;

use super::form::Form;
use super::meant;
use super::names::{code, near, quote};
use super::value::Value;

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

/// Reads a value or reports what is wrong with it.
type Reader<'a, T> = dyn Fn(&Value<'_>, &mut Findings) -> Read<T> + 'a;

/// A kind of value: how it is read, and its form for the table of keys and the schema.
pub struct Kind<'a, T> {
    form: Box<dyn Fn() -> Form + 'a>,
    read: Box<Reader<'a, T>>,
}

impl<'a, T> Kind<'a, T> {
    /// A kind. The form is asked for only where keys are listed.
    pub fn new(
        form: impl Fn() -> Form + 'a,
        read: impl Fn(&Value<'_>, &mut Findings) -> Read<T> + 'a,
    ) -> Self {
        Self {
            form: Box::new(form),
            read: Box::new(read),
        }
    }

    /// The same with a further step, of which the value must come out sound.
    pub fn and_then<U>(self, then: impl Fn(T, &mut Findings) -> Read<U> + 'a) -> Kind<'a, U>
    where
        T: 'a,
    {
        let read = self.read;
        Kind {
            form: self.form,
            read: Box::new(move |value, findings| then(read(value, findings)?, findings)),
        }
    }

    /// What may stand there.
    pub fn form(&self) -> Form {
        (self.form)()
    }

    /// Reads a value or reports what is wrong with it.
    pub fn read(&self, value: &Value<'_>, findings: &mut Findings) -> Read<T> {
        (self.read)(value, findings)
    }
}

/// A text that is not empty and fits on a line.
pub fn text() -> Kind<'static, String> {
    Kind::new(|| Form::Text, read_text)
}

fn read_text(value: &Value<'_>, findings: &mut Findings) -> Read<String> {
    let DeValue::String(text) = value.value else {
        let remedy = match value.plain() {
            Some(plain) => format!("put it in quotes: {} = \"{plain}\"", value.key),
            None => "put it in quotes: \"...\"".to_owned(),
        };
        return Err(findings.report(value.wrong_type("text").remedy(remedy)));
    };
    fits_on_a_line(text, &code(value.key), value.span, findings)?;
    Ok(text.trim().to_owned())
}

/// That a text of the user can be printed: it is not empty, short, and without control signs. `what` it
/// is, for the message.
pub fn fits_on_a_line(text: &str, what: &str, span: Span, findings: &mut Findings) -> Read<()> {
    if text.trim().is_empty() {
        let problem = Problem::new(Code::EmptyText, format!("{what} is empty"))
            .at(span, "")
            .remedy("write something between the quotes, or remove the key if it is not needed");
        return Err(findings.report(problem));
    }
    let printable = !text.chars().any(char::is_control);
    if printable && text.chars().count() <= LONGEST_TEXT {
        return Ok(());
    }
    let label = match printable {
        true => format!("more than {LONGEST_TEXT} letters"),
        false => "this holds a tab, a line break or another control sign".to_owned(),
    };
    let cause = format!("{what} cannot be printed in a report");
    let problem = Problem::new(Code::BadText, cause).at(span, label);
    Err(findings.report(problem.remedy("write it in one short line")))
}

/// True or false.
pub fn flag() -> Kind<'static, bool> {
    Kind::new(
        || Form::Flag,
        |value, findings| {
            value.value.as_bool().ok_or_else(|| {
                let problem = value.wrong_type("true or false, without quotes");
                let remedy = format!("write {0} = true, or {0} = false", value.key);
                findings.report(problem.remedy(remedy))
            })
        },
    )
}

/// A date without a time.
pub fn date() -> Kind<'static, Date> {
    Kind::new(|| Form::Date, read_date)
}

fn read_date(value: &Value<'_>, findings: &mut Findings) -> Read<Date> {
    let DeValue::Datetime(Datetime {
        date: Some(date),
        time: None,
        offset: None,
    }) = value.value
    else {
        let form = "write year-month-day without quotes and without a time";
        let meant = match value.value {
            DeValue::String(text) => meant::dates(text),
            DeValue::Datetime(Datetime { date: Some(d), .. }) => meant::dates(&d.to_string()),
            _ => Vec::new(),
        };
        let remedy = match meant.is_empty() {
            true => format!("{form}, such as 2027-10-08"),
            false => format!("{form}: {} = {}", value.key, meant::written(&meant)),
        };
        return Err(findings.report(value.wrong_type("a date").remedy(remedy)));
    };
    let day = NaiveDate::from_ymd_opt(date.year.into(), date.month.into(), date.day.into());
    day.filter(|day| YEARS.contains(&day.year()))
        .ok_or_else(|| {
            let limits = format!("in the years {} to {}", YEARS.start(), YEARS.end());
            findings.report(value.out_of_range(limits))
        })
}

/// A day of no particular year, as a date of 2001.
pub fn day_of_year() -> Kind<'static, Date> {
    Kind::new(|| Form::DayOfYear, read_day_of_year)
}

fn read_day_of_year(value: &Value<'_>, findings: &mut Findings) -> Read<Date> {
    let written = |day: &Date| format!("{} = \"{}\"", value.key, day.format("%-d %B"));
    let (meant, plain) = match value.value {
        DeValue::String(text) => {
            let words = text.split_whitespace().count() == 2;
            let plain = text.chars().all(|c| c.is_ascii_alphanumeric() || c == ' ');
            (meant::days_of_year(text), words && plain)
        }
        DeValue::Datetime(Datetime { date: Some(d), .. }) => {
            (meant::days_of_year(&d.to_string()), false)
        }
        _ => (Vec::new(), false),
    };
    match meant.as_slice() {
        [day] if plain => Ok(*day),
        [] => {
            let remedy = format!("write day and month in quotes: {} = \"10 May\"", value.key);
            Err(findings.report(value.wrong_type("a day of the year").remedy(remedy)))
        }
        days => {
            let days: Vec<String> = days.iter().map(written).collect();
            let remedy = format!("write day and month in quotes: {}", days.join(" or "));
            Err(findings.report(value.wrong_type("a day of the year").remedy(remedy)))
        }
    }
}

/// A time of day without a date, to the minute.
pub fn time() -> Kind<'static, Time> {
    Kind::new(|| Form::Time, read_time)
}

fn read_time(value: &Value<'_>, findings: &mut Findings) -> Read<Time> {
    let DeValue::Datetime(Datetime {
        date: None,
        time: Some(time),
        offset: None,
    }) = value.value
    else {
        let problem = value.wrong_type("a time of day");
        let remedy = match value.value.as_str().and_then(meant::time) {
            Some(time) => {
                let time = time.format("%H:%M");
                format!(
                    "write hours and minutes without quotes: {} = {time}",
                    value.key
                )
            }
            None => "write hours and minutes without quotes, such as 10:15".to_owned(),
        };
        return Err(findings.report(problem.remedy(remedy)));
    };
    let whole = time.second.unwrap_or(0) == 0 && time.nanosecond.unwrap_or(0) == 0;
    Time::from_hms_opt(time.hour.into(), time.minute.into(), 0)
        .filter(|_| whole)
        .ok_or_else(|| findings.report(value.out_of_range("a whole minute of the day")))
}

/// One of a few words, in any case.
pub fn word<T: Copy + 'static>(words: &[(&'static str, T)]) -> Kind<'static, T> {
    let words = words.to_vec();
    let names: Vec<&'static str> = words.iter().map(|(word, _)| *word).collect();
    Kind::new(
        move || Form::Word(names.clone()),
        move |value, findings| read_word(&words, value, findings),
    )
}

fn read_word<T: Copy>(
    words: &[(&'static str, T)],
    value: &Value<'_>,
    findings: &mut Findings,
) -> Read<T> {
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

/// How much sun there is.
pub fn sun() -> Kind<'static, Sun> {
    word(&SUN)
}
