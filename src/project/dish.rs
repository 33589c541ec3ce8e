//! Checks the sections [[dish.ingredient]]: crop, grade, amount, and where it comes from.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Crop, Fallback, Ingredient, Kept, Method, Source};
use crate::units::Share;

use super::assumed::Assumed;
use super::crop::check_used;
use super::grade::unique;
use super::grown_by;
use super::ingredient::{Around, METHODS, RawIngredient, USUAL_LEAST_SHARE};
use super::names::{listed, quote};
use super::order::in_order;
use super::source::{begun_for, source};

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
    let begun = around.begun.map(|begun| begun_for(&names, begun, findings));
    let ingredients: Vec<Read<Ingredient>> = raw
        .iter()
        .enumerate()
        .map(|(at, raw)| {
            let begun = peek(&begun).map(|begun| begun.get(&at).copied());
            check_one(&raw.value, begun, around, findings, assumed)
        })
        .collect();
    let instead = raw.iter().filter_map(|raw| peek(&raw.value.instead).ok());
    let instead = instead.flatten().flat_map(|given| &given.value);
    let named = raw.iter().map(|raw| raw.value.crop.as_ref().ok());
    let used: Option<Vec<&str>> = named
        .chain(instead.map(Some))
        .map(|name| Some(around.crops.get(&name?.value)?.name.as_str()))
        .collect();
    // A name that is misspelt may be that of a section.
    if let (Some(own), Some(used)) = (around.crops.own, used) {
        check_used(own, &used, findings);
    }
    ingredients.into_iter().collect()
}

fn check_one(
    raw: &RawIngredient,
    begun: Read<Option<usize>>,
    around: &Around<'_>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Ingredient> {
    let crop = peek(&raw.crop);
    let crop = crop.and_then(|name| around.crops.find(name, findings));
    let named = grown_by::named(raw, around, findings);
    let source = crop.and_then(|crop| source(raw, crop, begun?, around, findings));
    let methods = match (crop, source) {
        (Ok(crop), Ok(source)) => methods(raw, crop, source, findings),
        (Err(reported), _) | (_, Err(reported)) => Err(reported),
    };
    let fallback = fallback(raw, around.feast, findings);
    let instead = instead(raw, around, findings);
    let put_by = crop.and_then(|crop| put_by(raw, crop, findings));
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
    let methods = methods?;
    let teams = match named? {
        Some(teams) => teams,
        None => grown_by::chosen(&name, crop, &methods, around.grades?, assumed),
    };
    Ok(Ingredient {
        name,
        crop: put_by?,
        teams,
        source: source?,
        methods,
        grams_per_portion: raw.grams?.value,
        least_share: Share(least_share.map_or(USUAL_LEAST_SHARE, |given| given.value)),
        each_child_sows: each_child_sows.map_or(1, |given| given.value),
        max_sowings: raw.max_sowings?.map_or(1, |given| given.value),
        instead: instead?,
        fallback: fallback?,
    })
}

/// The crop, put by as the file asks for it.
fn put_by(raw: &RawIngredient, crop: &Crop, findings: &mut Findings) -> Read<Crop> {
    let Some(given) = peek(&raw.kept)? else {
        return Ok(crop.clone());
    };
    crop.kept(given.value).ok_or_else(|| {
        let cause = match given.value {
            Kept::Frozen => "is not fit for a freezer",
            Kept::Dried => "is not dried without heat, or is dry when it is picked",
        };
        let remedy = match crop.keeps_longer().next() {
            Some(other) => format!("remove `kept`, or write \"{}\"", other.key()),
            None => "remove `kept`, and plan it for the days that it keeps as it is".to_owned(),
        };
        let problem = Problem::new(Code::NotPutBy, format!("{} {cause}", quote(&crop.name)));
        findings.report(problem.at(given.span, "").remedy(remedy))
    })
}

/// The crops that the cook takes in its place, of the catalogue or the file.
fn instead(raw: &RawIngredient, around: &Around<'_>, findings: &mut Findings) -> Read<Vec<Crop>> {
    let given = peek(&raw.instead)?.iter().flat_map(|given| &given.value);
    let found: Vec<Read<Crop>> = given
        .map(|name| around.crops.find(name, findings).cloned())
        .collect();
    found.into_iter().collect()
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
        (Some(method), Source::Begun(_) | Source::Patch(_)) => Err(findings.report(
            Problem::new(Code::KeyWithoutEffect, "this ingredient already stands")
                .at(method.span, "there is nothing to sow or plant")
                .remedy("remove `method`"),
        )),
        (None, Source::Begun(_) | Source::Patch(_)) => Ok(Vec::new()),
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
