//! The plan grown in years that it was not chosen on: what it promises is counted there, because a
//! plan suits its own years better than others.

use chrono::Datelike;

use crate::garden::Garden;
use crate::plan::Plan;
use crate::weather::generator::generate;

use super::harvest::{Harvest, seasons_of};
use super::run::Run;

/// So many fresh years are made: their share of ready years is then within some three of a hundred of
/// the true one (twice the standard error of a share of a half).
pub const FRESH_YEARS: u32 = 1_000;

/// The seed of the fresh years, greater than any that a file can have: a plan's promise is not the
/// luck of its seed, and plans made with other seeds are counted on the same years.
const FRESH_SEED: u64 = 1 << 32;

/// In how many years that a plan was not chosen on it is ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unseen {
    /// So many years.
    pub years: usize,
    /// Of them, those in which the whole dish is ready.
    pub dish: usize,
    /// Of them, those in which the whole dish is ready on the rain date, if there is one.
    pub rain_date: Option<usize>,
    /// Of them, those in which each ingredient is ready, in the order of the project file.
    pub ingredients: Vec<usize>,
}

impl Unseen {
    /// Grows the plan in fresh years of the same monthly means; `None` where the garden's weather is
    /// a record, or a table of made-up years whose means are not known.
    pub(super) fn of(garden: &Garden, plan: &Plan) -> Option<Self> {
        let means = garden.weather.means()?;
        let first = garden.weather.first().year();
        let calendar_years = FRESH_YEARS + garden.horizon().calendar_years() - 1;
        let mut garden = garden.clone();
        garden.weather = generate(&means, first, calendar_years, FRESH_SEED);
        let run = Run::new(&garden, plan).0;
        let harvest = Harvest::of(&run, &seasons_of(&run));
        let count = |ready: &[bool]| ready.iter().filter(|ready| **ready).count();
        let ingredients = harvest.ingredients.iter();
        Some(Self {
            years: harvest.years.len(),
            dish: harvest.whole_dish_years(),
            rain_date: harvest.dish_ready_on_rain_date.as_deref().map(count),
            ingredients: ingredients.map(|seen| seen.ready_years()).collect(),
        })
    }
}
