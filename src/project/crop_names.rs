//! Crops and families by the names that the file gives them: those of the catalogue, and those that the
//! file adds itself.

use std::collections::BTreeMap;

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Reported, Span};
use crate::garden::Crop;

use super::names::{listed, near, quote};

/// Cover crops that no dish wants, with their families (botany; which are usual: common practice).
const COVER_CROPS: [(&str, &str); 21] = [
    ("alfalfa", "legume"),
    ("annual ryegrass", "grass"),
    ("barley", "grass"),
    ("clover", "legume"),
    ("crimson clover", "legume"),
    ("field bean", "legume"),
    ("field pea", "legume"),
    ("fodder radish", "cabbage"),
    ("hairy vetch", "legume"),
    ("lupin", "legume"),
    ("mustard", "cabbage"),
    ("oats", "grass"),
    ("phacelia", "borage"),
    ("rapeseed", "cabbage"),
    ("red clover", "legume"),
    ("rye", "grass"),
    ("ryegrass", "grass"),
    ("vetch", "legume"),
    ("white clover", "legume"),
    ("winter rye", "grass"),
    ("winter wheat", "grass"),
];

/// What the sections [crop."..."] say, by the names of the crops in lower case.
#[derive(Default)]
pub struct Overrides {
    /// Crops with the school's own figures and crops that the file adds, and where each is given.
    pub crops: BTreeMap<String, (Crop, Span)>,
    /// Sections of which no crop came out. Their names are known all the same.
    pub unsound: BTreeMap<String, Reported>,
}

/// All crops that the file can name.
#[derive(Clone, Copy)]
pub struct Crops<'a> {
    pub catalogue: &'a Catalogue,
    /// What the file's own sections say, if it has some.
    pub own: Option<&'a Overrides>,
}

impl<'a> Crops<'a> {
    /// A crop by any of its names, in any case, with the school's own figures if it has some.
    pub fn get(&self, name: &str) -> Option<&'a Crop> {
        let known = self.catalogue.get(name);
        let key = known.map_or_else(|| key(name), |known| known.name.clone());
        let own = self.own.and_then(|own| own.crops.get(&key));
        own.map(|(crop, _)| crop).or(known)
    }

    /// The crop of a name; reports it if there is none.
    pub fn find(&self, name: &Given<String>, findings: &mut Findings) -> Read<&'a Crop> {
        if let Some(crop) = self.get(&name.value) {
            return Ok(crop);
        }
        self.sound(name)?;
        let problem = no_such_crop(name);
        Err(findings.report(match near(&name.value, self.names()) {
            Some(other) => problem.remedy(format!("did you mean {}?", quote(other))),
            None => problem.remedy(format!(
                "add it: a section [crop.{}] with `like = \"...\"`, the crop that is most like it, \
                 and your own figures",
                quote(&name.value)
            )),
        }))
    }

    /// The family of a crop or of a cover crop, or a family by its own name; reports it if there is none.
    pub fn family(&self, name: &Given<String>, findings: &mut Findings) -> Read<String> {
        if let Some(crop) = self.get(&name.value) {
            return Ok(crop.rotation.family.clone());
        }
        let family = key(&name.value);
        if let Some((_, family)) = COVER_CROPS.iter().find(|(cover, _)| *cover == family) {
            return Ok((*family).to_owned());
        }
        let families = self.catalogue.families();
        if families.contains(&family.as_str()) {
            return Ok(family);
        }
        self.sound(name)?;
        let other = near(&name.value, self.names().chain(families.iter().copied()));
        let remedy = match other {
            Some(other) => format!("did you mean {}?", quote(other)),
            None => format!("name its family: {}", listed(families)),
        };
        Err(findings.report(no_such_crop(name).remedy(remedy)))
    }

    /// That no section of this name was refused already.
    fn sound(&self, name: &Given<String>) -> Read<()> {
        let refused = self.own.and_then(|own| own.unsound.get(&key(&name.value)));
        refused.map_or(Ok(()), |reported| Err(*reported))
    }

    /// The names that messages offer.
    fn names(&self) -> impl Iterator<Item = &'a str> {
        let own = self.own.into_iter().flat_map(|own| &own.crops);
        self.catalogue
            .names()
            .chain(own.map(|(name, _)| name.as_str()))
    }
}

/// A name as crops are found by it.
pub fn key(name: &str) -> String {
    name.trim().to_lowercase()
}

/// A crop that is not known; the remedy is the caller's.
pub fn no_such_crop(name: &Given<String>) -> Problem {
    let cause = format!("the catalogue has no crop {}", quote(&name.value));
    Problem::new(Code::NoSuchCrop, cause).at(name.span, "")
}
