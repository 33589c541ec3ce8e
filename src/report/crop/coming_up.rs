//! How many days a crop takes to come up, by the warmth of the soil.

use crate::garden::Crop;
use crate::growth::germination::days_to_emerge;
use crate::units::Celsius;

use super::super::page::Page;

/// Soil temperatures of the published tables.
const SOIL: [f64; 9] = [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0];

/// A row of days under a row of soil temperatures.
pub(super) fn table(crop: &Crop, page: &mut Page) {
    let days = SOIL.map(|soil| {
        days_to_emerge(&crop.germination, Celsius(soil))
            .map_or_else(|| "none".to_owned(), |days| format!("{days:.0}"))
    });
    let degrees = SOIL.map(|soil| format!("{soil:.0}\u{a0}C"));
    let header: Vec<&str> = std::iter::once("Soil of")
        .chain(degrees.iter().map(String::as_str))
        .collect();
    let row: Vec<String> = std::iter::once("Days".to_owned()).chain(days).collect();
    let numbers: Vec<usize> = (1..header.len()).collect();
    page.table(&header, &[row], &numbers);
    page.gap();
    page.line("none: it does not come up in soil of that warmth, or nobody has tried.");
}
