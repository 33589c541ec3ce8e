//! When garlic and onions make bulbs: in long days, garlic after its cold nights.

use crate::garden::{Bulbs, Crop};
use crate::weather::Daily;

use super::light::Light;

/// What bulbs wait for, in a weather year.
#[derive(Debug, Clone)]
pub struct Bulbing {
    needs: Bulbs,
    /// Days with a night cold enough to count, in order.
    cold: Vec<usize>,
    /// Days long enough to count, in order.
    long: Vec<usize>,
}

impl Bulbing {
    /// Of a crop in a weather year; `None` if it makes no bulbs, or at any time.
    #[must_use]
    pub fn of(crop: &Crop, days: &[Daily], light: &Light) -> Option<Self> {
        let needs = crop.bulbs?;
        let cold = days.iter().enumerate();
        Some(Self {
            needs,
            cold: cold
                .filter(|(_, day)| day.tmin < needs.below)
                .map(|(number, _)| number)
                .collect(),
            long: light.days_of(needs.day_length.at(light.latitude())),
        })
    }

    /// The first day on which the bulbs of what was planted on a day can be ripe; `None` if none in the span.
    #[must_use]
    pub fn ripe_from(&self, planted: usize) -> Option<usize> {
        let chilled = match self.needs.cold_nights {
            0 => planted,
            nights => nth_after(&self.cold, planted, nights)?,
        };
        nth_after(&self.long, chilled, self.needs.days)
    }
}

/// The nth of some days that come after one, at least the first.
fn nth_after(days: &[usize], after: usize, n: u32) -> Option<usize> {
    let seen = days.partition_point(|day| *day <= after);
    days.get(seen + (n as usize).max(1) - 1).copied()
}
