//! Shelf and beds week by week: what is in use on the fullest day, and what there is.

use crate::calendar::{Date, plus_days};
use crate::garden::{Bed, BedAt};

use super::Facts;
use super::space::in_week;

/// How much of something is in use, and how much there is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Use {
    /// In use on the fullest day.
    pub used: u32,
    /// There.
    pub there: u32,
}

/// A week from Monday to Sunday.
#[derive(Debug, Clone, PartialEq)]
pub struct Week<'a> {
    /// Its Monday.
    pub monday: Date,
    /// Flats on the shelf.
    pub flats: Use,
    /// Flats on the heat mat.
    pub warm_flats: Use,
    /// Strips of each bed, in the order of the file. Strips that carry what stood there before are
    /// not there.
    pub beds: Vec<(&'a Bed, Use)>,
}

impl<'a> Facts<'a> {
    /// Every week of the plan.
    #[must_use]
    pub fn weeks(&self) -> Vec<Week<'a>> {
        let (garden, replay) = (self.garden, self.replay);
        let horizon = garden.horizon();
        let week = |at: usize| {
            let monday = horizon.monday(at);
            let beds = garden.bed_positions().zip(&replay.strips_by_week);
            let strips = |(bed, used): (BedAt, &Vec<u32>)| {
                let used = in_week(used, at);
                let there = garden.strips_free_on(bed, plus_days(monday, 6));
                (&garden[bed], Use { used, there })
            };
            let flats = |used: &[u32], there| Use {
                used: in_week(used, at),
                there,
            };
            Week {
                monday,
                flats: flats(&replay.flats_by_week, garden.shelf.flats),
                warm_flats: flats(&replay.warm_flats_by_week, garden.shelf.warm_flats),
                beds: beds.map(strips).collect(),
            }
        };
        (0..horizon.weeks()).map(week).collect()
    }
}
