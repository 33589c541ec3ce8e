//! The rules as rows. Each rule of the plan has its file here and in the checker; a rule that
//! candidates keep by themselves says so.

mod amount;
mod capacity;
mod care;
mod participation;
mod readiness;
mod rotation;
mod sessions;
mod shelf;
mod space;

use crate::candidates::Candidates;
use crate::garden::Garden;
use crate::plan::Rule;

use super::columns::Columns;
use super::program::Program;

pub use rotation::wish_broken;
pub use space::{add_rounded, name_plots};

/// What a rule needs to write its rows.
pub struct Setting<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// The candidates.
    pub candidates: &'a Candidates,
    /// Their columns.
    pub columns: &'a Columns,
}

/// Adds the rows of all rules.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    for rule in Rule::ALL {
        match rule {
            Rule::Space => space::add_rows(program, setting),
            Rule::Shelf => shelf::add_rows(program, setting),
            Rule::Sessions => sessions::add_rows(program, setting),
            Rule::Rotation => rotation::add_rows(program, setting),
            Rule::Amount => amount::add_rows(program, setting),
            Rule::Readiness => readiness::add_rows(program, setting),
            Rule::Participation => participation::add_rows(program, setting),
            Rule::Care => care::add_rows(program, setting),
        }
    }
}
