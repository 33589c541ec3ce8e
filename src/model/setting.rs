//! What rules and aims look at when they write rows and objectives.

use crate::candidates::{Candidate, Candidates};
use crate::garden::{Garden, IngredientAt};
use crate::units::Kilograms;

use super::columns::{Columns, of};
use super::program::Terms;

/// A garden, its candidates and their columns.
pub struct Setting<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// The candidates.
    pub candidates: &'a Candidates,
    /// Their columns.
    pub columns: &'a Columns,
}

impl Setting<'_> {
    /// The garden-grown share of an ingredient's target in a poor year.
    #[must_use]
    pub fn low_share(&self, at: IngredientAt) -> Terms {
        self.share(at, |c| c.amounts.low)
    }

    /// The garden-grown share of an ingredient's target in an ordinary year.
    #[must_use]
    pub fn expected_share(&self, at: IngredientAt) -> Terms {
        self.share(at, |c| c.amounts.expected)
    }

    /// What the plantings that are ready in a year give in a poor year, against the least share.
    #[must_use]
    pub fn least_share_ready(&self, at: IngredientAt, year: usize) -> Terms {
        let least = self.garden[at].least(self.garden.feast.portions);
        of(self.candidates, at)
            .filter(|(_, c)| c.ready.has(year))
            .map(|(k, c)| {
                self.columns
                    .blocks_of(self.candidates, k, c.amounts.low / least)
            })
            .collect()
    }

    fn share(&self, at: IngredientAt, per_block: impl Fn(&Candidate) -> Kilograms) -> Terms {
        let target = self.garden[at].target(self.garden.feast.portions);
        of(self.candidates, at)
            .map(|(k, c)| {
                self.columns
                    .blocks_of(self.candidates, k, per_block(c) / target)
            })
            .collect()
    }
}
