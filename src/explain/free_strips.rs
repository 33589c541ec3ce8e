//! Strips of bed that are free for a planting beside those that stay.

use crate::calendar::{Date, plus_days};
use crate::candidates::Candidate;
use crate::garden::{Garden, Method, Plot, Source};
use crate::plan::{Place, Planting, StepKind};

/// Days that a bed takes to be cleared after the last pick.
const CLEARING_DAYS: i64 = 7;

/// What stands in the beds, and since and until when.
pub struct FreeStrips {
    taken: Vec<(Place, Date, Date)>,
    /// Beds in which what is lost stood: these are filled first.
    first: Vec<String>,
}

impl FreeStrips {
    /// The strips beside some plantings; those of lost ones are free again.
    pub fn of(garden: &Garden, staying: &[&Planting], lost: &[&Planting]) -> Self {
        let taken = staying.iter().flat_map(|planting| {
            let (from, to) = stands(garden, planting);
            let places = planting.places.iter().cloned();
            places.map(move |place| (place, from, to))
        });
        let beds = lost.iter().flat_map(|p| &p.places);
        Self {
            taken: taken.collect(),
            first: beds.map(|place| place.bed.clone()).collect(),
        }
    }

    /// Places for whole blocks of a candidate on its plots, if there are enough.
    pub fn places<'p>(
        &self,
        garden: &Garden,
        plots: impl Iterator<Item = &'p Plot>,
        candidate: &Candidate,
        block: u32,
        strips: u32,
    ) -> Option<Vec<Place>> {
        let from = candidate.steps.into_bed()?;
        let to = plus_days(candidate.steps.picks.last()?.last(), CLEARING_DAYS);
        let mut plots: Vec<&Plot> = plots.collect();
        let bed = |plot: &Plot| garden[plot.bed].id.clone();
        plots.sort_by_key(|plot| !self.first.contains(&bed(plot)));
        let mut places = Vec::new();
        let mut left = strips;
        for plot in plots {
            for (first, n) in self.runs(&bed(plot), plot, from, to) {
                let take = (n / block.max(1) * block).min(left);
                if take > 0 {
                    left -= take;
                    places.push(Place {
                        bed: bed(plot),
                        first_strip: first,
                        strips: take,
                    });
                }
            }
        }
        places.sort();
        (left == 0 && strips > 0).then_some(places)
    }

    /// Runs of free strips of a plot: the first, counted from 1 in the bed, and how many.
    fn runs(&self, bed: &str, plot: &Plot, from: Date, to: Date) -> Vec<(u32, u32)> {
        let is_free = |strip: u32| {
            !self.taken.iter().any(|(place, first, last)| {
                let there = place.first_strip <= strip && strip < place.first_strip + place.strips;
                place.bed == bed && there && *first <= to && from <= *last
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

/// The first and last day on which a planting takes its strips.
fn stands(garden: &Garden, planting: &Planting) -> (Date, Date) {
    let first_of = |kind| {
        let steps = planting.steps.iter().filter(move |s| s.kind == kind);
        steps.filter_map(|s| s.when.first()).min()
    };
    let from = match planting.method {
        Method::Direct | Method::Pieces => first_of(StepKind::Sow),
        Method::Indoor | Method::Bought => first_of(StepKind::PlantOut),
        Method::Growing => grows_since(garden, planting),
        Method::Patch => None,
    };
    let picks = planting.steps.iter().filter(|s| s.kind == StepKind::Pick);
    let last = picks.filter_map(|s| s.when.last()).max();
    (
        from.unwrap_or(garden.school_year.start),
        last.map_or(garden.last_day(), |day| plus_days(day, CLEARING_DAYS)),
    )
}

fn grows_since(garden: &Garden, planting: &Planting) -> Option<Date> {
    let of = garden.ingredients.iter();
    let mut of = of.filter(|i| i.name == planting.ingredient);
    match of.next()?.source {
        Source::Growing(at) => Some(garden.growing.get(at)?.sown),
        Source::Sown | Source::Patch(_) => None,
    }
}
