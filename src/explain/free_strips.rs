//! Strips of bed that are free for a planting beside those that stay.

use chrono::Datelike;

use crate::calendar::Date;
use crate::candidates::Candidate;
use crate::garden::{BedAt, Garden, Plot, Rotation, StripAt, Strips};
use crate::plan::{Place, Plan, Planting, PlantingAt, Stand};

/// What stands in the beds, and since and until when.
pub struct FreeStrips<'a> {
    garden: &'a Garden,
    taken: Vec<Taken<'a>>,
    /// Where what is lost stood: these beds are filled first.
    lost: Vec<(BedAt, Strips)>,
}

/// A stand that stays, with the families that it holds.
struct Taken<'a> {
    stand: &'a Stand,
    families: Vec<&'a Rotation>,
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
        let mut same = self.families.iter().filter(|f| f.family == rotation.family);
        self.from <= to && from <= self.to
            || same.any(|family| {
                must_wait(rotation, from, self.to) || must_wait(family, self.from, to)
            })
    }
}

impl<'a> FreeStrips<'a> {
    /// The strips beside the stands of a plan; those of plantings that are lost are free again.
    pub fn of(
        garden: &'a Garden,
        plan: &Plan,
        stands: &'a [Stand],
        is_lost: impl Fn(&Planting) -> bool,
    ) -> Self {
        let lost = |at: &PlantingAt| plan.planting(*at).is_some_and(&is_lost);
        let horizon = garden.horizon();
        let taken = |stand: &'a Stand| {
            let staying = stand.plantings.iter().filter(|at| !lost(at));
            let staying = staying.filter_map(|at| plan.planting(*at));
            let rotation = |p: &Planting| {
                let at = garden.ingredient_named(&p.ingredient)?;
                Some(&garden[at].crop.rotation)
            };
            Taken {
                stand,
                families: staying.filter_map(rotation).collect(),
                from: horizon.date(stand.days.0),
                to: horizon.date(stand.days.1),
            }
        };
        let (gone, stay): (Vec<&Stand>, Vec<&Stand>) = stands
            .iter()
            .partition(|stand| stand.plantings.iter().all(lost));
        Self {
            garden,
            taken: stay.into_iter().map(taken).collect(),
            lost: gone.iter().map(|stand| (stand.bed, stand.strips)).collect(),
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
        plots.sort_by_key(|plot| !self.lost.iter().any(|(bed, _)| *bed == plot.bed));
        let mut places = Vec::new();
        for plot in &plots {
            for run in self.runs(plot, |taken| taken.bars(rotation, days)) {
                let count = (run.count / block * block).min(left);
                if count > 0 {
                    left -= count;
                    let bed = &self.garden[plot.bed].id;
                    places.push(Place::of(bed, Strips { count, ..run }));
                }
            }
        }
        if left > 0 {
            let wanted = candidate.amounts.least_strips();
            places = self.where_it_stood(&plots, wanted, |taken| taken.bars(rotation, days))?;
        }
        places.sort();
        (!places.is_empty()).then_some(places)
    }

    /// The very strips of what is lost, if they are as many as are wanted and free: they may have carried blocks in
    /// two runs of which neither holds a whole number. This is here only as long as the layout may split a block
    /// over two runs: it knows strips by their number (`layout/chains`), and the rules ask for whole blocks only of all
    /// the places of a planting together.
    fn where_it_stood(
        &self,
        plots: &[&Plot],
        wanted: u32,
        bars: impl Fn(&Taken<'_>) -> bool,
    ) -> Option<Vec<Place>> {
        let free = |(bed, strips): &(BedAt, Strips)| {
            let mut of_bed = plots.iter().filter(|plot| plot.bed == *bed);
            of_bed.any(|plot| {
                let runs = self.runs(plot, &bars);
                strips
                    .iter()
                    .all(|strip| runs.iter().any(|run| run.has(strip)))
            })
        };
        let as_many = self
            .lost
            .iter()
            .map(|(_, strips)| strips.count)
            .sum::<u32>()
            == wanted;
        let place = |(bed, strips): &(BedAt, Strips)| Place::of(&self.garden[*bed].id, *strips);
        (as_many && self.lost.iter().all(free)).then(|| self.lost.iter().map(place).collect())
    }

    /// Runs of free strips of a plot.
    fn runs(&self, plot: &Plot, bars: impl Fn(&Taken<'_>) -> bool) -> Vec<Strips> {
        let is_free = |strip: &StripAt| {
            !self.taken.iter().any(|taken| {
                let stand = taken.stand;
                stand.bed == plot.bed && stand.strips.has(*strip) && bars(taken)
            })
        };
        Strips::runs(plot.strips.iter().filter(is_free))
    }
}
