//! Figures of the project file: numbers in a range, whole or not. A figure that is out of range or has
//! its unit beside it is told as it should be written.

use std::ops::RangeInclusive;

use toml::de::{DeInteger, DeValue};

use crate::diagnostic::{Findings, Reported};

use super::form::{Form, unit};
use super::kind::Kind;
use super::meant;
use super::other_units::named;
use super::value::Value;

/// A number in a range.
pub fn number(range: RangeInclusive<f64>) -> Kind<'static, f64> {
    let (least, most) = (*range.start(), *range.end());
    Kind::new(
        move || Form::Number(least, most),
        move |value, findings| {
            let other = named(value.key);
            let range = other.map_or_else(|| range.clone(), |other| other.range(&range));
            let parsed = match value.value {
                DeValue::Integer(digits) => whole(digits).map(|n| n as f64),
                DeValue::Float(digits) => digits.as_str().parse().ok(),
                _ => {
                    let problem = value.wrong_type("a number");
                    return Err(findings.report(problem.remedy(digits_for(value, &range))));
                }
            };
            parsed
                .filter(|n| range.contains(n))
                .map(|n| other.map_or(n, |other| other.metric(n)))
                .ok_or_else(|| out_of_range(value, parsed, &range, findings))
        },
    )
}

/// A whole number in a range.
pub fn count(range: RangeInclusive<u32>) -> Kind<'static, u32> {
    let (least, most) = (*range.start(), *range.end());
    let as_numbers = f64::from(least)..=f64::from(most);
    Kind::new(
        move || Form::Whole(least, most),
        move |value, findings| {
            let DeValue::Integer(digits) = value.value else {
                let problem = value.wrong_type("a whole number");
                let remedy = match value.value {
                    DeValue::String(_) => digits_for(value, &as_numbers),
                    _ => "write digits without quotes and without a decimal point".to_owned(),
                };
                return Err(findings.report(problem.remedy(remedy)));
            };
            let parsed = whole(digits);
            parsed
                .and_then(|n| u32::try_from(n).ok())
                .filter(|n| range.contains(n))
                .ok_or_else(|| {
                    let parsed = parsed.map(|n| n as f64);
                    out_of_range(value, parsed, &as_numbers, findings)
                })
        },
    )
}

fn whole(digits: &DeInteger<'_>) -> Option<i64> {
    i64::from_str_radix(digits.as_str(), digits.radix()).ok()
}

/// How a figure is written that is given as a text, perhaps with a unit of its own.
fn digits_for(value: &Value<'_>, range: &RangeInclusive<f64>) -> String {
    let right = value.value.as_str().and_then(meant::figure);
    let right = right.and_then(|(figure, given)| match given {
        "" => Some(figure),
        given => meant::converted(figure, given, unit(value.key)),
    });
    let Some(right) = right.filter(|right| range.contains(right)) else {
        return "write digits without quotes".to_owned();
    };
    let form = format!("write digits without quotes: {} = {right}", value.key);
    match unit(value.key) {
        Some(unit) => format!("{form}; it is in {unit}"),
        None => form,
    }
}

fn out_of_range(
    value: &Value<'_>,
    given: Option<f64>,
    range: &RangeInclusive<f64>,
    findings: &mut Findings,
) -> Reported {
    let rounded = |limit: &f64| (limit * 100.0).round() / 100.0;
    let limits = format!("{} to {}", rounded(range.start()), rounded(range.end()));
    let problem = value.out_of_range(limits);
    let remedy = given.and_then(|given| other_unit(value.key, given, range));
    findings.report(match remedy {
        Some(remedy) => problem.remedy(remedy),
        None => problem,
    })
}

/// The remedy for a figure that would be in range if it was meant in another unit.
fn other_unit(key: &str, given: f64, range: &RangeInclusive<f64>) -> Option<String> {
    let unit = unit(key);
    let (other, name) = match unit {
        Some("m") => ("cm", "centimetres"),
        Some("degrees C") => ("f", "degrees Fahrenheit"),
        Some("kg") => ("g", "grams"),
        None if *range.end() == 1.0 => ("%", "per cent"),
        _ => return None,
    };
    let right = meant::converted(given, other, unit)?;
    let of_what = unit.map_or("a part of 1".to_owned(), |unit| format!("in {unit}"));
    range
        .contains(&right)
        .then(|| format!("it is {of_what}; if {given} are {name}, write {key} = {right}"))
}
