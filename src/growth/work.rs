//! Minutes that a step takes of a class's session. All figures are common practice, from memory.

use crate::garden::Crop;
use crate::plan::StepKind;
use crate::units::Minutes;

use super::amount::Need;

/// Minutes that each class needs for a step when the grade's `children` share the work.
#[must_use]
pub fn minutes(step: StepKind, crop: &Crop, need: &Need, children: u32) -> Minutes {
    todo!("{step:?} {crop:?} {need:?} {children}")
}
