//! The built-in crop catalogue: complete, every figure with its source, equal to what the
//! published works print, and broken files refused.

mod broken;
mod calibration;
mod names;
mod published;
mod sane;
mod sources;
mod yields;

use tureen::catalogue::{Catalogue, Entry};

/// The built-in catalogue. That it loads is what `Catalogue::load` relies on.
fn catalogue() -> Catalogue {
    Catalogue::load().unwrap_or_else(|error| panic!("{error}"))
}

/// All entries, by name.
fn entries(catalogue: &Catalogue) -> Vec<&Entry> {
    catalogue
        .names()
        .map(|name| catalogue.entry(name).expect("a listed name is found"))
        .collect()
}
