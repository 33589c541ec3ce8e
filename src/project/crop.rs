//! The sections [crop."..."]: the school's own figures in place of the catalogue's, key by key, for a crop
//! that the catalogue knows, or for one that the file adds and that is like a known one.

use toml::de::DeValue;

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::Crop;

use super::crop_names::{Overrides, key, no_such_crop};
use super::form::Form;
use super::kind::{Kind, fits_on_a_line, text};
use super::names::{near, quote};
use super::own_figures::apply;
use super::table::{named, table};
use super::value::Value;

/// The key by which a section adds a crop.
const LIKE: &str = "like";

/// All sections.
pub fn overrides(catalogue: &Catalogue) -> Kind<'_, Overrides> {
    // The keys are the same for all crops.
    let form = || {
        let any = catalogue.names().find_map(|name| catalogue.get(name));
        any.map_or(Form::Table(Vec::new()), |known| own(known).form())
    };
    let sections = named("NAME", form, |name, value, findings| {
        let name = Given {
            value: name.value.to_owned(),
            span: name.span,
        };
        let crop = base(&name, value, catalogue, findings)
            .and_then(|base| own(&base).read(value, findings));
        (name, crop)
    });
    sections.and_then(gather)
}

/// The crop whose figures hold where the section gives none: the known one of that name, or the one
/// that it is like, under its own name.
fn base(
    name: &Given<String>,
    section: &Value<'_>,
    catalogue: &Catalogue,
    findings: &mut Findings,
) -> Read<Crop> {
    let known = catalogue.get(&name.value);
    let like = match section.value {
        DeValue::Table(entries) => entries.get(LIKE),
        _ => None,
    };
    let Some(like) = like.map(|value| Value::new(LIKE, value)) else {
        return known
            .cloned()
            .ok_or_else(|| findings.report(unknown(name, catalogue)));
    };
    let like = Given {
        value: text().read(&like, findings)?,
        span: like.span,
    };
    if let Some(known) = known {
        return Err(findings.report(known_already(&like, known)));
    }
    fits_on_a_line(&name.value, "the name of a crop", name.span, findings)?;
    let model = catalogue
        .get(&like.value)
        .ok_or_else(|| findings.report(like_nothing(name, &like, catalogue)))?;
    Ok(Crop {
        name: name.value.trim().to_owned(),
        like: Some(model.name.clone()),
        ..model.clone()
    })
}

/// A section for a crop that is not known and that does not say what it is like.
fn unknown(name: &Given<String>, catalogue: &Catalogue) -> Problem {
    let another = "if it is a crop of its own, add `like = \"...\"`, the crop that is most like it";
    no_such_crop(name).remedy(match near(&name.value, catalogue.all_names()) {
        Some(other) => format!("did you mean {}? Or {another}", quote(other)),
        None => another.to_owned(),
    })
}

/// `like` in the section of a crop that is known.
fn known_already(like: &Given<String>, known: &Crop) -> Problem {
    let cause = format!("the catalogue has its own figures for {}", known.name);
    Problem::new(Code::KeyWithoutEffect, cause)
        .at(like.span, "")
        .remedy("remove `like`, or give the crop a name of its own")
}

/// `like` names no crop of the catalogue: itself, another crop that the file adds, or nothing.
fn like_nothing(name: &Given<String>, like: &Given<String>, catalogue: &Catalogue) -> Problem {
    if key(&like.value) == key(&name.value) {
        let cause = format!("{} cannot be like itself", quote(&name.value));
        let problem = Problem::new(Code::NoSuchCrop, cause).at(like.span, "");
        return problem.remedy("name a crop of the catalogue; `tureen crops` lists them");
    }
    no_such_crop(like).remedy(match near(&like.value, catalogue.all_names()) {
        Some(other) => format!("did you mean {}?", quote(other)),
        None => "name a crop of the catalogue, not one of this file; `tureen crops` lists them"
            .to_owned(),
    })
}

/// One crop with the school's own figures in place of those that hold otherwise.
fn own(base: &Crop) -> Kind<'_, Crop> {
    table("this crop", |t| {
        let mut own = base.clone();
        // It is read before the others, since they take the place of that crop's figures; a wrong
        // one is reported there, and this table is then not read.
        let _ = t.maybe(
            LIKE,
            "for a crop that the program does not know: the known one whose figures it takes",
            "the program knows it",
            text(),
        );
        apply(t, &mut own);
        own
    })
}

/// All sections by crop; reports those that are about the same one.
fn gather(
    mut sections: Vec<(Given<String>, Read<Crop>)>,
    findings: &mut Findings,
) -> Read<Overrides> {
    sections.sort_by_key(|(name, _)| name.span.start);
    let mut overrides = Overrides::default();
    for (Given { value, span }, crop) in sections {
        let crop = match crop {
            Ok(crop) => crop,
            Err(reported) => {
                overrides.unsound.insert(key(&value), reported);
                continue;
            }
        };
        let name = crop.name.clone();
        if let Some((_, first)) = overrides.crops.insert(key(&name), (crop, span)) {
            let cause = format!("figures for {} are given twice", quote(&name));
            findings.report(
                Problem::new(Code::DuplicateId, cause)
                    .at(span, "the second")
                    .also(first, "the first")
                    .remedy("put all figures of one crop into one section"),
            );
        }
    }
    Ok(overrides)
}

/// Reports overrides of crops that no ingredient uses.
pub fn check_used(overrides: &Overrides, used: &[&str], findings: &mut Findings) {
    for (crop, span) in overrides.crops.values() {
        let name = crop.name.as_str();
        if !used.contains(&name) {
            let cause = format!("no ingredient uses the crop {}", quote(name));
            let remedy = match near(name, used.iter().copied()) {
                Some(other) => format!("did you mean [crop.{}]?", quote(other)),
                None => "remove this section, or use the crop in the dish".to_owned(),
            };
            findings.report(
                Problem::new(Code::OverrideWithoutUse, cause)
                    .at(*span, "")
                    .remedy(remedy),
            );
        }
    }
}
