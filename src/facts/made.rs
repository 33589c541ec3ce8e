//! What follows from a checked plan, worked out once.

use std::cell::OnceCell;
use std::ops::Deref;

use crate::checker::{CheckedPlan, Watering};
use crate::garden::Garden;

use super::cloth::{Cloth, cloths};
use super::decisions::{Decision, decisions};
use super::gaps::{OpenGap, gaps};
use super::kept_picked::{PickingTurns, kept_picked};
use super::known::Known;
use super::minutes::{Given, given};
use super::tasks::{Task, tasks};

/// A checked plan with its garden, and what follows from them.
pub struct Facts<'a> {
    known: Known<'a>,
    /// All that is done, in order of time; on one day in the order of classes and plantings.
    pub tasks: Vec<Task<'a>>,
    /// Days for which somebody must be found, in order of time.
    pub gaps: Vec<OpenGap<'a>>,
    /// What to decide, in order of time.
    pub decisions: Vec<Decision<'a>>,
    /// Minutes of every class, day by day.
    pub(super) given: Given,
    watering: OnceCell<Watering>,
    kept_picked: Vec<PickingTurns<'a>>,
    cloths: Vec<Cloth>,
}

impl<'a> Deref for Facts<'a> {
    type Target = Known<'a>;

    fn deref(&self) -> &Known<'a> {
        &self.known
    }
}

impl<'a> Facts<'a> {
    /// Looks at a checked plan of a garden.
    #[must_use]
    pub fn new(garden: &'a Garden, checked: &'a CheckedPlan) -> Self {
        let known = Known::new(garden, checked);
        let tasks = tasks(&known);
        let gaps = gaps(&known);
        Self {
            given: given(&tasks),
            decisions: decisions(&known, &gaps),
            kept_picked: kept_picked(&known),
            cloths: cloths(garden),
            tasks,
            gaps,
            known,
            watering: OnceCell::new(),
        }
    }

    /// The water that the beds need; worked out when it is first asked for.
    pub fn watering(&self) -> &Watering {
        let work_out = || self.checked.watering(self.garden);
        self.watering.get_or_init(work_out)
    }

    /// All that is kept picked, in the order of the plan.
    #[must_use]
    pub fn kept_picked(&self) -> &[PickingTurns<'a>] {
        &self.kept_picked
    }

    /// The cloths of all ingredients, in the order of the file.
    #[must_use]
    pub fn cloths(&self) -> &[Cloth] {
        &self.cloths
    }
}
