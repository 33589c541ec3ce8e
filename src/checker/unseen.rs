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

/// So many of them are grown at once, so that what is known of each day of each is not held for all; a part
/// of the whole.
const AT_ONCE: u32 = 50;

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
        let more = garden.horizon().calendar_years() - 1;
        let fresh = generate(&means, first, FRESH_YEARS + more, FRESH_SEED);
        let mut seen = Self {
            years: 0,
            dish: 0,
            rain_date: garden.feast.rain_date.map(|_| 0),
            ingredients: vec![0; garden.ingredients.len()],
        };
        let mut garden = garden.clone();
        for year in (0..FRESH_YEARS).step_by(AT_ONCE as usize) {
            let from = first.saturating_add_unsigned(year);
            garden.weather = fresh.of_years(from, AT_ONCE + more);
            let run = Run::new(&garden, plan).0;
            seen.count(&Harvest::of(&run, &seasons_of(&run)));
        }
        Some(seen)
    }

    fn count(&mut self, harvest: &Harvest) {
        self.years += harvest.years.len();
        self.dish += harvest.whole_dish_years();
        let on_rain_date = harvest.dish_ready_on_rain_date.iter().flatten();
        let more = on_rain_date.filter(|ready| **ready).count();
        self.rain_date = self.rain_date.map(|ready| ready + more);
        for (ready, own) in self.ingredients.iter_mut().zip(&harvest.ingredients) {
            *ready += own.ready_years();
        }
    }
}
