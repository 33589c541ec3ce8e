//! The plan grown again with all crops a tenth quicker or slower than their packets say.

use crate::garden::{Garden, Source};
use crate::growth::Unready;
use crate::plan::Plan;

use super::harvest::Harvest;
use super::run::Run;

/// How far packet days are put out, either way.
pub const OUT_BY: f64 = 0.1;

/// What becomes of the plan, as it stands, if packet days are out.
#[derive(Debug, Clone, PartialEq)]
pub struct PacketDays {
    /// Crops are ripe in a tenth fewer days.
    pub fewer: DaysOut,
    /// Crops take a tenth more days.
    pub more: DaysOut,
}

/// What becomes of the plan if packet days are out in one direction.
#[derive(Debug, Clone, PartialEq)]
pub struct DaysOut {
    /// Per ingredient, then per weather year: in the pot or why not, if its days are out. What
    /// the others do does not matter to it.
    pub ready: Vec<Vec<Result<(), Unready>>>,
    /// Weather years in which the whole dish is ready if all are out.
    pub dish_if_all: usize,
}

impl PacketDays {
    /// Grows the plan again both ways.
    pub(super) fn of(garden: &Garden, plan: &Plan) -> Self {
        Self {
            fewer: DaysOut::of(garden, plan, 1.0 - OUT_BY),
            more: DaysOut::of(garden, plan, 1.0 + OUT_BY),
        }
    }
}

impl DaysOut {
    fn of(garden: &Garden, plan: &Plan, factor: f64) -> Self {
        let mut garden = garden.clone();
        for ingredient in &mut garden.ingredients {
            if !matches!(ingredient.source, Source::Patch(_)) {
                ingredient.crop.ripening = ingredient.crop.ripening.taking(factor);
            }
        }
        let out = Harvest::for_feast(&Run::new(&garden, plan).0);
        Self {
            dish_if_all: out.whole_dish_years(),
            ready: out.ingredients.into_iter().map(|seen| seen.ready).collect(),
        }
    }

    /// Weather years in which an ingredient is ready if its days are out.
    #[must_use]
    pub fn ready_years(&self, ingredient: usize) -> usize {
        let years = self.ready.get(ingredient).into_iter().flatten();
        years.filter(|ready| ready.is_ok()).count()
    }
}
