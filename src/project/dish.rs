//! The sections [[dish.ingredient]]: crop, grade, amount, and where it comes from.

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span, peek};
use crate::garden::{Crop, Fallback, Ingredient, Method, Source};
use crate::units::Share;

use super::assumed::Assumed;
use super::crop::{Overrides, check_used, find_crop};
use super::dates::in_order;
use super::grade::{GradeIds, unique};
use super::kind::{Value, count, date, number, table, text, word};
use super::names::listed;
use super::source::{growing_for, source};
use super::standing::{RawGrowing, RawPatch};
use super::table::Table;

/// Least share of the target that counts as in the pot, where the file does not say.
const USUAL_LEAST_SHARE: f64 = 0.3;

const METHODS: [(&str, Method); 4] = [
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
    grade: Read<Option<Given<String>>>,
    grams: Read<Given<f64>>,
    least_share: Read<Option<Given<f64>>>,
    each_child_sows: Read<Option<Given<u32>>>,
    max_sowings: Read<Option<Given<u32>>>,
    method: Read<Option<Given<Method>>>,
    pub patch: Read<Option<Given<String>>>,
    fallback: Read<Option<Given<RawFallback>>>,
}

struct RawFallback {
    buy_by: Read<Given<Date>>,
    cost: Read<Option<Given<f64>>>,
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
        grade: t.maybe("grade", text),
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

impl RawIngredient {
    /// The name: as given, else the crop's as given.
    fn name(&self) -> Option<&Given<String>> {
        match &self.name {
            Ok(Some(name)) => Some(name),
            Ok(None) => self.crop.as_ref().ok(),
            Err(_) => None,
        }
    }
}

/// The ingredients, if every part of them is sound.
pub fn check(
    raw: &[Given<RawIngredient>],
    around: &Around<'_>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Vec<Ingredient>> {
    let names = unique(
        "ingredients",
        "name",
        raw.iter().map(|i| i.value.name()),
        findings,
    );
    let growing = around
        .growing
        .map(|growing| growing_for(&names, growing, findings));
    let ingredients: Vec<Read<Ingredient>> = raw
        .iter()
        .enumerate()
        .map(|(at, raw)| {
            let growing = peek(&growing).map(|growing| growing.get(&at).copied());
            check_one(&raw.value, growing, around, findings, assumed)
        })
        .collect();
    let used: Vec<&str> = raw
        .iter()
        .filter_map(|raw| raw.value.crop.as_ref().ok())
        .filter_map(|crop| around.catalogue.get(&crop.value))
        .map(|crop| crop.name.as_str())
        .collect();
    check_used(around.overrides, &used, findings);
    ingredients.into_iter().collect()
}

fn check_one(
    raw: &RawIngredient,
    growing: Read<Option<usize>>,
    around: &Around<'_>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Ingredient> {
    let crop = peek(&raw.crop);
    let crop = crop.and_then(|name| find_crop(name, around.catalogue, findings));
    let crop = crop.map(|crop| {
        around
            .overrides
            .get(&crop.name)
            .map_or(crop, |(own, _)| own)
    });
    let grade = check_grade(raw, around, findings);
    let source = crop.and_then(|crop| source(raw, crop, growing?, around, findings));
    let methods = match (crop, source) {
        (Ok(crop), Ok(source)) => methods(raw, crop, source, findings),
        (Err(reported), _) | (_, Err(reported)) => Err(reported),
    };
    let fallback = fallback(raw, around.feast, findings);
    let grade = grade.and_then(|id| around.grades?.find(id, findings));
    let name = raw.name().map(|name| name.value.clone());
    let least_share = raw.least_share?;
    let each_child_sows = raw.each_child_sows?;
    let crop = crop?;
    let name = name.unwrap_or_else(|| crop.name.clone());
    if least_share.is_none() {
        let what = format!("least_share = {USUAL_LEAST_SHARE}");
        assumed.note_for(
            &name,
            what,
            "less than that is not worth calling in the pot",
        );
    }
    if each_child_sows.is_none() && source == Ok(Source::Sown) {
        assumed.note_for(&name, "each_child_sows = 1", "every child has its own");
    }
    Ok(Ingredient {
        name,
        crop: crop.clone(),
        grade: grade?,
        source: source?,
        methods: methods?,
        grams_per_portion: raw.grams?.value,
        least_share: Share(least_share.map_or(USUAL_LEAST_SHARE, |given| given.value)),
        each_child_sows: each_child_sows.map_or(1, |given| given.value),
        max_sowings: raw.max_sowings?.map_or(1, |given| given.value),
        fallback: fallback?,
    })
}

fn check_grade<'r>(
    raw: &'r RawIngredient,
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<&'r Given<String>> {
    match &raw.grade {
        Ok(Some(id)) => Ok(id),
        Ok(None) => {
            let list = around.grades?.list();
            Err(findings.report(
                Problem::new(Code::MissingKey, "this ingredient has no `grade`")
                    .at(raw.span, "")
                    .remedy(format!(
                        "add `grade = ` and the grade that grows it: {list}"
                    )),
            ))
        }
        Err(reported) => Err(*reported),
    }
}

/// The ways of growing when the file names none: bought plants only where nothing else works,
/// since children are to sow.
fn usual_methods(crop: &Crop) -> Vec<Method> {
    let sown: Vec<Method> = crop
        .methods
        .iter()
        .copied()
        .filter(|m| *m != Method::Bought)
        .collect();
    if sown.is_empty() {
        crop.methods.clone()
    } else {
        sown
    }
}

fn methods(
    raw: &RawIngredient,
    crop: &Crop,
    source: Source,
    findings: &mut Findings,
) -> Read<Vec<Method>> {
    match (raw.method?, source) {
        (Some(method), Source::Growing(_) | Source::Patch(_)) => Err(findings.report(
            Problem::new(Code::KeyWithoutEffect, "this ingredient already stands")
                .at(method.span, "there is nothing to sow or plant")
                .remedy("remove `method`"),
        )),
        (None, Source::Growing(_) | Source::Patch(_)) => Ok(Vec::new()),
        (None, Source::Sown) => Ok(usual_methods(crop)),
        (Some(method), Source::Sown) if crop.methods.contains(&method.value) => {
            Ok(vec![method.value])
        }
        (Some(method), Source::Sown) => {
            let possible = METHODS.iter().filter(|(_, m)| crop.methods.contains(m));
            let list = listed(possible.map(|(word, _)| *word));
            let cause = format!("{} cannot be grown in this way", crop.name);
            Err(findings.report(
                Problem::new(Code::MethodNotPossible, cause)
                    .at(method.span, "")
                    .remedy(format!("it may be {list}; without `method` all are tried")),
            ))
        }
    }
}

fn fallback(
    raw: &RawIngredient,
    feast: Read<Given<Date>>,
    findings: &mut Findings,
) -> Read<Option<Fallback>> {
    let Some(given) = peek(&raw.fallback)? else {
        return Ok(None);
    };
    let (buy_by, cost) = (given.value.buy_by?, given.value.cost?);
    if let Ok(feast) = feast {
        in_order(("buy_by", buy_by), ("feast", feast), findings)?;
    }
    Ok(Some(Fallback {
        buy_by: buy_by.value,
        cost: cost.map(|cost| cost.value),
    }))
}
