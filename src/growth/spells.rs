//! Spells of weather: runs of days in each of which something holds, or whose mean does. What ends a crop is
//! found by their last days, once for a crop and a weather year.

use crate::weather::Daily;

/// Spells of one length.
#[derive(Debug, Clone, Default)]
pub(super) struct Spells {
    /// How long one is, in days.
    days: usize,
    /// The last day of each, in order.
    last: Vec<usize>,
}

impl Spells {
    /// Spells of whose mean something holds. It is told the sum of their daily means and their number of days.
    pub(super) fn of_mean(days: &[Daily], length: u32, holds: impl Fn(f64, f64) -> bool) -> Self {
        let length = (length as usize).max(1);
        let mean = |day: usize| days.get(day).map_or(0.0, |day| day.mean().0);
        let mut sum = 0.0;
        let mut last = Vec::new();
        for day in 0..days.len() {
            sum += mean(day);
            if day >= length {
                sum -= mean(day - length);
            }
            if day + 1 >= length && holds(sum, length as f64) {
                last.push(day);
            }
        }
        Self { days: length, last }
    }

    /// Runs of days of each of which something holds.
    pub(super) fn of_each(days: &[Daily], length: u32, holds: impl Fn(&Daily) -> bool) -> Self {
        let length = (length as usize).max(1);
        let mut run = 0;
        let mut last = Vec::new();
        for (number, day) in days.iter().enumerate() {
            run = if holds(day) { run + 1 } else { 0 };
            if run >= length {
                last.push(number);
            }
        }
        Self { days: length, last }
    }

    /// The last day of the first spell all of which comes after one day and which ends on another or later.
    pub(super) fn first(&self, after: usize, from: usize) -> Option<usize> {
        let from = from.max(after + self.days);
        let before = self.last.partition_point(|day| *day < from);
        self.last.get(before).copied()
    }
}
