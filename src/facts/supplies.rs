//! What is bought or laid ready besides seed: trays, mix, labels, trellis, covers, and what is known
//! of the cost.

use crate::garden::{Bed, Ingredient, Method};
use crate::growth::amount;
use crate::plan::{Planting, StepKind};
use crate::units::{Litres, Metres, Minutes, STRIP, Share};

use super::Facts;
use super::places::places;

/// With what reserve seed is counted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reserve {
    /// The chance that the plants stand.
    pub sure: Share,
    /// The part of the seedlings that is lost under children's hands.
    pub lost: Share,
}

/// The reserve of all seed.
pub const RESERVE: Reserve = Reserve {
    sure: amount::SURE,
    lost: amount::CHILD_LOSS,
};

/// Potting mix in a flat of cells, 28 x 54 cm and 5 cm deep.
const MIX_IN_CELLS: Litres = Litres(7.6);
/// Potting mix in a flat of pots, as large and 8 cm deep.
const MIX_IN_POTS: Litres = Litres(12.1);
/// How far a cover goes beyond both sides of a bed, added up.
const TO_SPARE: Metres = Metres(0.6);
/// What an adult needs to put up stakes, cages or a net along a metre of bed (from memory).
const PUT_UP_A_METRE: Minutes = Minutes(15.0);

/// Seedlings of one planting on the shelf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Raised<'a> {
    /// The planting.
    pub planting: &'a Planting,
    /// Its ingredient.
    pub ingredient: &'a Ingredient,
    /// Cells of a flat, where seed is sown into them.
    pub cells: Option<u32>,
    /// Pots of a flat, where it is potted up.
    pub pots: Option<u32>,
}

/// What the shelf wants.
#[derive(Debug, Clone, PartialEq)]
pub struct ForShelf<'a> {
    /// Seedlings, planting by planting; none where nothing is raised.
    pub raised: Vec<Raised<'a>>,
    /// The most trays at once.
    pub trays: u32,
    /// Seed and potting mix for all flats.
    pub mix: Litres,
    /// A label for every flat, of cells and of pots.
    pub labels: u32,
}

/// What climbs or is staked on some strips of a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supported<'a> {
    /// What.
    pub ingredient: &'a Ingredient,
    /// The bed.
    pub bed: &'a Bed,
    /// How much of its length.
    pub length: Metres,
    /// What it takes to put up supports before planting; `None` where a trellis stands.
    pub put_up: Option<Minutes>,
}

/// A cover that goes over a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Covered<'a> {
    /// The bed.
    pub bed: &'a Bed,
    /// What the cover is called.
    pub cover: &'a str,
    /// The cover's length and width, with some to spare.
    pub size: (Metres, Metres),
}

impl<'a> Facts<'a> {
    /// What the shelf wants.
    #[must_use]
    pub fn for_shelf(&self) -> ForShelf<'a> {
        let indoor = self.planted().filter(|(p, _)| is_sown(p) || is_potted(p));
        let raised = indoor.map(|(planting, ingredient)| {
            let start = ingredient.crop.indoor;
            Raised {
                planting,
                ingredient,
                cells: start
                    .map(|i| i.cells_per_flat)
                    .filter(|_| is_sown(planting)),
                pots: start
                    .and_then(|i| i.pots_per_flat)
                    .filter(|_| is_potted(planting)),
            }
        });
        let raised: Vec<Raised<'a>> = raised.collect();
        let plantings = || raised.iter().map(|r| r.planting);
        let sown = plantings().filter(|p| is_sown(p));
        let sown: u32 = sown.map(|p| p.flats_sown).sum();
        let potted = plantings().filter(|p| is_potted(p));
        let potted: u32 = potted.map(|p| p.flats_kept).sum();
        let trays = self.replay.flats_by_week.iter().max().copied();
        ForShelf {
            trays: trays.unwrap_or(0),
            mix: MIX_IN_CELLS * f64::from(sown) + MIX_IN_POTS * f64::from(potted),
            labels: sown + potted,
            raised,
        }
    }

    /// Labels for plantings in beds: one for each class that sets one, and one for what no class sets.
    #[must_use]
    pub fn bed_labels(&self) -> usize {
        let all = self.plan.numbered();
        let of = all.map(|(at, _)| self.classes_that_set(at).len().max(1));
        of.sum()
    }

    /// What climbs or is staked, bed by bed.
    #[must_use]
    pub fn supported(&self) -> Vec<Supported<'a>> {
        let climbs = self.planted().filter(|(_, i)| i.crop.needs.trellis);
        let places = climbs.flat_map(|(p, i)| places(&p.places).into_iter().map(move |at| (i, at)));
        let supported = places.filter_map(|(ingredient, place)| {
            let bed = &self.garden[self.garden.bed_with_id(&place.bed)?];
            let length = STRIP * f64::from(place.strips);
            let put_up = bed.supports_put_up;
            Some(Supported {
                ingredient,
                bed,
                length,
                put_up: put_up.then(|| putting_up(length)),
            })
        });
        supported.collect()
    }

    /// Covers of the beds in which something grows.
    #[must_use]
    pub fn covered(&self) -> Vec<Covered<'a>> {
        let is_planted = |bed: &Bed| {
            let mut places = self.plan.plantings.iter().flat_map(|p| &p.places);
            places.any(|place| place.bed == bed.id)
        };
        let beds = self.garden.beds.iter().filter(|bed| is_planted(bed));
        let covered = beds.filter_map(|bed| {
            let cover = bed.cover.as_ref()?;
            Some(Covered {
                bed,
                cover: &cover.name,
                size: (bed.length + TO_SPARE, bed.width + TO_SPARE),
            })
        });
        covered.collect()
    }

    /// What is bought if it fails, each with its cost where the file tells it.
    pub fn bought_if_it_fails(&self) -> impl Iterator<Item = (&'a Ingredient, Option<f64>)> {
        let ingredients = self.garden.ingredients.iter();
        ingredients.filter_map(|i| Some((i, i.fallback?.cost)))
    }
}

/// What it takes to put up supports, in whole fives of minutes.
fn putting_up(length: Metres) -> Minutes {
    Minutes((PUT_UP_A_METRE.0 * length.0 / 5.0).ceil() * 5.0)
}

/// True if a planting is sown into flats within the plan.
fn is_sown(planting: &Planting) -> bool {
    planting.method == Method::Indoor
}

/// True if a planting is potted up.
fn is_potted(planting: &Planting) -> bool {
    planting.steps_of(StepKind::PotUp).next().is_some()
}
