//! The built-in crop catalogue: the figures of 86 crops, each with the work it comes from or
//! "memory". The figures stand in `catalogue/data/`, in files that a person can read and add to.

mod dishes;
mod entry;
mod error;
mod raw;
mod sources;

use std::collections::BTreeMap;

pub use dishes::{Dish, dishes};
pub use entry::Entry;
pub use error::{CatalogueError, Fault};
pub use raw::Basis;
pub use sources::{MEMORY, PRACTICE, source_keys};

use crate::garden::{Crop, How};
use raw::{CropFile, GerminationTable};

/// The crop files, by name and text.
const CROPS: [(&str, &str); 15] = [
    ("fruits.toml", include_str!("catalogue/data/fruits.toml")),
    (
        "fruits_more.toml",
        include_str!("catalogue/data/fruits_more.toml"),
    ),
    ("grains.toml", include_str!("catalogue/data/grains.toml")),
    ("roots.toml", include_str!("catalogue/data/roots.toml")),
    (
        "roots_more.toml",
        include_str!("catalogue/data/roots_more.toml"),
    ),
    ("onions.toml", include_str!("catalogue/data/onions.toml")),
    (
        "onions_more.toml",
        include_str!("catalogue/data/onions_more.toml"),
    ),
    ("leaves.toml", include_str!("catalogue/data/leaves.toml")),
    (
        "leaves_more.toml",
        include_str!("catalogue/data/leaves_more.toml"),
    ),
    ("pulses.toml", include_str!("catalogue/data/pulses.toml")),
    (
        "pulses_more.toml",
        include_str!("catalogue/data/pulses_more.toml"),
    ),
    ("herbs.toml", include_str!("catalogue/data/herbs.toml")),
    (
        "herbs_more.toml",
        include_str!("catalogue/data/herbs_more.toml"),
    ),
    (
        "standing.toml",
        include_str!("catalogue/data/standing.toml"),
    ),
    (
        "standing_more.toml",
        include_str!("catalogue/data/standing_more.toml"),
    ),
];
/// The end of the name of a second file of one group, which follows the first.
const MORE: &str = "_more";
const GERMINATION: &str = include_str!("catalogue/data/germination.toml");
const HOW: &str = include_str!("catalogue/data/how.toml");
const SOURCES: &str = include_str!("catalogue/data/sources.toml");

/// All crops that the program knows.
#[derive(Debug, Clone)]
pub struct Catalogue {
    /// By catalogue name.
    entries: BTreeMap<String, Entry>,
    /// The groups of crops, by the names of their files, each with its crops in order.
    groups: Vec<(String, Vec<String>)>,
    /// Other names in lower case, each with the catalogue name that it stands for.
    other_names: BTreeMap<String, String>,
    /// By source key.
    citations: BTreeMap<String, String>,
}

impl Catalogue {
    /// The built-in catalogue; takes a few milliseconds.
    ///
    /// # Errors
    /// If an embedded file is broken. A test loads them, so a released program has none; the
    /// error type keeps a slip in them from being a panic.
    pub fn load() -> Result<Self, CatalogueError> {
        let mut catalogue = Self::read(&CROPS, GERMINATION, SOURCES)?;
        catalogue
            .add_how(HOW)
            .map_err(|fault| CatalogueError::in_file("how.toml", fault))?;
        Ok(catalogue)
    }

    /// A catalogue from the texts of its files: crop files by name, the germination table and
    /// the list of sources.
    ///
    /// # Errors
    /// At the first fault: a file that does not parse, a name given twice, a table row or a
    /// source that does not exist, a source for a figure that is not given.
    pub fn read(
        crops: &[(&str, &str)],
        germination: &str,
        sources: &str,
    ) -> Result<Self, CatalogueError> {
        let citations: BTreeMap<String, String> = toml::from_str(sources)
            .map_err(|e| CatalogueError::in_file("sources.toml", Fault::Toml(Box::new(e))))?;
        let table = GerminationTable::parse(germination, &citations)
            .map_err(|fault| CatalogueError::in_file("germination.toml", fault))?;
        let mut catalogue = Self {
            entries: BTreeMap::new(),
            groups: Vec::new(),
            other_names: BTreeMap::new(),
            citations,
        };
        for &(file, text) in crops {
            let parsed: CropFile = toml::from_str(text)
                .map_err(|e| CatalogueError::in_file(file, Fault::Toml(Box::new(e))))?;
            let group = file.trim_end_matches(".toml").trim_end_matches(MORE);
            if catalogue
                .groups
                .last()
                .is_none_or(|(last, _)| last != group)
            {
                catalogue.groups.push((group.to_owned(), Vec::new()));
            }
            for (number, crop) in (1..).zip(parsed.crop) {
                let name = crop.get("name").and_then(toml::Value::as_str);
                let name = name.map_or_else(|| format!("number {number}"), str::to_owned);
                Entry::read(crop, &table, &catalogue.citations)
                    .and_then(|entry| catalogue.add(entry))
                    .map_err(|fault| CatalogueError::in_crop(file, &name, fault))?;
            }
        }
        Ok(catalogue)
    }

    /// Adds a crop, unless one of its names is taken.
    fn add(&mut self, entry: Entry) -> Result<(), Fault> {
        let name = entry.crop.name.clone();
        for wanted in entry.other_names.iter().chain([&name]) {
            if self.entry(wanted).is_some() {
                return Err(Fault::NameTaken(wanted.clone()));
            }
        }
        for other in &entry.other_names {
            self.other_names.insert(other.to_lowercase(), name.clone());
        }
        if let Some((_, crops)) = self.groups.last_mut() {
            crops.push(name.clone());
        }
        self.entries.insert(name, entry);
        Ok(())
    }

    /// Adds how crops are grown and picked, from the text of that file: a table for each, by its
    /// catalogue name.
    ///
    /// # Errors
    /// If it does not parse, or names a crop that is not there.
    pub fn add_how(&mut self, text: &str) -> Result<(), Fault> {
        let all: BTreeMap<String, How> =
            toml::from_str(text).map_err(|e| Fault::Toml(Box::new(e)))?;
        for (name, how) in all {
            match self.entries.get_mut(&name) {
                Some(entry) => entry.crop.how = Some(how),
                None => return Err(Fault::UnknownCrop(name)),
            }
        }
        Ok(())
    }

    /// A crop by its name or one of its other names, in any case.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Crop> {
        self.entry(name).map(|entry| &entry.crop)
    }

    /// A crop with its sources and notes, by name or other name.
    #[must_use]
    pub fn entry(&self, name: &str) -> Option<&Entry> {
        let name = name.trim().to_lowercase();
        self.entries
            .get(&name)
            .or_else(|| self.entries.get(self.other_names.get(&name)?))
    }

    /// The catalogue names, sorted.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.entries.keys().map(String::as_str)
    }

    /// The crops as a gardener would look for them: by the group whose file they stand in
    /// (`fruits`), in the order of the files.
    pub fn groups(&self) -> impl Iterator<Item = (&str, Vec<&Entry>)> {
        self.groups.iter().map(|(group, names)| {
            let entries = names.iter().filter_map(|name| self.entries.get(name));
            (group.as_str(), entries.collect())
        })
    }

    /// All names by which crops are found, catalogue names and other names.
    pub fn all_names(&self) -> impl Iterator<Item = &str> {
        let others = self.entries.values().flat_map(|entry| &entry.other_names);
        self.names().chain(others.map(String::as_str))
    }

    /// The rotation families, sorted, each once.
    #[must_use]
    pub fn families(&self) -> Vec<&str> {
        let mut families: Vec<&str> = self
            .entries
            .values()
            .map(|entry| entry.crop.rotation.family.as_str())
            .collect();
        families.sort_unstable();
        families.dedup();
        families
    }

    /// Where a crop's figure comes from; see [`Entry::source`].
    #[must_use]
    pub fn source(&self, crop: &str, field: &str) -> Option<&str> {
        self.entry(crop)?.source(field)
    }

    /// The full citation of a source key.
    #[must_use]
    pub fn citation(&self, key: &str) -> Option<&str> {
        self.citations.get(key).map(String::as_str)
    }
}
