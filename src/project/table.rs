//! Reads one table of the project file: every key is asked for by name, meaning and kind; what is
//! missing, wrong or unknown is reported, and reading goes on. Asked of no file, the same reader lists
//! its keys.

use std::rc::Rc;

use toml::de::{DeTable, DeValue};

use crate::diagnostic::{Code, Findings, Given, Problem, Read, Reported, Span};

use super::form::{Form, Key, Presence};
use super::kind::Kind;
use super::names::code;
use super::other_units::{OtherUnit, instead_of};
use super::unknown::{Unknown, unknown_keys};
use super::value::Value;

/// A table while it is read.
pub struct Table<'t, 'f> {
    what: &'t str,
    span: Span,
    entries: &'t DeTable<'t>,
    unknown: Vec<Unknown>,
    listing: Listing,
    findings: &'f mut Findings,
}

/// What is noted of the keys that are asked for.
enum Listing {
    /// Nothing: the table is read.
    No,
    /// Their names.
    Names(Vec<&'static str>),
    /// All that is to be said of them.
    Keys(Vec<Key>),
}

impl<'t, 'f> Table<'t, 'f> {
    /// Reads a table by asking for its keys; keys that were not asked for are unknown.
    pub fn read<T>(
        what: &'t str,
        entries: &'t DeTable<'t>,
        span: Span,
        findings: &'f mut Findings,
        read: impl Fn(&mut Table<'_, '_>) -> T,
    ) -> T {
        let known = match list(Listing::Names(Vec::new()), &read) {
            Listing::Names(names) => names,
            Listing::No | Listing::Keys(_) => Vec::new(),
        };
        let mut table = Table {
            what,
            span,
            entries,
            unknown: unknown_keys(what, entries, &known, findings),
            listing: Listing::No,
            findings,
        };
        read(&mut table)
    }

    /// Where the table stands.
    pub fn span(&self) -> Span {
        self.span
    }

    /// Where a key stands, in whatever unit, if it is given.
    pub fn key_span(&self, key: &str) -> Option<Span> {
        let span = |key| self.entries.get_key_value(key).map(|(key, _)| key.span());
        let instead = || span(instead_of(key)?.key);
        span(key).or_else(instead).map(Into::into)
    }

    /// Reports a problem found while reading.
    pub fn report(&mut self, problem: Problem) -> Reported {
        self.findings.report(problem)
    }

    /// A key that may be left out; then `otherwise` holds.
    pub fn maybe<T>(
        &mut self,
        key: &'static str,
        meaning: &'static str,
        otherwise: impl ToString,
        kind: Kind<'_, T>,
    ) -> Read<Option<Given<T>>> {
        let presence = || Presence::Otherwise(otherwise.to_string());
        self.ask(key, meaning, presence, &kind)
    }

    /// A key that may be left out; then these figures of the catalogue hold.
    pub fn own<T>(
        &mut self,
        key: &'static str,
        meaning: &'static str,
        figures: &'static [&'static str],
        kind: Kind<'_, T>,
    ) -> Read<Option<Given<T>>> {
        self.ask(key, meaning, || Presence::BuiltIn(figures), &kind)
    }

    /// A key that must be given. `example` shows how.
    pub fn need<T>(
        &mut self,
        key: &'static str,
        meaning: &'static str,
        example: &str,
        kind: Kind<'_, T>,
    ) -> Read<Given<T>> {
        let presence = || Presence::Needed(example.to_owned());
        match self.ask(key, meaning, presence, &kind)? {
            Some(given) => Ok(given),
            None => Err(self.mistaken(key).unwrap_or_else(|| {
                self.report(
                    Problem::new(Code::MissingKey, format!("{} has no `{key}`", self.what))
                        .at(self.span, "")
                        .remedy(format!("add a line such as `{key} = {example}`")),
                )
            })),
        }
    }

    /// That a key stands here under a wrong name, if it does: it is reported, and not missing.
    pub fn mistaken(&self, key: &str) -> Option<Reported> {
        let mut unknown = self.unknown.iter();
        let is_it = |meant| meant == key || instead_of(key).is_some_and(|other| meant == other.key);
        let found = unknown.find(|unknown| unknown.meant.is_some_and(is_it))?;
        Some(found.reported)
    }

    /// A key; where it is missing, the caller tells.
    pub fn ask<T>(
        &mut self,
        key: &'static str,
        meaning: &'static str,
        presence: impl Fn() -> Presence,
        kind: &Kind<'_, T>,
    ) -> Read<Option<Given<T>>> {
        let instead = instead_of(key);
        match &mut self.listing {
            Listing::No => {}
            Listing::Names(names) => names.extend(names_of(key, instead)),
            Listing::Keys(keys) => keys.push(Key {
                name: key,
                instead,
                meaning,
                presence: presence(),
                form: kind.form(),
            }),
        }
        let mut given = names_of(key, instead).filter_map(|name| {
            let value = self.entries.get(name)?;
            Some(Value::new(name, value))
        });
        let Some(value) = given.next() else {
            return Ok(None);
        };
        if let Some(other) = given.next() {
            let problem = twice(&value, &other);
            return Err(self.report(problem));
        }
        let span = value.span;
        let read = kind.read(&value, self.findings);
        read.map(|value| Some(Given { value, span }))
    }
}

/// The names under which a key may stand.
fn names_of(key: &'static str, instead: Option<OtherUnit>) -> impl Iterator<Item = &'static str> {
    std::iter::once(key).chain(instead.map(|other| other.key))
}

/// The problem of one figure in two units.
fn twice(value: &Value<'_>, other: &Value<'_>) -> Problem {
    let cause = format!("{} and {} mean the same", code(value.key), code(other.key));
    Problem::new(Code::ConflictingKeys, cause)
        .at(other.span, "the second")
        .also(value.span, "the first")
        .remedy("keep the one in your unit, and remove the other")
}

/// All keys that a reader asks for.
pub fn keys<T>(read: impl Fn(&mut Table<'_, '_>) -> T) -> Vec<Key> {
    match list(Listing::Keys(Vec::new()), &read) {
        Listing::Keys(keys) => keys,
        Listing::No | Listing::Names(_) => Vec::new(),
    }
}

/// Lets a reader ask an empty table. What it finds missing there is nobody's fault.
fn list<T>(listing: Listing, read: &impl Fn(&mut Table<'_, '_>) -> T) -> Listing {
    let (entries, mut findings) = (DeTable::new(), Findings::default());
    let mut table = Table {
        what: "",
        span: Span::default(),
        entries: &entries,
        unknown: Vec::new(),
        listing,
        findings: &mut findings,
    };
    read(&mut table);
    table.listing
}

/// A table, read by asking for its keys.
pub fn table<'a, T: 'a>(what: &'a str, read: impl Fn(&mut Table<'_, '_>) -> T + 'a) -> Kind<'a, T> {
    let read = Rc::new(read);
    let reader = Rc::clone(&read);
    Kind::new(
        move || Form::Table(keys(&*reader)),
        move |value, findings| {
            let DeValue::Table(entries) = value.value else {
                return Err(findings.report(no_table(what, value)));
            };
            Ok(Table::read(what, entries, value.span, findings, &*read))
        },
    )
}

/// The problem of something else in the place of a table.
fn no_table(what: &str, value: &Value<'_>) -> Problem {
    let problem = value.wrong_type("a table");
    match value.value {
        DeValue::Array(_) if what.starts_with('[') => problem.remedy(format!(
            "it stands only once: write {what}, in single brackets"
        )),
        _ => problem,
    }
}

/// A table of which every part must be sound.
pub fn sound<'a, T: 'a>(kind: Kind<'a, Read<T>>) -> Kind<'a, T> {
    kind.and_then(|read, _| read)
}

/// A table whose keys are names chosen by the user, so that none is unknown; `form` is that of each
/// value.
pub fn named<'a, T: 'a>(
    names: &'static str,
    form: impl Fn() -> Form + 'a,
    read: impl Fn(Given<&str>, &Value<'_>, &mut Findings) -> T + 'a,
) -> Kind<'a, Vec<T>> {
    Kind::new(
        move || Form::Named(names, Box::new(form())),
        move |value, findings| {
            let DeValue::Table(entries) = value.value else {
                return Err(findings.report(value.wrong_type("a table")));
            };
            let each = entries.iter().map(|(key, inner)| {
                let value = key.get_ref().as_ref();
                let span = key.span().into();
                read(Given { value, span }, &Value::new(value, inner), findings)
            });
            Ok(each.collect())
        },
    )
}
