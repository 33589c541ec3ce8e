//! A section [[dish.ingredient]] as given, and what `dish` and `source` check it against.

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::diagnostic::{Findings, Given, Read, Span};
use crate::garden::Method;

use super::crop::Overrides;
use super::grade::GradeIds;
use super::kind::{Value, count, date, number, one_or_some, text, word};
use super::standing::{RawGrowing, RawPatch};
use super::table::{Table, table};

/// The words for the ways of growing.
pub const METHODS: [(&str, Method); 4] = [
    ("direct", Method::Direct),
    ("indoor", Method::Indoor),
    ("pieces", Method::Pieces),
    ("bought", Method::Bought),
];

/// One section as given.
pub struct RawIngredient {
    pub span: Span,
    pub crop: Read<Given<String>>,
    pub name: Read<Option<Given<String>>>,
    pub grade: Read<Option<Given<Vec<Given<String>>>>>,
    pub grams: Read<Given<f64>>,
    pub least_share: Read<Option<Given<f64>>>,
    pub each_child_sows: Read<Option<Given<u32>>>,
    pub max_sowings: Read<Option<Given<u32>>>,
    pub method: Read<Option<Given<Method>>>,
    pub patch: Read<Option<Given<String>>>,
    pub fallback: Read<Option<Given<RawFallback>>>,
}

impl RawIngredient {
    /// The name: as given, else the crop's as given.
    pub fn name(&self) -> Option<&Given<String>> {
        match &self.name {
            Ok(Some(name)) => Some(name),
            Ok(None) => self.crop.as_ref().ok(),
            Err(_) => None,
        }
    }
}

/// What is bought in its place, as given.
pub struct RawFallback {
    pub buy_by: Read<Given<Date>>,
    pub cost: Read<Option<Given<f64>>>,
}

/// What the ingredients are checked against.
pub struct Around<'a> {
    pub catalogue: &'a Catalogue,
    pub overrides: &'a Overrides,
    pub grades: Read<&'a GradeIds>,
    pub growing: Read<&'a [Given<RawGrowing>]>,
    pub patches: Read<&'a [Given<RawPatch>]>,
    pub start: Read<Given<Date>>,
    pub feast: Read<Given<Date>>,
}

/// Reads one section.
pub fn read(t: &mut Table<'_, '_>) -> RawIngredient {
    RawIngredient {
        span: t.span(),
        crop: t.need("crop", "\"carrot\"", text),
        name: t.maybe("name", text),
        grade: t.maybe("grade", one_or_some(text)),
        grams: t.need("grams_per_portion", "25", number(0.1..=1000.0)),
        least_share: t.maybe("least_share", number(0.05..=1.0)),
        each_child_sows: t.maybe("each_child_sows", count(0..=20)),
        max_sowings: t.maybe("max_sowings", count(1..=4)),
        method: t.maybe("method", word(&METHODS)),
        patch: t.maybe("patch", text),
        fallback: t.maybe("if_it_fails", read_fallback),
    }
}

fn read_fallback(value: &Value<'_>, findings: &mut Findings) -> Read<RawFallback> {
    let read = table("`if_it_fails`", |t| RawFallback {
        buy_by: t.need("buy_by", "2027-09-24", date),
        cost: t.maybe("cost", number(0.0..=1_000_000.0)),
    });
    read(value, findings)
}
