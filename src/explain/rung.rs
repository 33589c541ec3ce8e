//! Ladders: the ways in which one thing in a project can be changed, from the cheapest rung to
//! the dearest. A repair is the lowest rung that helps.

use rayon::prelude::*;

use crate::project::Change;

use super::kind::Kind;

/// One way of changing a project.
#[derive(Debug, Clone, PartialEq)]
pub struct Rung {
    /// What it changes.
    pub kind: Kind,
    /// The changes to the file.
    pub changes: Vec<Change>,
}

/// Rungs of one kind, from the cheapest to the dearest.
#[derive(Debug, Clone, PartialEq)]
pub struct Ladder {
    /// The rungs.
    pub rungs: Vec<Rung>,
    /// True if a dearer rung helps wherever a cheaper one does.
    pub rising: bool,
}

/// Whether some changes are enough.
pub type Helps<'a> = dyn Fn(&[Change]) -> bool + Sync + 'a;

impl Ladder {
    /// The cheapest rung that helps.
    pub fn lowest(&self, helps: &Helps<'_>) -> Option<Rung> {
        if !self.rising {
            let rungs = self.rungs.par_iter();
            return rungs.find_first(|rung| helps(&rung.changes)).cloned();
        }
        if !self.rungs.last().is_some_and(|rung| helps(&rung.changes)) {
            return None;
        }
        let at = first_that(self.rungs.len(), |n| {
            self.rungs.get(n).is_some_and(|rung| helps(&rung.changes))
        });
        self.rungs.get(at).cloned()
    }

    /// The first few rungs that help.
    pub fn all_that_help(&self, helps: &Helps<'_>, most: usize) -> Vec<Rung> {
        let rungs = self.rungs.par_iter();
        let mut good: Vec<Rung> = rungs.filter(|r| helps(&r.changes)).cloned().collect();
        good.truncate(most);
        good
    }

    /// What its kind of change asks of a school.
    pub fn weight(&self) -> u32 {
        self.rungs.first().map_or(0, |rung| rung.kind.weight())
    }

    /// True if its rungs are other crops, of which none is cheaper than another.
    pub fn is_about_crops(&self) -> bool {
        let first = self.rungs.first();
        first.is_some_and(|rung| matches!(rung.kind, Kind::AnotherCrop { .. }))
    }
}

/// The first of `n` numbers for which something holds that holds for all after it, too; the
/// last, if it is not known to hold for any.
pub fn first_that(n: usize, holds: impl Fn(usize) -> bool) -> usize {
    let (mut lo, mut hi) = (0, n.saturating_sub(1));
    while lo < hi {
        let middle = usize::midpoint(lo, hi);
        if holds(middle) {
            hi = middle;
        } else {
            lo = middle + 1;
        }
    }
    hi
}
