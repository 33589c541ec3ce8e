//! A section [[dish.ingredient]] as given, and what `dish` and `source` check it against.

use crate::calendar::Date;
use crate::diagnostic::{Given, Read, Span};
use crate::garden::{Kept, Method};

use super::crop_names::Crops;
use super::figures::{count, number};
use super::grade::GradeIds;
use super::kind::{Kind, date, flag, text, word};
use super::lists::{one_or_some, some};
use super::standing::RawPatch;
use super::table::{Table, table};

/// The words for the ways of growing.
pub const METHODS: [(&str, Method); 4] = [
    ("direct", Method::Direct),
    ("indoor", Method::Indoor),
    ("pieces", Method::Pieces),
    ("bought", Method::Bought),
];

/// The words for the ways of putting something by.
pub const KEPT: [(&str, Kept); 2] = [
    (Kept::Frozen.key(), Kept::Frozen),
    (Kept::Dried.key(), Kept::Dried),
];

/// Least share of the target that counts as in the pot, where the file does not say.
pub const USUAL_LEAST_SHARE: f64 = 0.3;

/// One section as given.
pub struct RawIngredient {
    pub span: Span,
    pub crop: Read<Given<String>>,
    pub name: Read<Option<Given<String>>>,
    pub grade: Read<Option<Given<Vec<Given<String>>>>>,
    pub together: Read<Option<Given<bool>>>,
    pub grams: Read<Given<f64>>,
    pub least_share: Read<Option<Given<f64>>>,
    pub each_child_sows: Read<Option<Given<u32>>>,
    pub max_sowings: Read<Option<Given<u32>>>,
    pub method: Read<Option<Given<Method>>>,
    pub patch: Read<Option<Given<String>>>,
    pub fallback: Read<Option<Given<RawFallback>>>,
    pub kept: Read<Option<Given<Kept>>>,
    pub instead: Read<Option<Given<Vec<Given<String>>>>>,
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

/// A section of something begun: what it is, and for which ingredient.
#[derive(Clone, Copy)]
pub struct Serving<'a> {
    pub crop: &'a Read<Given<String>>,
    pub for_ingredient: Read<&'a Given<String>>,
}

/// What the ingredients are checked against.
pub struct Around<'a> {
    pub crops: Crops<'a>,
    pub grades: Read<&'a GradeIds>,
    pub begun: Read<&'a [Serving<'a>]>,
    pub patches: Read<&'a [Given<RawPatch>]>,
    pub start: Read<Given<Date>>,
    pub feast: Read<Given<Date>>,
}

/// Reads one section.
pub fn read(t: &mut Table<'_, '_>) -> RawIngredient {
    RawIngredient {
        span: t.span(),
        crop: t.need(
            "crop",
            "what is grown; `tureen crops` lists the names",
            "\"carrot\"",
            text(),
        ),
        name: t.maybe(
            "name",
            "what the kitchen calls it",
            "the crop's name",
            text(),
        ),
        grade: t.maybe(
            "grade",
            "the `id` of the grade that grows it, or several in a list",
            "the program chooses",
            one_or_some(text()),
        ),
        together: together(t),
        grams: t.need(
            "grams_per_portion",
            "how much goes into the pot for one, ready to cook",
            "25",
            number(0.1..=1000.0),
        ),
        least_share: t.maybe(
            "least_share",
            "the least part of it that counts as in the pot",
            USUAL_LEAST_SHARE,
            number(0.05..=1.0),
        ),
        each_child_sows: t.maybe(
            "each_child_sows",
            "seeds, pieces or plants for each child at least",
            1,
            count(0..=20),
        ),
        max_sowings: t.maybe("max_sowings", "most sowings of it", 1, count(1..=4)),
        method: t.maybe(
            "method",
            "how it is started",
            "what suits the crop, of all but \"bought\"",
            word(&METHODS),
        ),
        patch: t.maybe(
            "patch",
            "the `id` of the [[patch]] from which it is picked",
            "none",
            text(),
        ),
        kept: kept(t),
        instead: instead(t),
        fallback: t.maybe("if_it_fails", "what is bought instead", "none", fallback()),
    }
}

fn together(t: &mut Table<'_, '_>) -> Read<Option<Given<bool>>> {
    t.maybe(
        "together",
        "true if all grades of the list grow it as one crop",
        "the program chooses one of the list",
        flag(),
    )
}

fn kept(t: &mut Table<'_, '_>) -> Read<Option<Given<Kept>>> {
    t.maybe(
        "kept",
        "how the kitchen puts it by on the day of the pick; grams are those of the fresh crop",
        "it keeps fresh, for the days of its crop",
        word(&KEPT),
    )
}

fn instead(t: &mut Table<'_, '_>) -> Read<Option<Given<Vec<Given<String>>>>> {
    t.maybe(
        "instead",
        "crops that the cook takes in its place, the best first",
        "any that is ripe in time",
        some(text()),
    )
}

fn fallback() -> Kind<'static, RawFallback> {
    table("`if_it_fails`", |t| RawFallback {
        buy_by: t.need("buy_by", "the last day to buy it", "2027-09-24", date()),
        cost: t.maybe(
            "cost",
            "what it costs, in your money",
            "not told",
            number(0.0..=1_000_000.0),
        ),
    })
}
