//! The sections [crop."..."]: the school's own figures in place of the catalogue's, key by key.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::Crop;

use super::crop_names::find_crop;
use super::form::Form;
use super::kind::Kind;
use super::names::{near, quote};
use super::own_figures::apply;
use super::table::{named, table};

/// Crops with the school's own figures, by the catalogue's name, and where they are given.
pub type Overrides = BTreeMap<String, (Crop, Span)>;

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
        let known = find_crop(&name, catalogue, findings)?;
        Ok((own(known).read(value, findings)?, name.span))
    });
    sections.and_then(gather)
}

/// One crop with the school's own figures in place of known ones.
fn own(known: &Crop) -> Kind<'_, Crop> {
    table("this crop", |t| {
        let mut own = known.clone();
        apply(t, &mut own);
        own
    })
}

/// All sections by crop; reports those that are about the same one.
fn gather(sections: Vec<Read<(Crop, Span)>>, findings: &mut Findings) -> Read<Overrides> {
    let mut overrides = Overrides::new();
    for section in sections {
        let (crop, span) = section?;
        let name = crop.name.clone();
        if let Some((_, first)) = overrides.insert(name.clone(), (crop, span)) {
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
    for (name, (_, span)) in overrides {
        if !used.contains(&name.as_str()) {
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
