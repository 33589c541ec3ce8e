//! Which strips of which bed are taken by what, from which day to which.

use crate::calendar::Date;
use crate::garden::{BedAt, Strips};
use crate::plan::Stand;

use super::Facts;

/// A stand with its days within the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Dated {
    /// What stands where.
    pub stand: Stand,
    /// The first day on which it takes its strips.
    pub from: Date,
    /// The last day, the week to clear them included, within the plan.
    pub to: Date,
}

/// A bed with what stands in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Carries {
    /// The bed.
    pub bed: BedAt,
    /// Its strips.
    pub strips: u32,
    /// Strips that are not free from the start, each with the first day on which they are.
    pub not_free: Vec<(Strips, Date)>,
    /// The most of its strips in use in any week.
    pub most: u32,
    /// What stands there, in the order in which it comes.
    pub stands: Vec<Dated>,
}

impl Carries {
    /// True if one planting follows another on some strip.
    #[must_use]
    pub fn has_followers(&self) -> bool {
        let before = |n: usize| self.stands.iter().take(n);
        let mut stands = self.stands.iter().enumerate();
        stands.any(|(n, stand)| before(n).any(|other| stand.stand.shares_strips(&other.stand)))
    }
}

impl Facts<'_> {
    /// All beds with what stands in them, in the order of the file.
    #[must_use]
    pub fn carried(&self) -> Vec<Carries> {
        let carries = |at: BedAt| {
            let bed = &self.garden[at];
            let weeks = self.replay.strips_by_week.get(at.0);
            Carries {
                bed: at,
                strips: bed.strips(),
                not_free: self.not_free(at),
                most: weeks.and_then(|w| super::space::most(w)).unwrap_or(0),
                stands: self.stands_in(at),
            }
        };
        self.garden.bed_positions().map(carries).collect()
    }

    /// Strips of a bed that are not free from the start: all of them, or those on which something stands for no
    /// ingredient.
    fn not_free(&self, at: BedAt) -> Vec<(Strips, Date)> {
        let (first, _) = self.span();
        let all = Strips::from_start(self.garden[at].strips());
        let bed = self.garden[at].free_from.map(|free| (all, free));
        let former = self.garden.former_on(at, all);
        let former = former.map(|f| (f.strips, f.free_from()));
        let all = bed.into_iter().chain(former);
        all.filter(|(_, free)| *free > first).collect()
    }

    /// What stands in a bed, in the order in which it comes.
    fn stands_in(&self, bed: BedAt) -> Vec<Dated> {
        let horizon = self.garden.horizon();
        let dated = |stand: &Stand| {
            let (from, to) = stand.days;
            let (from, to) = self.within((horizon.date(from), horizon.date(to)));
            Dated {
                stand: stand.clone(),
                from,
                to,
            }
        };
        let here = self.stands.iter().filter(|stand| stand.bed == bed);
        let mut stands: Vec<Dated> = here.map(dated).collect();
        stands.sort_by_key(|dated| (dated.from, dated.stand.strips.first));
        stands
    }
}
