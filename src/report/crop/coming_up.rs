//! How many days a crop takes to come up, by the warmth of the soil.

use crate::facts::crop::days_to_come_up;
use crate::garden::Crop;

use crate::page::Page;

/// A row of days under a row of soil temperatures.
pub(super) fn table(crop: &Crop, page: &mut Page) {
    let days = days_to_come_up(crop);
    let degrees = days.map(|(soil, _)| format!("{:.0}\u{a0}C", soil.0));
    let header: Vec<&str> = std::iter::once("Soil of")
        .chain(degrees.iter().map(String::as_str))
        .collect();
    let told = days.map(|(_, days)| days.map_or_else(|| "none".to_owned(), |n| format!("{n:.0}")));
    let row: Vec<String> = std::iter::once("Days".to_owned()).chain(told).collect();
    let numbers: Vec<usize> = (1..header.len()).collect();
    page.table(&header, &[row], &numbers);
    page.gap();
    page.line("none: it does not come up in soil of that warmth, or nobody has tried.");
}
