//! The plan with its names looked up in the garden and its dates turned into day numbers.

mod given;
mod lookup;

use crate::calendar::Horizon;
use crate::garden::{Gap, Garden};
use crate::growth::{Light, PickingDays};
use crate::plan::Plan;

use super::planting::Planting;

/// A plan laid over its garden.
pub struct Run<'a> {
    /// The garden.
    pub garden: &'a Garden,
    /// The plan.
    pub plan: &'a Plan,
    /// The days that count.
    pub horizon: Horizon,
    /// The light on them.
    pub light: Light,
    /// Days on which somebody keeps bearing plants picked.
    pub picking_days: PickingDays,
    /// Spans without anyone on site.
    pub gaps: Vec<Gap>,
    /// The plantings of known ingredients.
    pub plantings: Vec<Planting<'a>>,
}
