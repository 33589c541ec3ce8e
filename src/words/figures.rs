//! All figures of a crop under the headings under which a person looks for them.

mod growing;
mod harvest;
mod kitchen;
mod line;

use crate::catalogue::Entry;
use crate::garden::Crop;

use super::Words;
use line::Line;

pub use line::Figure;
pub(crate) use line::way;

/// The heading of the cautions.
pub(crate) const TAKE_CARE: &str = "Take care";

/// The heading under which the table of days to come up stands.
pub(crate) const COMING_UP: &str = "Coming up";

/// All headings with their lines, in the order in which they are read.
const HEADINGS: [(&str, &[Line]); 10] = [
    (TAKE_CARE, &harvest::CAUTION),
    ("Starting it", &growing::STARTING),
    (COMING_UP, &growing::COMING_UP),
    ("Getting ripe", &growing::RIPENING),
    ("Cold, heat and long days", &growing::WEATHER),
    ("Picking and keeping", &harvest::PICKING),
    ("Harvest", &harvest::YIELDS),
    ("In the kitchen", &kitchen::KITCHEN),
    ("Place in the bed", &harvest::PLACE),
    ("Water", &harvest::WATER),
];

/// All figures of a crop of the catalogue.
#[must_use]
pub fn figures(entry: &Entry, words: Words) -> Vec<Figure> {
    by_heading(entry, &entry.crop, words)
        .into_iter()
        .flat_map(|(_, figures)| figures)
        .collect()
}

/// The figures of a crop under their headings; `crop` is the entry's, perhaps with the project's
/// own figures.
pub(crate) fn by_heading(
    entry: &Entry,
    crop: &Crop,
    words: Words,
) -> Vec<(&'static str, Vec<Figure>)> {
    HEADINGS
        .iter()
        .map(|(heading, lines)| {
            let shown = lines
                .iter()
                .filter_map(|line| line.show(entry, crop, words));
            (*heading, shown.collect())
        })
        .collect()
}
