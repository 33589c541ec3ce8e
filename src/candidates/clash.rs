//! Which plantings cannot have the same strip: those that stand there at once, and those of one
//! crop family that follow each other within the years that the later one must wait.

use std::collections::BTreeMap;

use chrono::Datelike;

use crate::garden::{Garden, IngredientAt};

use super::candidate::Candidate;

/// True if no strip can carry both. A longer stay in the bed never takes a clash away.
#[must_use]
pub fn clash(garden: &Garden, a: &Candidate, b: &Candidate) -> bool {
    let (earlier, later) = if a.bed_days <= b.bed_days {
        (a, b)
    } else {
        (b, a)
    };
    later.bed_days.0 <= earlier.bed_days.1 || must_wait(garden, earlier, later)
}

/// True if a planting must keep off the strips of one that is cleared before it comes.
fn must_wait(garden: &Garden, earlier: &Candidate, later: &Candidate) -> bool {
    let rotation = |c: &Candidate| &garden[c.ingredient].crop.rotation;
    let horizon = garden.horizon();
    let year = |day: usize| horizon.date(day).year();
    let passed = year(later.bed_days.0) - year(earlier.bed_days.1);
    rotation(earlier).family == rotation(later).family && rotation(later).must_wait(passed)
}

/// The ingredients in the beds, by family, of which any two plantings clash, whatever their days:
/// those whose family must wait as long as the plan spans. No strip carries two of them.
#[must_use]
pub fn families<'g>(garden: &'g Garden, all: &[Candidate]) -> BTreeMap<&'g str, Vec<IngredientAt>> {
    let horizon = garden.horizon();
    let (first, last) = (horizon.first(), horizon.date(horizon.days() - 1));
    let mut families: BTreeMap<&str, Vec<IngredientAt>> = BTreeMap::new();
    for at in garden.ingredient_positions() {
        let rotation = &garden[at].crop.rotation;
        let in_beds = all
            .iter()
            .any(|c| c.ingredient == at && !c.plots.is_empty());
        if in_beds && rotation.must_wait(last.year() - first.year()) {
            families.entry(&rotation.family).or_default().push(at);
        }
    }
    families
}
