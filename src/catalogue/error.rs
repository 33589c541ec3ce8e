//! What can be wrong with a catalogue file, and where.

use std::fmt;

/// A fault in one of the catalogue's files.
#[derive(Debug, Clone, PartialEq)]
pub struct CatalogueError {
    /// The file's name.
    pub file: String,
    /// The crop, where the fault lies in one.
    pub crop: Option<String>,
    /// What is wrong.
    pub fault: Fault,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq)]
pub enum Fault {
    /// Not TOML, or not in the shape of a crop.
    Toml(Box<toml::de::Error>),
    /// A name or other name that stands for another crop already.
    NameTaken(String),
    /// A row that the germination table does not have.
    UnknownRow(String),
    /// A source key without a citation.
    UnknownSource(String),
    /// A crop that stands in no crop file.
    UnknownCrop(String),
    /// A source for a figure that is not given.
    SourceOfNothing(String),
}

impl CatalogueError {
    pub(super) fn in_file(file: &str, fault: Fault) -> Self {
        Self {
            file: file.to_owned(),
            crop: None,
            fault,
        }
    }

    pub(super) fn in_crop(file: &str, crop: &str, fault: Fault) -> Self {
        Self {
            crop: Some(crop.to_owned()),
            ..Self::in_file(file, fault)
        }
    }
}

impl fmt::Display for CatalogueError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "catalogue file {}", self.file)?;
        if let Some(crop) = &self.crop {
            write!(f, ", crop {crop}")?;
        }
        write!(f, ": {}", self.fault)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Toml(error) => write!(f, "{error}"),
            Self::NameTaken(name) => write!(f, "the name \"{name}\" is taken"),
            Self::UnknownRow(row) => write!(f, "germination.toml has no row \"{row}\""),
            Self::UnknownSource(key) => write!(f, "sources.toml has no citation for \"{key}\""),
            Self::UnknownCrop(name) => write!(f, "no crop file has \"{name}\""),
            Self::SourceOfNothing(field) => {
                write!(f, "a source is named for \"{field}\", which is not given")
            }
        }
    }
}

impl std::error::Error for CatalogueError {}
