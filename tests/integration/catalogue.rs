//! The built-in crop catalogue: complete, every figure with its source, and broken files
//! refused. What the published works print is held in `outside`.

mod broken;
mod calibration;
mod dishes;
mod hot;
mod names;
mod sane;
mod sources;

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
