//! Heat that ends a crop: the days on which a spell of it is full, found once for a crop and a weather year.

use crate::garden::{Crop, NoFruit, Spoils};
use crate::weather::Daily;

use super::spells::Spells;

/// What is ripe on a day has set by so many days before (from memory: bean two to three weeks, tomato, pepper
/// longer). Heat that is over by then has only put off flowers.
const SET_BEFORE: usize = 14;

/// Sums of many days are compared with this much forgiveness, so that a spell of a limit's own warmth is not
/// over it.
const ROUNDING: f64 = 1e-7;

/// The last days of all hot spells, in order.
#[derive(Debug, Clone)]
pub struct Heat {
    /// Spells that spoil it.
    spoils: Spells,
    /// Spells in which it sets no fruit.
    no_fruit: Spells,
}

impl Heat {
    /// The spells of a crop in a weather year.
    #[must_use]
    pub fn of(crop: &Crop, days: &[Daily]) -> Self {
        Self {
            spoils: crop
                .spoils
                .map_or_else(Spells::default, |spoils| too_warm(spoils, days)),
            no_fruit: crop
                .no_fruit
                .map_or_else(Spells::default, |no_fruit| barren(no_fruit, days)),
        }
    }

    /// The day on which heat ends what is up since a day, and is ripe on another if it lives. Ripe roots and
    /// bulbs lie out of it, `safe_underground`.
    #[must_use]
    pub fn ends(&self, up: usize, ripe: Option<usize>, safe_underground: bool) -> Option<usize> {
        let spoilt = self.spoils.first(up, 0);
        let spoilt = spoilt.filter(|day| !safe_underground || ripe.is_none_or(|ripe| ripe > *day));
        let no_fruit =
            ripe.and_then(|ripe| self.no_fruit.first(up, ripe.saturating_sub(SET_BEFORE)));
        spoilt.into_iter().chain(no_fruit).min()
    }
}

/// Spells whose mean is over the limit.
fn too_warm(spoils: Spoils, days: &[Daily]) -> Spells {
    let most = spoils.above.0 + ROUNDING;
    Spells::of_mean(days, spoils.days, |sum, length| sum > most * length)
}

/// Runs of days each of which has a night or a noon over the limit.
fn barren(no_fruit: NoFruit, days: &[Daily]) -> Spells {
    Spells::of_each(days, no_fruit.days, |day| {
        day.tmin > no_fruit.nights || day.tmax > no_fruit.noons
    })
}
