//! How many grades can grow something, by trying every way of giving ingredients to teams.

use std::collections::BTreeSet;

use tureen::garden::{GradeAt, Team};

/// The most grades that grow something if those of `taken` do and each further ingredient may
/// go to one of its list.
pub fn most(taken: &BTreeSet<GradeAt>, lists: &[&[Team]]) -> usize {
    let Some((first, others)) = lists.split_first() else {
        return taken.len();
    };
    let with = |team: &Team| {
        let mut taken = taken.clone();
        taken.extend(team.grades());
        most(&taken, others)
    };
    first.iter().map(with).max().unwrap_or(0)
}
