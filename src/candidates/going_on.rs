//! Plantings that have begun by a printed plan: which steps are given, and on which strips they stand. The
//! candidates that go on with one have these steps as they were done.

use crate::calendar::Date;
use crate::garden::{Crop, Garden, Plot, Printed, PrintedAt, Strips, Turn, Turns};
use crate::growth::{Block, need_in};

use super::amounts::{Amounts, Level};
use super::candidate::Thinning;
use super::dropped::DropReason;
use super::places::PlotSet;
use super::rounds::{PickDay, Round};

/// A printed planting that has begun.
#[derive(Debug, Clone, Copy)]
pub struct GoingOn<'a> {
    /// Which one.
    pub at: PrintedAt,
    /// As it was printed, and as it was done.
    pub printed: &'a Printed,
    /// The day from which on its steps are still open.
    pub as_of: Date,
}

impl GoingOn<'_> {
    /// A step as a round, if it has begun and children do it.
    fn begun(&self, step: Option<&Turns>) -> Option<Round> {
        let turns = step.filter(|turns| turns.begun(self.as_of))?;
        round(turns)
    }

    /// The sowing, if it has begun.
    pub fn sow(&self) -> Option<Round> {
        self.begun(self.printed.sow.as_ref())
    }

    /// Potting up, if it has begun.
    pub fn pot_up(&self) -> Option<Round> {
        self.begun(self.printed.pot_up.as_ref())
    }

    /// Planting out, if it has begun.
    pub fn plant_out(&self) -> Option<Round> {
        self.begun(self.printed.plant_out.as_ref())
    }

    /// Thinning, if it has begun.
    pub fn thin(&self) -> Option<Thinning> {
        let turns = self.printed.thin.as_ref();
        let turns = turns.filter(|turns| turns.begun(self.as_of))?;
        match *turns.0.first()? {
            (Turn::Class(_), _) => round(turns).map(Thinning::Round),
            (Turn::Families, day) => Some(Thinning::Families(day)),
            (Turn::Adult, day) => Some(Thinning::Adult(day)),
        }
    }

    /// The plots on which it stands.
    pub fn plots(&self, plots: &[Plot]) -> PlotSet {
        PlotSet::of(plots, |plot| {
            let mut places = self.printed.places.iter();
            places.any(|(bed, strips)| *bed == plot.bed && covers(*strips, plot.strips))
        })
    }

    /// What is on its strips: no more and no less, without what is lost of it.
    ///
    /// # Errors
    /// No plant fits across the bed.
    pub fn amounts(
        &self,
        garden: &Garden,
        (crop, plots): (&Crop, &[Plot]),
    ) -> Result<Amounts, DropReason> {
        let printed = self.printed;
        let (bed, _) = printed.places.first().ok_or(DropReason::NoBed)?;
        let block = Block::of(crop, garden[*bed].rows()).ok_or(DropReason::NoBed)?;
        let strips = printed.strips();
        let plants = (strips / block.strips.max(1)).saturating_mul(block.plants);
        let own = (printed.ingredient, printed.grade);
        let need = need_in(garden, own.0, own.1, printed.method, plants);
        // Whole blocks, unless other plantings part its strips otherwise.
        let parts = self
            .plots(plots)
            .iter()
            .map(|plot| plots[plot.0].strips.count);
        let unit = parts.fold(block.strips, common_divisor).max(1);
        let blocks = strips / unit;
        let each = f64::from(blocks.max(1));
        let left = printed.left.0;
        let level = Level {
            up_to: blocks,
            sown: need.flats_sown,
            kept: need.flats_kept,
        };
        Ok(Amounts {
            block: Block {
                strips: unit,
                plants: plants.div_ceil(blocks.max(1)),
            },
            blocks: (blocks, blocks),
            low: need.low * (left / each),
            expected: need.expected * (left / each),
            levels: match printed.method.is_on_shelf() {
                true => vec![level],
                false => Vec::new(),
            },
        })
    }
}

/// The picks of a printed planting that have begun.
pub fn begun_picks(printed: &Printed, as_of: Date) -> Vec<PickDay> {
    let begun = printed.picks.iter().filter(|pick| pick.begun(as_of));
    begun.filter_map(pick_day).collect()
}

fn pick_day(turns: &Turns) -> Option<PickDay> {
    match turns.0.first()? {
        (Turn::Class(_), _) => round(turns).map(PickDay::Round),
        (Turn::Families | Turn::Adult, day) => Some(PickDay::Families(*day)),
    }
}

/// The days of classes; `None` if others do it.
fn round(turns: &Turns) -> Option<Round> {
    let visit = |(turn, day): &(Turn, Date)| match turn {
        Turn::Class(class) => Some((*class, *day)),
        Turn::Families | Turn::Adult => None,
    };
    let visits = turns.0.iter().map(visit).collect::<Option<Vec<_>>>()?;
    (!visits.is_empty()).then_some(Round { visits })
}

fn covers(all: Strips, some: Strips) -> bool {
    all.first <= some.first && some.after() <= all.after()
}

fn common_divisor(a: u32, b: u32) -> u32 {
    if b == 0 { a } else { common_divisor(b, a % b) }
}

/// Strips parted where what was printed begins or ends, or what was lost: so each stands on plots of its own.
pub fn parted(garden: &Garden, plots: Vec<Plot>) -> Vec<Plot> {
    let Some(season) = &garden.season else {
        return plots;
    };
    let printed = season.printed.iter().filter(|p| p.begun(season.as_of));
    let places: Vec<_> = printed
        .flat_map(|p| &p.places)
        .chain(season.gone.iter().flat_map(|gone| &gone.what.places))
        .collect();
    let part = |plot: Plot| {
        let here = places.iter().filter(|(bed, _)| *bed == plot.bed);
        let mut cuts: Vec<_> = here
            .flat_map(|(_, strips)| [strips.first, strips.after()])
            .filter(|cut| plot.strips.first < *cut && *cut < plot.strips.after())
            .collect();
        cuts.extend([plot.strips.first, plot.strips.after()]);
        cuts.sort_unstable();
        cuts.dedup();
        let runs = cuts.windows(2).filter_map(|pair| match pair {
            [from, to] => Some(Strips {
                first: *from,
                count: to.0 - from.0,
            }),
            _ => None,
        });
        let piece = |strips: Strips| Plot {
            free_from: garden.free_from(plot.bed, strips),
            trellis: garden[plot.bed].has_trellis(strips),
            strips,
            ..plot
        };
        runs.map(piece).collect::<Vec<_>>()
    };
    plots.into_iter().flat_map(part).collect()
}
