//! What the program has: the catalogue's crops and figures, and Fahrenheit as the sources
//! print it.

use tureen::calendar::Date;
use tureen::catalogue::Catalogue;
use tureen::garden::Crop;
use tureen::units::Celsius;

use super::check::Check;

/// The built-in catalogue.
pub fn catalogue() -> Catalogue {
    Catalogue::load().unwrap_or_else(|error| panic!("{error}"))
}

/// A crop that the catalogue must have.
pub fn crop<'a>(catalogue: &'a Catalogue, name: &str) -> &'a Crop {
    catalogue.get(name).unwrap_or_else(|| panic!("no {name}"))
}

/// Degrees Fahrenheit as degrees Celsius.
pub fn fahrenheit(f: f64) -> Celsius {
    Celsius((f - 32.0) / 1.8)
}

/// A day of 2026.
pub fn day(month: u32, day: u32) -> Date {
    Date::from_ymd_opt(2026, month, day).unwrap()
}

/// A figure of the catalogue: its path in the data files, what it is of a crop (nothing where
/// the crop has no such figure), and how exactly it must agree.
pub struct Field {
    pub path: &'static str,
    pub of: fn(&Crop) -> Option<f64>,
    pub tolerance: f64,
}

impl Field {
    /// One printed figure against all crops that take it: the crop farthest from it counts.
    pub fn check(
        &self,
        catalogue: &Catalogue,
        names: &[&str],
        printed: f64,
        source: &'static str,
    ) -> Check {
        let found = names.iter().map(|name| (self.of)(crop(catalogue, name)));
        let off = |figure: &Option<f64>| figure.map_or(f64::INFINITY, |f| (f - printed).abs());
        let farthest = found.max_by(|a, b| off(a).total_cmp(&off(b))).flatten();
        let what = format!("{}: {}", names.join(", "), self.path);
        Check::maybe(&what, farthest, Some(printed), self.tolerance, source).of(names, self.path)
    }
}
