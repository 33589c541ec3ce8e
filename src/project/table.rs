//! Reads one table of the project file: every key is asked for by name and kind; what is
//! missing, wrong or unknown is reported, and reading goes on.

use std::collections::BTreeSet;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::diagnostic::{Code, Findings, Given, Problem, Read, Reported, Span};

use super::kind::Value;
use super::names::{code, near};

/// A table while it is read.
pub struct Table<'t, 'f> {
    what: &'t str,
    span: Span,
    entries: &'t DeTable<'t>,
    asked: BTreeSet<&'static str>,
    findings: &'f mut Findings,
}

impl<'t, 'f> Table<'t, 'f> {
    /// Reads a table by asking for its keys; keys that were not asked for are unknown.
    pub fn read<T>(
        what: &'t str,
        entries: &'t DeTable<'t>,
        span: Span,
        findings: &'f mut Findings,
        read: impl FnOnce(&mut Self) -> T,
    ) -> T {
        let mut table = Self {
            what,
            span,
            entries,
            asked: BTreeSet::new(),
            findings,
        };
        let result = read(&mut table);
        table.report_unknown();
        result
    }

    /// Where the table stands.
    pub fn span(&self) -> Span {
        self.span
    }

    /// Where a key stands, if it is given.
    pub fn key_span(&self, key: &str) -> Option<Span> {
        self.entries
            .get_key_value(key)
            .map(|(key, _)| key.span().into())
    }

    /// Reports a problem found while reading.
    pub fn report(&mut self, problem: Problem) -> Reported {
        self.findings.report(problem)
    }

    /// A key that may be left out.
    pub fn maybe<T>(
        &mut self,
        key: &'static str,
        kind: impl FnOnce(&Value<'_>, &mut Findings) -> Read<T>,
    ) -> Read<Option<Given<T>>> {
        self.asked.insert(key);
        let Some(value) = self.entries.get(key) else {
            return Ok(None);
        };
        let value = Value::new(key, value);
        let span = value.span;
        kind(&value, self.findings).map(|value| Some(Given { value, span }))
    }

    /// A key that must be given. `example` shows how.
    pub fn need<T>(
        &mut self,
        key: &'static str,
        example: &str,
        kind: impl FnOnce(&Value<'_>, &mut Findings) -> Read<T>,
    ) -> Read<Given<T>> {
        match self.maybe(key, kind)? {
            Some(given) => Ok(given),
            None => Err(self.report(
                Problem::new(Code::MissingKey, format!("{} has no `{key}`", self.what))
                    .at(self.span, "")
                    .remedy(format!("add a line such as `{key} = {example}`")),
            )),
        }
    }

    fn report_unknown(&mut self) {
        for (key, _) in self.entries.iter() {
            let name = key.get_ref().as_ref();
            if !self.asked.contains(name) {
                self.findings.report(unknown(self.what, key, &self.asked));
            }
        }
    }
}

/// The problem of a key that nobody asked for.
fn unknown(
    what: &str,
    key: &Spanned<std::borrow::Cow<'_, str>>,
    known: &BTreeSet<&'static str>,
) -> Problem {
    let name = key.get_ref().as_ref();
    let problem = Problem::new(
        Code::UnknownKey,
        format!("{what} has no key {}", code(name)),
    );
    match near(name, known.iter().copied()) {
        Some(other) => problem
            .at(key.span().into(), "")
            .remedy(format!("did you mean `{other}`?")),
        None => {
            let list: Vec<&str> = known.iter().copied().collect();
            problem.at(key.span().into(), "").remedy(format!(
                "remove it; what may stand here: {}",
                list.join(", ")
            ))
        }
    }
}

/// A table, read by asking for its keys.
pub fn table<T>(
    what: &str,
    read: impl Fn(&mut Table<'_, '_>) -> T,
) -> impl Fn(&Value<'_>, &mut Findings) -> Read<T> {
    move |value, findings| {
        let DeValue::Table(entries) = value.value else {
            return Err(findings.report(value.wrong_type("a table")));
        };
        Ok(Table::read(what, entries, value.span, findings, &read))
    }
}

/// Reads a table whose keys are names chosen by the user: none is unknown.
pub fn named_table<T>(
    value: &Value<'_>,
    findings: &mut Findings,
    read: impl Fn(Given<&str>, &Value<'_>, &mut Findings) -> T,
) -> Read<Vec<T>> {
    let DeValue::Table(entries) = value.value else {
        return Err(findings.report(value.wrong_type("a table")));
    };
    Ok(entries
        .iter()
        .map(|(key, inner)| {
            let name = key.get_ref().as_ref();
            let given = Given {
                value: name,
                span: key.span().into(),
            };
            read(given, &Value::new(name, inner), findings)
        })
        .collect())
}
