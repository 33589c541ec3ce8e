//! Which plantings cannot have the same strip: those that stand there at once, and those of one
//! crop family that follow each other within the years that the later one must wait.

use std::collections::BTreeMap;

use chrono::Datelike;

use crate::garden::{Garden, IngredientAt, Rotation};

use super::candidate::Candidate;

/// True if no strip can carry both. A longer stay in the bed never takes a clash away.
#[must_use]
pub fn clash(garden: &Garden, a: &Candidate, b: &Candidate) -> bool {
    at_once(a, b) || waits(garden, a, b, Rotation::must_wait)
}

/// True if they can have the same strip one after the other, though the later one's family should
/// keep off it.
#[must_use]
pub fn breaks_wish(garden: &Garden, a: &Candidate, b: &Candidate) -> bool {
    !clash(garden, a, b) && waits(garden, a, b, Rotation::should_wait)
}

fn at_once(a: &Candidate, b: &Candidate) -> bool {
    a.bed_days.0 <= b.bed_days.1 && b.bed_days.0 <= a.bed_days.1
}

/// True if the later one waits for its family after the earlier one is cleared.
fn waits(
    garden: &Garden,
    a: &Candidate,
    b: &Candidate,
    waits: impl Fn(&Rotation, i32) -> bool,
) -> bool {
    let (earlier, later) = if a.bed_days <= b.bed_days {
        (a, b)
    } else {
        (b, a)
    };
    let rotation = |c: &Candidate| &garden[c.ingredient].crop.rotation;
    let horizon = garden.horizon();
    let year = |day: usize| horizon.date(day).year();
    let passed = year(later.bed_days.0) - year(earlier.bed_days.1);
    rotation(earlier).family == rotation(later).family && waits(rotation(later), passed)
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
