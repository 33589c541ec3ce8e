//! One check for each rule, as `model/rules` has one row maker for each.

mod amount;
mod care;
mod happened;
mod participation;
mod readiness;
pub mod rotation;
pub mod sessions;
mod shelf;
mod space;

use crate::plan::Rule;

use super::fault::Fault;
use super::harvest::Harvest;
use super::run::Run;
use super::thinned::Grown;

/// All faults against one rule, in a run of which something is harvested and whose plantings are grown.
pub fn faults(rule: Rule, run: &Run<'_>, harvest: &Harvest, grown: &Grown<'_>) -> Vec<Fault> {
    match rule {
        Rule::Space => space::faults(run),
        Rule::Shelf => shelf::faults(run),
        Rule::Sessions => sessions::faults(run),
        Rule::Rotation => rotation::faults(run),
        Rule::Amount => amount::faults(run, harvest),
        Rule::Readiness => readiness::faults(run, harvest, grown),
        Rule::Participation => participation::faults(run),
        Rule::Care => care::faults(run),
        Rule::Happened => happened::faults(run),
    }
}
