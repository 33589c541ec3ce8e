//! The dishes from which a project can start, as `data/dishes.toml` holds them.

use serde::Deserialize;

use super::error::{CatalogueError, Fault};

const DISHES: &str = include_str!("data/dishes.toml");

/// A dish with the grams of each ingredient in one portion.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dish {
    /// Its name.
    pub name: String,
    /// The first and the last month in which its ingredients come together in the temperate north, 1 to 12;
    /// the last may be in the next year.
    pub months: (u32, u32),
    /// Crops of the catalogue, and grams of each, ready to cook.
    pub ingredients: Vec<(String, f64)>,
}

/// The form of the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct DishFile {
    dish: Vec<Dish>,
}

impl Dish {
    /// The first and the last of its months at a place: south of the equator six months later.
    #[must_use]
    pub fn months_at(&self, south: bool) -> (u32, u32) {
        let later = |month: u32| match south {
            true => (month + 5) % 12 + 1,
            false => month,
        };
        (later(self.months.0), later(self.months.1))
    }

    /// True if a month is one of its own at a place.
    #[must_use]
    pub fn suits(&self, month: u32, south: bool) -> bool {
        let (first, last) = self.months_at(south);
        match first <= last {
            true => (first..=last).contains(&month),
            false => month >= first || month <= last,
        }
    }
}

/// All dishes.
///
/// # Errors
/// If the embedded file is broken; a test loads it.
pub fn dishes() -> Result<Vec<Dish>, CatalogueError> {
    let file: DishFile = toml::from_str(DISHES)
        .map_err(|e| CatalogueError::in_file("dishes.toml", Fault::Toml(Box::new(e))))?;
    Ok(file.dish)
}
