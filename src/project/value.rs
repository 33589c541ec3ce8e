//! A value of the file with its key and its place, and how messages name it.

use std::fmt::Display;

use toml::Spanned;
use toml::de::DeValue;

use crate::diagnostic::{Code, Problem, Span};

use super::names::code;

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

    /// The problem that the value is not in a range.
    pub fn out_of_range(&self, range: impl Display) -> Problem {
        Problem::new(
            Code::OutOfRange,
            format!("{} should be {range}", code(self.key)),
        )
        .at(self.span, "this is out of range")
    }

    /// A number, a date or a time as it would be written.
    pub fn plain(&self) -> Option<String> {
        match self.value {
            DeValue::Integer(digits) => Some(digits.to_string()),
            DeValue::Float(digits) => Some(digits.to_string()),
            DeValue::Datetime(at) => Some(at.to_string()),
            _ => None,
        }
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
