//! Rows that share a whole number of places: only those that can bind, none contained in
//! another, each with its rounded companions.

use std::collections::BTreeSet;

use crate::model::program::{Col, Program, Terms};

/// Rows `terms <= capacity` that are collected before they go into the program.
#[derive(Debug, Default)]
pub struct Capacities {
    rows: BTreeSet<(u32, Vec<(Col, u32)>)>,
}

/// Rounded rows are added for these multiples; more did not help where it was measured.
const MULTIPLES: std::ops::RangeInclusive<u32> = 2..=5;

impl Capacities {
    /// Collects a row. The caller has seen that it can bind.
    pub fn push(&mut self, mut terms: Vec<(Col, u32)>, capacity: u32) {
        terms.retain(|(_, weight)| *weight > 0);
        // Sorted, so that equal rows are one and `contains` can look up terms.
        terms.sort_unstable();
        self.rows.insert((capacity, terms));
    }

    /// Adds the rows that are not contained in another one with no greater right side.
    pub fn add_rows(self, program: &mut Program) {
        let rows: Vec<(u32, Vec<(Col, u32)>)> = self.rows.into_iter().collect();
        for (k, (capacity, terms)) in rows.iter().enumerate() {
            let contained = rows.iter().enumerate().any(|(other, (cap, longer))| {
                other != k && cap <= capacity && contains(longer, terms)
            });
            if !contained {
                program.at_most(to_terms(terms), f64::from(*capacity));
            }
        }
    }
}

/// True if `longer` has every term of `terms`. Rows are distinct, so never both ways.
fn contains(longer: &[(Col, u32)], terms: &[(Col, u32)]) -> bool {
    longer.len() > terms.len() && terms.iter().all(|t| longer.binary_search(t).is_ok())
}

fn to_terms(terms: &[(Col, u32)]) -> Terms {
    terms
        .iter()
        .map(|(col, weight)| (*col, f64::from(*weight)))
        .collect()
}

/// For the row `terms <= capacity` over whole columns, the rows
/// `sum floor(k a / (capacity + 1)) x <= k - 1` for small `k`: valid since the left side of
/// the row times `k / (capacity + 1)` stays under `k` (Chvatal and Gomory rounding).
#[must_use]
pub fn rounded(terms: &[(Col, u32)], capacity: u32) -> Vec<(Vec<(Col, u32)>, u32)> {
    MULTIPLES
        .filter_map(|k| {
            // In 64 bits, for a weight five times over may need more than 32.
            let round = |weight: u32| u64::from(weight) * u64::from(k) / (u64::from(capacity) + 1);
            let row: Vec<(Col, u32)> = terms
                .iter()
                .map(|(col, weight)| (*col, u32::try_from(round(*weight)).unwrap_or(u32::MAX)))
                .filter(|(_, weight)| *weight > 0)
                .collect();
            (row.len() > 1).then_some((row, k - 1))
        })
        .collect()
}
