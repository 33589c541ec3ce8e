//! Plantings that have begun by a printed plan: which steps are given, and on which strips they stand. The
//! candidates that go on with one have these steps as they were done.

use crate::calendar::{Date, plus_days};
use crate::garden::{
    BedAt, Crop, Garden, IngredientAt, MOST_PLOTS, Plot, Printed, PrintedAt, StripAt, Strips, Turn,
    Turns,
};
use crate::growth::{Block, need_in};

use super::amounts::{Amounts, Level};
use super::candidate::Thinning;
use super::dropped::DropReason;
use super::places::{PlotSet, common_divisor};
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

    /// Thinning as it was printed, if that is still to come and children do it.
    pub fn printed_thin(&self) -> Option<Round> {
        let turns = self.printed.thin.as_ref();
        round(turns.filter(|turns| !turns.begun(self.as_of))?)
    }

    /// The plots on which it stands.
    pub fn plots(&self, plots: &[Plot]) -> PlotSet {
        PlotSet::of(plots, |plot| {
            let mut places = self.printed.places.iter();
            places.any(|(bed, strips)| *bed == plot.bed && strips.meets(plot.strips))
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
        let plants = block.plants_on(strips);
        let own = (printed.ingredient, printed.team);
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

/// The picks of a printed planting.
#[derive(Debug, Clone, Default)]
pub struct PrintedPicks {
    /// Those that have begun.
    pub begun: Vec<PickDay>,
    /// Those that are still to come and still can be.
    pub open: Vec<PickDay>,
}

impl PrintedPicks {
    /// Those of a planting; `possible` are all picks that still can be.
    pub fn of(printed: &Printed, as_of: Date, possible: &[PickDay]) -> Self {
        let picks = printed.picks.iter();
        let (begun, open): (Vec<&Turns>, Vec<&Turns>) = picks.partition(|pick| pick.begun(as_of));
        let begun: Vec<PickDay> = begun.into_iter().filter_map(pick_day).collect();
        // One that has begun may go on for longer than it was printed.
        let since = begun.iter().map(PickDay::last).max();
        let mut open: Vec<PickDay> = open.into_iter().filter_map(pick_day).collect();
        open.retain(|pick| possible.contains(pick) && Some(pick.first()) > since);
        Self { begun, open }
    }
}

/// The picks of what goes on, whenever it starts in the bed; else those of each printed planting of an ingredient that
/// has yet to begin, with its start. `possible` are all picks that still can be.
pub fn printed_picks(
    garden: &Garden,
    at: IngredientAt,
    going_on: Option<&GoingOn<'_>>,
    possible: &[PickDay],
) -> Vec<(Option<Round>, PrintedPicks)> {
    let as_of = garden.as_of();
    if let Some(GoingOn { printed, .. }) = going_on {
        return vec![(None, PrintedPicks::of(printed, as_of, possible))];
    }
    let printed = garden
        .season
        .iter()
        .flat_map(|season| season.printed_of(at));
    let waiting = printed.filter(|(_, printed)| !printed.begun(as_of));
    let with_start = |(_, printed): (_, &Printed)| {
        let start = round(printed.bedding()?)?;
        Some((Some(start), PrintedPicks::of(printed, as_of, possible)))
    };
    waiting.filter_map(with_start).collect()
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

/// Strips parted where what was printed begins or ends, or what was lost: so each stands on plots of its own. Where that
/// makes more plots than there may be, a plot stays whole: nothing new comes there.
pub fn parted(garden: &Garden, plots: Vec<Plot>) -> Vec<Plot> {
    let Some(season) = &garden.season else {
        return plots;
    };
    let printed = season.printed.iter().filter(|p| p.begun(season.as_of));
    let printed = printed.flat_map(|p| p.places.iter().copied());
    let lost = season.clearing.iter().map(|lost| (lost.bed, lost.strips));
    let places: Vec<(BedAt, Strips)> = printed.chain(lost).collect();
    let mut room = MOST_PLOTS.saturating_sub(plots.len());
    let part = |plot: Plot| {
        let pieces = pieces(garden, plot, &places);
        let more = pieces.len().saturating_sub(1);
        if more <= room {
            room -= more;
            return pieces;
        }
        let never = Some(plus_days(garden.last_day(), 1));
        vec![Plot {
            free_from: never,
            ..plot
        }]
    };
    plots.into_iter().flat_map(part).collect()
}

/// A plot in pieces: cut wherever one of some places begins or ends.
fn pieces(garden: &Garden, plot: Plot, places: &[(BedAt, Strips)]) -> Vec<Plot> {
    let here = places.iter().filter(|(bed, _)| *bed == plot.bed);
    let edges = here.flat_map(|(_, strips)| [strips.first, strips.after()]);
    let within = |edge: &StripAt| plot.strips.first < *edge && *edge < plot.strips.after();
    let mut edges: Vec<StripAt> = edges.filter(within).collect();
    edges.extend([plot.strips.first, plot.strips.after()]);
    edges.sort_unstable();
    edges.dedup();
    let between = edges.iter().zip(edges.iter().skip(1));
    let piece = |(from, to): (&StripAt, &StripAt)| {
        let strips = Strips {
            first: *from,
            count: to.0 - from.0,
        };
        Plot {
            free_from: garden.free_from(plot.bed, strips),
            trellis: garden[plot.bed].has_trellis(strips),
            strips,
            ..plot
        }
    };
    between.map(piece).collect()
}
