//! Shelf and beds week by week against what there is, and when they are fullest.

use crate::calendar::{Date, plus_days};
use crate::garden::{Bed, BedAt, Garden};

use super::Facts;

/// What fills up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Room {
    /// The seedling shelf, counted in flats.
    Shelf,
    /// Its heat mat, counted in flats.
    HeatMat,
    /// A bed, counted in strips.
    Bed(BedAt),
    /// All beds together, counted in strips.
    AllBeds,
}

/// What is used of a room.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Use {
    /// Which room.
    pub room: Room,
    /// How much there is, in flats or strips.
    pub capacity: u32,
    /// The most in use on one day of each week.
    pub weeks: Vec<u32>,
}

impl Use {
    /// How much is in use in a week.
    #[must_use]
    pub fn in_week(&self, week: usize) -> u32 {
        in_week(&self.weeks, week)
    }

    /// The greatest use and the first week of it; `None` if never used.
    #[must_use]
    pub fn peak(&self) -> Option<(u32, usize)> {
        let top = most(&self.weeks).filter(|n| *n > 0)?;
        Some((top, self.weeks.iter().position(|n| *n == top)?))
    }

    /// True if something is used in any week.
    #[must_use]
    pub fn is_used(&self) -> bool {
        self.weeks.iter().any(|n| *n > 0)
    }
}

/// What is in use in a week; nothing beyond the list.
#[must_use]
pub fn in_week(by_week: &[u32], week: usize) -> u32 {
    by_week.get(week).copied().unwrap_or(0)
}

/// The strips of all beds.
#[must_use]
pub fn all_strips(garden: &Garden) -> u32 {
    garden.beds.iter().map(Bed::strips).sum()
}

/// The greatest use of any week; `None` without weeks.
#[must_use]
pub fn most(by_week: &[u32]) -> Option<u32> {
    by_week.iter().copied().max()
}

impl Facts<'_> {
    /// The use of the shelf and of its heat mat, each where it is used.
    #[must_use]
    pub fn shelf_use(&self) -> Vec<Use> {
        let (shelf, replay) = (&self.garden.shelf, self.replay);
        let of = |room, capacity, weeks: &[u32]| Use {
            room,
            capacity,
            weeks: weeks.to_vec(),
        };
        let rooms = [
            of(Room::Shelf, shelf.flats, &replay.flats_by_week),
            of(Room::HeatMat, shelf.warm_flats, &replay.warm_flats_by_week),
        ];
        rooms.into_iter().filter(Use::is_used).collect()
    }

    /// The use of the beds that are used.
    #[must_use]
    pub fn bed_use(&self) -> Vec<Use> {
        let positions = self.garden.bed_positions();
        let of = |(at, weeks): (BedAt, &Vec<u32>)| Use {
            room: Room::Bed(at),
            capacity: self.garden[at].strips(),
            weeks: weeks.clone(),
        };
        let all = positions.zip(&self.replay.strips_by_week).map(of);
        all.filter(Use::is_used).collect()
    }

    /// All beds added up, week by week.
    #[must_use]
    pub fn all_beds_use(&self) -> Use {
        let beds = &self.replay.strips_by_week;
        let week = |week| beds.iter().filter_map(|bed| bed.get(week)).sum();
        Use {
            room: Room::AllBeds,
            capacity: all_strips(self.garden),
            weeks: (0..self.garden.horizon().weeks()).map(week).collect(),
        }
    }

    /// Strips of all beds that are free by the end of a week of what stood there before.
    #[must_use]
    pub fn free_strips(&self, week: usize) -> u32 {
        let sunday = plus_days(self.garden.horizon().monday(week), 6);
        let beds = self.garden.bed_positions();
        beds.map(|bed| self.garden.strips_free_on(bed, sunday))
            .sum()
    }

    /// First and last day of the plan on which the shelf may be used; `None` where that is always.
    #[must_use]
    pub fn shelf_open(&self) -> Option<(Date, Date)> {
        let shelf = &self.garden.shelf;
        let (first, last) = self.span();
        let open = (shelf.from.max(first), shelf.until.unwrap_or(last).min(last));
        (open != (first, last)).then_some(open)
    }
}

/// First and last of the weeks in a row in which a use holds.
#[must_use]
pub fn weeks_in_which(by_week: &[u32], holds: impl Fn(u32) -> bool) -> Vec<(usize, usize)> {
    let mut spans: Vec<(usize, usize)> = Vec::new();
    for (week, _) in by_week.iter().enumerate().filter(|(_, used)| holds(**used)) {
        match spans.last_mut() {
            Some((_, last)) if *last + 1 == week => *last = week,
            _ => spans.push((week, week)),
        }
    }
    spans
}

/// First and last of the weeks in a row in which all uses stay as they are, from the first week
/// of use to the first empty one after the last.
#[must_use]
pub fn alike_weeks(uses: &[&Use], weeks: usize) -> Vec<(usize, usize)> {
    let at = |week: usize| -> Vec<u32> { uses.iter().map(|u| u.in_week(week)).collect() };
    let used: Vec<usize> = (0..weeks)
        .filter(|week| at(*week).iter().any(|n| *n > 0))
        .collect();
    let (Some(&first), Some(&last)) = (used.first(), used.last()) else {
        return Vec::new();
    };
    let mut spans: Vec<(usize, usize)> = Vec::new();
    for week in first..=(last + 1).min(weeks.saturating_sub(1)) {
        match spans.last_mut() {
            Some((from, to)) if at(*from) == at(week) => *to = week,
            _ => spans.push((week, week)),
        }
    }
    spans
}
