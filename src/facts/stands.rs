//! Which strips of which bed are taken by what, from which day to which.

use crate::calendar::Date;
use crate::garden::BedAt;

use super::Facts;
use super::places::places;

/// A planting on neighbouring strips of a bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stand {
    /// The position of the planting in the plan.
    pub planting: usize,
    /// First strip, from 0.
    pub first: u32,
    /// How many.
    pub strips: u32,
    /// The first day on which it takes them.
    pub from: Date,
    /// The last day, the week to clear them included, within the plan.
    pub to: Date,
}

impl Stand {
    /// True if two stand on one strip, one after the other.
    #[must_use]
    pub fn shares_strips_with(&self, other: &Self) -> bool {
        self.first < other.first + other.strips && other.first < self.first + self.strips
    }
}

/// A bed with what stands in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Carries {
    /// The bed.
    pub bed: BedAt,
    /// Its strips.
    pub strips: u32,
    /// The first day on which it is free, if it is not from the start.
    pub free_from: Option<Date>,
    /// The most of its strips in use in any week.
    pub most: u32,
    /// What stands there, in the order in which it comes.
    pub stands: Vec<Stand>,
}

impl Carries {
    /// True if one planting follows another on some strip.
    #[must_use]
    pub fn has_followers(&self) -> bool {
        let before = |n: usize| self.stands.iter().take(n);
        let mut stands = self.stands.iter().enumerate();
        stands.any(|(n, stand)| before(n).any(|other| stand.shares_strips_with(other)))
    }
}

impl Facts<'_> {
    /// All beds with what stands in them, in the order of the file.
    #[must_use]
    pub fn carried(&self) -> Vec<Carries> {
        let (first, _) = self.span();
        let carries = |at: BedAt| {
            let bed = &self.garden[at];
            let weeks = self.replay.strips_by_week.get(at.0);
            Carries {
                bed: at,
                strips: bed.strips(),
                free_from: bed.free_from.filter(|day| *day > first),
                most: weeks.and_then(|w| super::space::most(w)).unwrap_or(0),
                stands: self.stands_in(at),
            }
        };
        self.garden.bed_positions().map(carries).collect()
    }

    /// What stands in a bed, in the order in which it comes.
    fn stands_in(&self, bed: BedAt) -> Vec<Stand> {
        let id = &self.garden[bed].id;
        let plantings = self.plan.plantings.iter().zip(&self.in_bed).enumerate();
        let mut stands: Vec<Stand> = plantings
            .filter_map(|(at, (planting, span))| Some((at, planting, self.within((*span)?))))
            .flat_map(|(at, planting, (from, to))| {
                let places = places(&planting.places).into_iter();
                let here = places.filter(|place| place.bed == *id);
                here.map(move |place| Stand {
                    planting: at,
                    first: place.first_strip.saturating_sub(1),
                    strips: place.strips,
                    from,
                    to,
                })
            })
            .collect();
        stands.sort_by_key(|stand| (stand.from, stand.first));
        stands
    }
}
