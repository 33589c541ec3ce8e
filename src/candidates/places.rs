//! Where a crop may stand: plots by kind of bed, less what stands there already.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::garden::{Begun, Crop, Garden, Microclimate, Plot, StripAt, Strips};
use crate::units::Metres;

use super::dropped::DropReason;

/// All plots that may be planted, in the order of the beds: strips on which something already
/// grows for the dish are taken out.
#[must_use]
pub fn plots(garden: &Garden) -> Vec<Plot> {
    garden
        .bed_positions()
        .flat_map(|bed| {
            let taken = |strip: &StripAt| {
                let mut begun = garden.begun.iter().filter_map(Begun::in_bed);
                begun.any(|(in_bed, strips)| in_bed == bed && strips.has(*strip))
            };
            let free_runs = |plot: Plot| {
                let free = plot.strips.iter().filter(|strip| !taken(strip));
                let runs = Strips::runs(free).into_iter();
                runs.map(move |strips| Plot { strips, ..plot })
            };
            let plots = garden[bed].plots(bed).into_iter();
            plots.flat_map(free_runs).collect::<Vec<_>>()
        })
        .collect()
}

/// Beds in which the same planting grows the same way: one width, one microclimate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BedClass {
    /// Width.
    pub width: Metres,
    /// What changes how plants grow.
    pub microclimate: Microclimate,
}

/// The classes of beds that a garden has, in the order of the beds.
#[must_use]
pub fn bed_classes(garden: &Garden) -> Vec<BedClass> {
    let mut classes: Vec<BedClass> = Vec::new();
    for bed in &garden.beds {
        let class = BedClass {
            width: bed.width,
            microclimate: bed.microclimate(),
        };
        if !classes.contains(&class) {
            classes.push(class);
        }
    }
    classes
}

/// The plots (as a bit set over `plots`) of one bed class in which a crop may stand from
/// `day` on.
///
/// # Errors
/// The reason if there is none.
pub fn allowed(
    garden: &Garden,
    plots: &[Plot],
    class: &BedClass,
    crop: &Crop,
    day: Date,
) -> Result<PlotSet, DropReason> {
    let suitable = PlotSet::of(plots, |plot| {
        let bed = &garden[plot.bed];
        bed.width == class.width
            && bed.microclimate() == class.microclimate
            && bed.suits(crop)
            && (plot.trellis || !crop.needs.trellis)
            && bed.free_from.is_none_or(|free| free <= day)
    });
    if suitable.is_empty() {
        return Err(DropReason::NoBed);
    }
    let rested = PlotSet::of(plots, |plot| !garden[plot.bed].is_tired_of(crop, day));
    let allowed = suitable.and(rested);
    if allowed.is_empty() {
        Err(DropReason::Rotation)
    } else {
        Ok(allowed)
    }
}

/// Which plot of a list of candidates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlotAt(pub usize);

/// A set of plots; at most 128 of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct PlotSet(u128);

/// The most plots that a garden may have.
pub const MOST_PLOTS: usize = 128;

impl PlotSet {
    /// The plots for which `holds` is true.
    #[must_use]
    pub fn of(plots: &[Plot], holds: impl Fn(&Plot) -> bool) -> Self {
        Self(
            plots
                .iter()
                .take(MOST_PLOTS)
                .enumerate()
                .filter(|(_, p)| holds(p))
                .fold(0, |set, (k, _)| set | 1 << k),
        )
    }

    /// True if it holds no plot.
    #[must_use]
    pub fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// True if it holds the plot.
    #[must_use]
    pub fn has(self, PlotAt(plot): PlotAt) -> bool {
        plot < MOST_PLOTS && self.0 >> plot & 1 == 1
    }

    /// Plots in both.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// Plots in either.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// True if every plot of `other` belongs to it.
    #[must_use]
    pub fn covers(self, other: Self) -> bool {
        other.0 & !self.0 == 0
    }

    /// Positions of its plots, in order.
    pub fn iter(self) -> impl Iterator<Item = PlotAt> {
        let all = (0..MOST_PLOTS).map(PlotAt);
        all.filter(move |plot| self.has(*plot))
    }
}

/// The strips of a set of plots that whole blocks, given by their strips, can use: where all
/// take strips by twos, the odd strip of a plot is of no use.
#[must_use]
pub fn usable_strips(plots: &[Plot], set: PlotSet, blocks: impl Iterator<Item = u32>) -> u32 {
    let unit = blocks.fold(0, common_divisor);
    let strips = set.iter().map(|plot| plots[plot.0].strips.count);
    strips.map(|n| n - n % unit.max(1)).sum()
}

/// The greatest number that divides both; the other one if one is 0.
fn common_divisor(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}

/// All unions of some sets, each once, in order; only the sets themselves and the union of
/// all if there would be more than `most`.
#[must_use]
pub fn unions(sets: impl IntoIterator<Item = PlotSet>, most: usize) -> Vec<PlotSet> {
    let sets: BTreeSet<PlotSet> = sets.into_iter().filter(|s| !s.is_empty()).collect();
    let mut all: BTreeSet<PlotSet> = BTreeSet::new();
    for set in &sets {
        let with: Vec<PlotSet> = all.iter().map(|other| other.or(*set)).collect();
        all.insert(*set);
        all.extend(with);
        if all.len() > most {
            let whole = sets.iter().fold(PlotSet::default(), |a, b| a.or(*b));
            return sets
                .into_iter()
                .chain([whole])
                .collect::<BTreeSet<_>>()
                .into_iter()
                .collect();
        }
    }
    all.into_iter().collect()
}
