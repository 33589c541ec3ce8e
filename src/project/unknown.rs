//! Keys that nobody asks for, and which key each was meant to be: misspelt, in the plural, or with
//! another unit.

use std::borrow::Cow;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::diagnostic::{Code, Findings, Problem, Reported};

use super::form::unit;
use super::meant;
use super::names::{code, near};

/// A key that nobody asks for.
pub struct Unknown {
    /// The key that it was meant to be.
    pub meant: Option<&'static str>,
    /// That it was told.
    pub reported: Reported,
}

/// Reports the keys of a table that are not among the known ones.
pub fn unknown_keys(
    what: &str,
    entries: &DeTable<'_>,
    known: &[&'static str],
    findings: &mut Findings,
) -> Vec<Unknown> {
    let unknown = entries
        .iter()
        .filter(|(key, _)| !known.contains(&key.get_ref().as_ref()));
    unknown
        .map(|(key, value)| {
            let (meant, remedy) = remedy(key.get_ref(), value, known);
            let cause = format!("{what} has no key {}", code(key.get_ref()));
            let problem = Problem::new(Code::UnknownKey, cause).at(key.span().into(), "");
            let reported = findings.report(problem.remedy(remedy));
            Unknown { meant, reported }
        })
        .collect()
}

/// Keys that are often written above the section that they belong to, or without its first part: the
/// key, the key of the table here that it may stand for, and its section.
const ELSEWHERE: [(&str, &str, &str); 12] = [
    ("ingredient", "dish", "[[dish.ingredient]]"),
    ("ingredients", "dish", "[[dish.ingredient]]"),
    ("feast", "project", "[project]"),
    ("portions", "project", "[project]"),
    ("latitude", "place", "[place]"),
    ("weather", "place", "[place]"),
    ("monthly", "place", "[place.monthly]"),
    ("start", "calendar", "[calendar]"),
    ("terms", "calendar", "[calendar]"),
    ("breaks", "calendar", "[calendar]"),
    ("days_off", "calendar", "[calendar]"),
    ("classes", "grade", "[[grade]]"),
];

/// The key that was meant, and what to do.
fn remedy(
    name: &str,
    value: &Spanned<DeValue<'_>>,
    known: &[&'static str],
) -> (Option<&'static str>, String) {
    if let Some((_, stands_for, section)) = ELSEWHERE.iter().find(|(key, ..)| *key == name) {
        let meant = known.iter().copied().find(|key| key == stands_for);
        let remedy = match section.starts_with("[[dish") {
            true => format!("write {section}"),
            false => format!("it belongs under {section}: a key belongs to the section above it"),
        };
        return (meant, remedy);
    }
    if let Some(key) = known.iter().find(|key| in_another_unit(name, key)) {
        return (Some(key), conversion(name, value.get_ref(), key));
    }
    let related = |key: &&&str| {
        let (long, short) = if key.len() > name.len() {
            (**key, name)
        } else {
            (name, **key)
        };
        short.len() > 2 && long.len() - short.len() <= 2 && long.starts_with(short)
    };
    let meant = near(name, known.iter().copied());
    let meant = meant.and_then(|near| known.iter().find(|key| **key == near));
    if let Some(key) = meant.or_else(|| known.iter().find(related)) {
        return (Some(key), format!("did you mean `{key}`?"));
    }
    let mut list = known.to_vec();
    list.sort_unstable();
    let list = list.join(", ");
    let remedy = match list.is_empty() {
        true => "remove it".to_owned(),
        false => format!("remove it; what may stand here: {list}"),
    };
    (None, remedy)
}

/// True if two names differ in nothing but the parts that tell a unit, or one has none.
fn in_another_unit(name: &str, key: &str) -> bool {
    let stem = |name: &str| -> Vec<String> {
        let parts = name.split('_').map(str::to_lowercase);
        parts.filter(|part| !meant::is_unit(part)).collect()
    };
    let (ours, theirs) = (stem(key), stem(name));
    !ours.is_empty() && ours == theirs
}

/// How the figure is written in the unit of the file.
fn conversion(name: &str, value: &DeValue<'_>, key: &str) -> String {
    let Some(unit) = unit(key) else {
        return format!("did you mean `{key}`?");
    };
    let from = name
        .split('_')
        .find(|part| meant::is_unit(&part.to_lowercase()));
    let figure = |value: &DeValue<'_>| -> Option<f64> {
        match value {
            DeValue::Integer(digits) => digits.as_str().parse().ok(),
            DeValue::Float(digits) => digits.as_str().parse().ok(),
            _ => None,
        }
    };
    let right = |value: &DeValue<'_>| meant::converted(figure(value)?, from?, Some(unit));
    let shown: Option<Cow<'_, str>> = match value {
        DeValue::Array(items) => {
            let all: Option<Vec<String>> = items
                .iter()
                .map(|item| right(item.get_ref()).map(|right| right.to_string()))
                .collect();
            all.map(|all| format!("[{}]", all.join(", ")).into())
        }
        value => right(value).map(|right| right.to_string().into()),
    };
    match shown {
        Some(right) => format!("figures are in {unit}: write `{key} = {right}`"),
        None => format!("did you mean `{key}`? It is in {unit}"),
    }
}
