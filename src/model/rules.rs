//! The rules as rows. Each rule of the plan has its file here and in the checker; a rule that
//! candidates keep by themselves says so.

mod amount;
mod capacity;
mod care;
mod crowds;
mod happened;
mod needs;
mod participation;
mod readiness;
mod rotation;
mod sessions;
mod shelf;
mod space;

use crate::plan::Rule;

use super::program::{Program, Section};
use super::setting::Setting;

pub use needs::Floor;
pub use rotation::wish_broken;
pub use space::name_plots;

/// Adds the rows of all rules.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>) {
    for rule in Rule::ALL {
        program.begin(Section::Rule(rule));
        match rule {
            Rule::Space => space::add_rows(program, setting),
            Rule::Shelf => shelf::add_rows(program, setting),
            Rule::Sessions => sessions::add_rows(program, setting),
            Rule::Rotation => rotation::add_rows(program, setting),
            Rule::Amount => amount::add_rows(program, setting),
            Rule::Readiness => readiness::add_rows(program, setting),
            Rule::Participation => participation::add_rows(program, setting),
            Rule::Care => care::add_rows(program, setting),
            Rule::Happened => happened::add_rows(program, setting),
        }
    }
}

/// Adds rows about strips, given what is held of each ingredient.
pub fn tighten(program: &mut Program, setting: &Setting<'_>, floor: &Floor<'_>) {
    for short in [
        space::short_of_strips(setting),
        rotation::short_of_strips(setting),
    ] {
        crowds::add_rounded(program, setting, &short, floor.fewest);
        needs::add_rows(program, setting, &short, floor);
    }
}
