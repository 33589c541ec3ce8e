//! Crops and families by the names that the file gives them.

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::Crop;

use super::names::{near, quote};

/// The crop of a name; reports it if there is none.
pub fn find_crop<'c>(
    name: &Given<String>,
    catalogue: &'c Catalogue,
    findings: &mut Findings,
) -> Read<&'c Crop> {
    catalogue.get(&name.value).ok_or_else(|| {
        let other = near(&name.value, catalogue.names());
        findings.report(no_such_crop(name, other))
    })
}

/// The family of a crop, or of a family's own name; reports it if there is neither.
pub fn family_of(
    name: &Given<String>,
    catalogue: &Catalogue,
    findings: &mut Findings,
) -> Read<String> {
    if let Some(crop) = catalogue.get(&name.value) {
        return Ok(crop.rotation.family.clone());
    }
    let family = name.value.to_lowercase();
    if catalogue.families().contains(&family.as_str()) {
        return Ok(family);
    }
    let other = near(&name.value, catalogue.names().chain(catalogue.families()));
    Err(findings.report(no_such_crop(name, other)))
}

fn no_such_crop(name: &Given<String>, other: Option<&str>) -> Problem {
    let cause = format!("the catalogue has no crop {}", quote(&name.value));
    let problem = Problem::new(Code::NoSuchCrop, cause).at(name.span, "");
    match other {
        Some(other) => problem.remedy(format!("did you mean {}?", quote(other))),
        None => problem.remedy(
            "take the crop that is most like it, with your own figures in a section [crop.\"...\"]",
        ),
    }
}
