//! Until when raw manure could have been spread before a harvest.

use chrono::Days;

use crate::calendar::Date;
use crate::plan::StepKind;

use super::Facts;
use super::spans::span_of;

/// Days from working raw manure into the ground to a harvest that touches the soil.
/// Source: US Code of Federal Regulations, Title 7, section 205.203(c)(1).
const TOUCHING_SOIL: Days = Days::new(120);

/// The same for a harvest that does not touch the soil.
const ABOVE_SOIL: Days = Days::new(90);

/// The last days on which raw manure could have been worked in before a harvest that touches
/// the soil, and before one that does not.
#[must_use]
pub fn last_raw_manure(harvest: Date) -> (Date, Date) {
    (harvest - TOUCHING_SOIL, harvest - ABOVE_SOIL)
}

impl Facts<'_> {
    /// The first day on which anything is picked; `None` if nothing is.
    #[must_use]
    pub fn first_pick(&self) -> Option<Date> {
        let plantings = self.plan.plantings.iter();
        let picks = plantings.filter_map(|p| span_of(p, StepKind::Pick));
        picks.map(|(from, _)| from).min()
    }
}
