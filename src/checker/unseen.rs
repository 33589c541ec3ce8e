//! What a plan promises is counted on years that it was not chosen on, because a plan suits its own years
//! better than others: made-up years are made anew, and of a record each year is counted with a
//! plan that was made the same way without it.

use chrono::Datelike;

use crate::garden::Garden;
use crate::plan::{Plan, ReadyUnseen, UnseenYears};
use crate::weather::generator::generate;

use super::harvest::{Harvest, seasons_of};
use super::run::Run;

/// So many fresh years are made: their share of ready years is then within some three of a hundred of
/// the true one (twice the standard error of a share of a half).
pub const FRESH_YEARS: u32 = 1_000;

/// So many of them are grown at once, so that what is known of each day of each is not held for all; a part
/// of the whole.
const AT_ONCE: u32 = 50;

/// A record of fewer years is too short to plan on a part of it and to promise anything.
pub const LEAST_YEARS: usize = 5;

/// A record of fewer years tells little, and each of them is needed to plan on.
pub const ENOUGH_YEARS: usize = 10;

/// The seed of the fresh years, greater than any that a file can have: a plan's promise is not the
/// luck of its seed, and plans made with other seeds are counted on the same years.
const FRESH_SEED: u64 = 1 << 32;

/// In how many years that a plan was not chosen on it is ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unseen {
    /// True if the years were made anew and the plan itself was grown in them; false if they are those
    /// of its record, each with another plan that was made the same way without it.
    pub fresh: bool,
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
    fn none(garden: &Garden, fresh: bool) -> Self {
        Self {
            fresh,
            years: 0,
            dish: 0,
            rain_date: garden.feast.rain_date.map(|_| 0),
            ingredients: vec![0; garden.ingredients.len()],
        }
    }

    /// Nothing counted yet of the years of a garden's record.
    #[must_use]
    pub fn of_record(garden: &Garden) -> Self {
        Self::none(garden, false)
    }

    /// Grows the plan in fresh years of the same monthly means; `None` where the garden's weather is
    /// a record, or a table of made-up years whose means are not known.
    pub(super) fn in_fresh(garden: &Garden, plan: &Plan) -> Option<Self> {
        let means = garden.weather.means()?;
        let first = garden.weather.first().year();
        let more = garden.horizon().calendar_years() - 1;
        let fresh = generate(&means, first, FRESH_YEARS + more, FRESH_SEED);
        let mut seen = Self::none(garden, true);
        let mut garden = garden.clone();
        for year in (0..FRESH_YEARS).step_by(AT_ONCE as usize) {
            let from = first.saturating_add_unsigned(year);
            garden.weather = fresh.of_years(from, AT_ONCE + more);
            let run = Run::new(&garden, plan).0;
            seen.count(&Harvest::of(&run, &seasons_of(&run)));
        }
        Some(seen)
    }

    /// What a plan on a record says of itself, if that can be of this garden.
    pub(super) fn claimed(garden: &Garden, plan: &Plan) -> Option<Self> {
        let said = plan.unseen.as_ref()?;
        let years = garden.weather.years(garden.horizon()).len();
        let whole = |n: u32| usize::try_from(n).unwrap_or(usize::MAX);
        let names = garden.ingredients.iter().map(|own| own.name.as_str());
        let seen = Self {
            fresh: false,
            years: whole(said.years),
            dish: whole(said.whole_dish_years),
            rain_date: said.rain_date_years.map(whole),
            ingredients: said
                .ingredients
                .iter()
                .map(|i| whole(i.ready_years))
                .collect(),
        };
        let counts = seen.ingredients.iter().copied();
        let on_rain_date = seen.rain_date.unwrap_or(0);
        let can_be = !garden.weather.is_generated()
            && seen.years == years
            && years >= LEAST_YEARS
            && names.eq(said.ingredients.iter().map(|own| own.ingredient.as_str()))
            && seen.rain_date.is_some() == garden.feast.rain_date.is_some()
            && on_rain_date <= years
            && counts.chain([years]).min() >= Some(seen.dish)
            && seen.ingredients.iter().all(|ready| *ready <= years);
        can_be.then_some(seen)
    }

    /// The same as a plan on a record says it of itself.
    pub(super) fn claim(&self, garden: &Garden) -> UnseenYears {
        let whole = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        let each = garden.ingredients.iter().zip(&self.ingredients);
        UnseenYears {
            years: whole(self.years),
            whole_dish_years: whole(self.dish),
            rain_date_years: self.rain_date.map(whole),
            ingredients: each
                .map(|(ingredient, ready)| ReadyUnseen {
                    ingredient: ingredient.name.clone(),
                    ready_years: whole(*ready),
                })
                .collect(),
        }
    }

    /// Counts years in which no plan could be made: nothing is ready in them.
    pub fn count_unplanned(&mut self, years: usize) {
        self.years += years;
    }

    /// Counts the years of a harvest.
    pub fn count(&mut self, harvest: &Harvest) {
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
