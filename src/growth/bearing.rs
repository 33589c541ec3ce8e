//! How long a crop bears that is picked again and again: a fixed number of days, or longer where somebody
//! keeps it picked.

use crate::garden::{Garden, Picking, WhilePicked};

/// The day numbers on which somebody is there who picks what is ripe, in order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PickingDays(Vec<usize>);

impl PickingDays {
    /// Those of a garden.
    #[must_use]
    pub fn of(garden: &Garden) -> Self {
        let horizon = garden.horizon();
        let picked = |day: &usize| garden.keeps_picked(horizon.date(*day)).is_some();
        Self::on((0..horizon.days()).filter(picked))
    }

    /// Days by their numbers, in order.
    #[must_use]
    pub fn on(days: impl IntoIterator<Item = usize>) -> Self {
        Self(days.into_iter().collect())
    }

    /// The last day on which what is ripe from a day on still bears: somebody picks within so many days of
    /// it, and then again and again within as many. The day itself where nobody does.
    #[must_use]
    pub fn bears_until(&self, ripe: usize, bears: WhilePicked) -> usize {
        let every = bears.every_days as usize;
        let end = ripe + bears.bears_days as usize;
        let first = self.0.partition_point(|day| *day < ripe);
        let mut last = None;
        for day in self.0.iter().skip(first) {
            let before = last.unwrap_or(ripe);
            if day - before > every || before >= end {
                break;
            }
            last = Some(*day);
        }
        last.map_or(ripe, |last| end.min(last + every))
    }
}

/// How long a crop bears, or holds, from the day on which it is ripe.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bearing {
    holds: usize,
    while_picked: Option<WhilePicked>,
    /// Where somebody picks.
    picked: Option<PickingDays>,
}

impl Bearing {
    /// That of a crop which nobody picks.
    #[must_use]
    pub fn unpicked(picking: &Picking) -> Self {
        Self {
            holds: picking.holds_in_ground_days as usize,
            while_picked: picking.while_picked,
            picked: None,
        }
    }

    /// The same where somebody picks on some days.
    #[must_use]
    pub fn picked_on(self, days: &PickingDays) -> Self {
        let picked = self.while_picked.map(|_| days.clone());
        Self { picked, ..self }
    }

    /// The last day on which it can be picked.
    #[must_use]
    pub fn last_day(&self, ripe: usize) -> usize {
        let unpicked = ripe + self.holds;
        match (self.while_picked, &self.picked) {
            (Some(bears), Some(days)) => unpicked.max(days.bears_until(ripe, bears)),
            _ => unpicked,
        }
    }
}
