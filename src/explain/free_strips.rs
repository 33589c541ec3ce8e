//! Strips of bed that are free for a planting beside those that stay.

use chrono::Datelike;

use crate::calendar::Date;
use crate::candidates::Candidate;
use crate::garden::{Garden, Plot, Rotation};
use crate::plan::{Place, Planting};

/// A planting with the first and last day on which it takes its strips; `None` for a patch.
pub type Standing<'a> = (&'a Planting, Option<(Date, Date)>);

/// What stands in the beds, and since and until when.
pub struct FreeStrips<'a> {
    garden: &'a Garden,
    taken: Vec<Taken<'a>>,
    /// Beds in which what is lost stood: these are filled first.
    first: Vec<&'a str>,
}

/// Strips with what stands there, from its first day until it is cleared.
struct Taken<'a> {
    place: &'a Place,
    family: Option<&'a Rotation>,
    from: Date,
    to: Date,
}

impl Taken<'_> {
    /// True if the strips are of no use to a crop that stands in the bed on some days: they are
    /// taken then, or one of the two has to wait longer for the other.
    fn bars(&self, rotation: &Rotation, (from, to): (Date, Date)) -> bool {
        let must_wait = |later: &Rotation, first: Date, cleared: Date| {
            cleared < first && later.must_wait(first.year() - cleared.year())
        };
        let family = self.family.filter(|f| f.family == rotation.family);
        self.from <= to && from <= self.to
            || family.is_some_and(|family| {
                must_wait(rotation, from, self.to) || must_wait(family, self.from, to)
            })
    }
}

impl<'a> FreeStrips<'a> {
    /// The strips beside some plantings; those of lost ones are free again.
    pub fn of(garden: &'a Garden, staying: &[Standing<'a>], lost: &[Standing<'a>]) -> Self {
        let taken = staying.iter().filter_map(|(planting, span)| {
            let (from, to) = (*span)?;
            let family = garden.ingredient_named(&planting.ingredient);
            let family = family.map(|at| &garden[at].crop.rotation);
            let taken = move |place| Taken {
                place,
                family,
                from,
                to,
            };
            Some(planting.places.iter().map(taken))
        });
        let beds = lost.iter().flat_map(|(planting, _)| &planting.places);
        Self {
            garden,
            taken: taken.flatten().collect(),
            first: beds.map(|place| place.bed.as_str()).collect(),
        }
    }

    /// Places for the fewest blocks of a candidate on its plots, if there are enough. `rotation` is
    /// that of its crop.
    pub fn places<'p>(
        &self,
        plots: impl Iterator<Item = &'p Plot>,
        candidate: &Candidate,
        rotation: &Rotation,
    ) -> Option<Vec<Place>> {
        let horizon = self.garden.horizon();
        let (from, to) = candidate.bed_days;
        let days = (horizon.date(from), horizon.date(to));
        let block = candidate.amounts.block.strips.max(1);
        let mut left = candidate.amounts.least_strips();
        let mut plots: Vec<&Plot> = plots.collect();
        let bed = |plot: &Plot| self.garden[plot.bed].id.as_str();
        plots.sort_by_key(|plot| !self.first.contains(&bed(plot)));
        let mut places = Vec::new();
        for plot in plots {
            for (first, n) in self.runs(bed(plot), plot, |taken| taken.bars(rotation, days)) {
                let take = (n / block * block).min(left);
                if take > 0 {
                    left -= take;
                    places.push(Place {
                        bed: bed(plot).to_owned(),
                        first_strip: first,
                        strips: take,
                    });
                }
            }
        }
        places.sort();
        (left == 0 && !places.is_empty()).then_some(places)
    }

    /// Runs of free strips of a plot: the first, counted from 1 in the bed, and how many.
    fn runs(&self, bed: &str, plot: &Plot, bars: impl Fn(&Taken<'_>) -> bool) -> Vec<(u32, u32)> {
        let is_free = |strip: u32| {
            !self.taken.iter().any(|taken| {
                let place = taken.place;
                let there = place.first_strip <= strip && strip < place.first_strip + place.strips;
                place.bed == bed && there && bars(taken)
            })
        };
        let mut runs: Vec<(u32, u32)> = Vec::new();
        for strip in plot.first_strip + 1..=plot.first_strip + plot.strips {
            match runs.last_mut() {
                _ if !is_free(strip) => {}
                Some((first, n)) if *first + *n == strip => *n += 1,
                _ => runs.push((strip, 1)),
            }
        }
        runs
    }
}
