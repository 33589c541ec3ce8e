//! Where a crop may stand: plots by kind of bed, each from the day on which it is free.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::garden::{
    BedAt, Begun, Crop, Garden, MOST_PLOTS, Microclimate, Plot, Rows, Strips, Team,
};

use super::dropped::DropReason;

/// All plots, in the order of the beds. Strips on which something stands already are plots of their own:
/// nothing else comes there before they are cleared, whether it is wanted or not.
#[must_use]
pub fn plots(garden: &Garden) -> Vec<Plot> {
    let begun = garden.begun.iter().filter_map(Begun::in_bed);
    let former = garden.former.iter().map(|f| (f.bed, f.strips));
    let taken: Vec<(BedAt, Strips)> = begun.chain(former).collect();
    let plots_of = |bed: BedAt| {
        let here = taken.iter().filter(|(in_bed, _)| *in_bed == bed);
        let here: Vec<Strips> = here.map(|(_, strips)| *strips).collect();
        let parts = garden[bed].parts(&here).into_iter();
        parts.map(move |strips| Plot {
            bed,
            strips,
            trellis: garden[bed].has_trellis(strips),
            free_from: garden.free_from(bed, strips),
        })
    };
    garden.bed_positions().flat_map(plots_of).collect()
}

/// The plot on which something grows already.
#[must_use]
pub fn plot_of(plots: &[Plot], (bed, strips): (BedAt, Strips)) -> PlotSet {
    PlotSet::of(plots, |plot| plot.bed == bed && plot.strips == strips)
}

/// Beds in which the same planting grows the same way: one width, or a row along a trellis, and one microclimate.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BedClass {
    /// How rows lie.
    pub rows: Rows,
    /// What changes how plants grow.
    pub microclimate: Microclimate,
}

/// The classes of beds that a garden has, in the order of the beds.
#[must_use]
pub fn bed_classes(garden: &Garden) -> Vec<BedClass> {
    let mut classes: Vec<BedClass> = Vec::new();
    for bed in &garden.beds {
        let class = BedClass {
            rows: bed.rows(),
            microclimate: bed.microclimate(),
        };
        if !classes.contains(&class) {
            classes.push(class);
        }
    }
    classes
}

/// The plots (as a bit set over `plots`) of one bed class in which a team's crop may stand from
/// `day` on.
///
/// # Errors
/// The reason if there is none.
pub fn allowed(
    garden: &Garden,
    plots: &[Plot],
    class: &BedClass,
    (crop, team): (&Crop, Team),
    day: Date,
) -> Result<PlotSet, DropReason> {
    let suitable = PlotSet::of(plots, |plot| {
        let bed = &garden[plot.bed];
        bed.rows() == class.rows
            && bed.microclimate() == class.microclimate
            && bed.suits(crop)
            && (plot.trellis || !crop.needs.trellis)
    });
    if suitable.is_empty() {
        return Err(DropReason::NoBed);
    }
    let open = PlotSet::of(plots, |plot| garden[plot.bed].is_open_to(team));
    let suitable = suitable.and(open);
    if suitable.is_empty() {
        return Err(DropReason::NotItsBed);
    }
    let free = suitable.and(PlotSet::of(plots, |plot| plot.is_free_on(day)));
    if free.is_empty() {
        return Err(DropReason::NotFreeYet);
    }
    let rested = PlotSet::of(plots, |plot| {
        !garden.is_tired_of((plot.bed, plot.strips), crop, day)
    });
    let allowed = free.and(rested);
    if allowed.is_empty() {
        Err(DropReason::Rotation)
    } else {
        Ok(allowed)
    }
}

/// Which plot of a list of candidates.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlotAt(pub usize);

/// A set of plots, of which a garden has `MOST_PLOTS` at most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct PlotSet(u128);

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
pub fn common_divisor(a: u32, b: u32) -> u32 {
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
