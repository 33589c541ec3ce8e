//! Where an ingredient comes from: sown, begun already, in a bed or on the shelf, or a perennial patch.

use std::collections::BTreeMap;

use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span, peek};
use crate::garden::{BegunAt, Crop, PatchAt, Source};

use super::crop_names::Crops;
use super::ingredient::{Around, RawIngredient, Serving};
use super::names::{listed, near, quote};
use super::order::in_order;
use super::standing::RawPatch;

/// Which section of something begun serves which ingredient.
pub fn begun_for(
    names: &BTreeMap<String, usize>,
    begun: &[Serving<'_>],
    findings: &mut Findings,
) -> BTreeMap<usize, usize> {
    let mut serves: BTreeMap<usize, (usize, Span)> = BTreeMap::new();
    for (at, raw) in begun.iter().enumerate() {
        let Ok(name) = raw.for_ingredient else {
            continue;
        };
        let Some(ingredient) = names.get(&name.value) else {
            findings.report(no_such_ingredient(name, names));
            continue;
        };
        match serves.get(ingredient) {
            Some((_, first)) => {
                findings.report(two_sources(name.span, *first, &name.value));
            }
            None => {
                serves.insert(*ingredient, (at, name.span));
            }
        }
    }
    serves.into_iter().map(|(i, (at, _))| (i, at)).collect()
}

fn no_such_ingredient(name: &Given<String>, names: &BTreeMap<String, usize>) -> Problem {
    let list = listed(names.keys().map(String::as_str));
    let remedy = match near(&name.value, names.keys().map(String::as_str)) {
        Some(other) => format!("did you mean {}? The ingredients are {list}", quote(other)),
        None => format!("the ingredients are {list}"),
    };
    let cause = format!("the dish has no ingredient {}", quote(&name.value));
    Problem::new(Code::NoSuchIngredient, cause)
        .at(name.span, "")
        .remedy(remedy)
}

fn two_sources(second: Span, first: Span, name: &str) -> Problem {
    let cause = format!("the ingredient {} comes from two places", quote(name));
    Problem::new(Code::TwoSources, cause)
        .at(second, "here")
        .also(first, "and here")
        .remedy("leave one; for a second place add a second ingredient with its own `name`")
}

/// Where the ingredient comes from.
pub fn source(
    raw: &RawIngredient,
    crop: &Crop,
    begun: Option<usize>,
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<Source> {
    let (begun_list, patches) = (around.begun?, around.patches?);
    let patch = match peek(&raw.patch)? {
        Some(id) => Some((find_patch(id, patches, findings)?, id.span)),
        None => None,
    };
    let standing = begun.and_then(|at| Some((at, begun_list.get(at)?)));
    match (patch, standing) {
        (Some((_, span)), Some((_, standing))) => {
            let first = standing.for_ingredient?;
            Err(findings.report(two_sources(span, first.span, &first.value)))
        }
        (Some((at, span)), None) => {
            let patch = patches.get(at).map(|patch| &patch.value);
            let other = patch.map(|patch| &patch.crop);
            same_crop(crop, other, span, &around.crops, findings)?;
            if let Some(patch) = patch {
                picked_in_time(patch, around, findings)?;
            }
            Ok(Source::Patch(PatchAt(at)))
        }
        (None, standing) if crop.methods.is_empty() => {
            let at = raw.crop.as_ref().map_or(raw.span, |name| name.span);
            let cause = format!("{} cannot be sown for the feast", crop.name);
            let label = match standing {
                Some(_) => "a perennial is picked from a patch, not from [[growing]]",
                None => "a perennial is picked from a patch that already stands",
            };
            Err(
                findings.report(Problem::new(Code::NeedsAPatch, cause).at(at, label).remedy(
                    "add a section [[patch]] and name it here with `patch = \"...\"`, \
                 or take another crop",
                )),
            )
        }
        (None, Some((at, standing))) => {
            let span = standing.for_ingredient?.span;
            same_crop(crop, Some(standing.crop), span, &around.crops, findings)?;
            Ok(Source::Begun(BegunAt(at)))
        }
        (None, None) => Ok(Source::Sown),
    }
}

/// The patch can be picked on a day between the start and the feast.
fn picked_in_time(patch: &RawPatch, around: &Around<'_>, findings: &mut Findings) -> Read<()> {
    let (start, feast) = (around.start?, around.feast?);
    in_order(("start", start), ("pick_to", patch.pick_to?), findings)?;
    in_order(("pick_from", patch.pick_from?), ("feast", feast), findings)
}

fn find_patch(
    id: &Given<String>,
    patches: &[Given<RawPatch>],
    findings: &mut Findings,
) -> Read<usize> {
    let ids = || patches.iter().filter_map(|p| p.value.id.as_ref().ok());
    let names = || ids().map(|id| id.value.as_str());
    let found = patches.iter().position(|p| {
        p.value
            .id
            .as_ref()
            .is_ok_and(|other| other.value == id.value)
    });
    found.ok_or_else(|| {
        let remedy = match near(&id.value, names()) {
            Some(other) => format!("did you mean {}?", quote(other)),
            None if patches.is_empty() => "add a section [[patch]]".to_owned(),
            None => format!("the patches are {}", listed(names())),
        };
        let cause = format!("there is no patch with the id {}", quote(&id.value));
        findings.report(
            Problem::new(Code::NoSuchPatch, cause)
                .at(id.span, "")
                .remedy(remedy),
        )
    })
}

/// What stands is the ingredient's crop.
fn same_crop(
    crop: &Crop,
    other: Option<&Read<Given<String>>>,
    span: Span,
    crops: &Crops<'_>,
    findings: &mut Findings,
) -> Read<()> {
    let Some(Ok(other)) = other else {
        return Ok(());
    };
    match crops.get(&other.value) {
        Some(standing) if standing.name != crop.name => {
            let cause = format!("{} cannot serve as {}", other.value, crop.name);
            Err(findings.report(
                Problem::new(Code::CropDiffers, cause)
                    .at(span, format!("the ingredient is {}", crop.name))
                    .also(other.span, format!("this is {}", other.value))
                    .remedy("correct one of the two crops"),
            ))
        }
        _ => Ok(()),
    }
}
