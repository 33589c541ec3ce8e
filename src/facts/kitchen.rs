//! What the kitchen gets: how much of each ingredient, what is missing, in how many crates, where
//! they stand, and when it is picked.

use crate::calendar::Date;
use crate::garden::{Ingredient, Source, Store};
use crate::plan::{Planting, StepKind};
use crate::units::{Kilograms, Litres, Share};

use super::Facts;
use super::spans::span_of;

/// No crate is filled heavier: one adult carries it without trouble (common practice).
pub const HEAVIEST: Kilograms = Kilograms(12.0);

/// Less than a scale in a kitchen shows is nothing.
const LEAST: Kilograms = Kilograms(0.005);

/// Where things keep, in the order in which they are told.
const STORES: [Store; 5] = [
    Store::ColdMoist,
    Store::CoolMoist,
    Store::CoolDry,
    Store::Freezer,
    Store::Jar,
];

/// What comes of an ingredient.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Comes<'a> {
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// Usable kilograms in a poor year.
    pub low: Kilograms,
    /// Usable kilograms in an ordinary year.
    pub expected: Kilograms,
    /// Edible kilograms for all portions.
    pub wanted: Kilograms,
    /// What the garden does not bring in a poor year.
    pub missing: Option<Kilograms>,
    /// The share that is left after trimming; a patch's kilograms are given as they go into the pot.
    pub usable: Option<Share>,
    /// Kilograms as they come from the garden, in an ordinary year.
    pub untrimmed: Kilograms,
    /// Crates of these; none is filled heavier than [`HEAVIEST`].
    pub crates: u32,
}

/// Kilograms of packed vegetables in a litre of freezer: 35 to 40 pounds in a cubic foot (from memory).
const LITRE_OF_FREEZER: f64 = 0.6;

impl Comes<'_> {
    /// The room that it takes in a freezer, if it is frozen, in an ordinary year.
    #[must_use]
    pub fn in_freezer(&self) -> Option<Litres> {
        let frozen = self.ingredient.crop.kitchen.store == Store::Freezer;
        frozen.then(|| Litres(self.expected.0 / LITRE_OF_FREEZER))
    }
}

/// When a planting is picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Picked {
    /// The first day of its picks.
    pub from: Date,
    /// The last.
    pub to: Date,
    /// The last day on which it dries or cures, if it does.
    pub cured: Option<Date>,
}

impl Picked {
    /// For how many days it stands in its crate until a day, at least and at most: from the pick, or
    /// from the end of its cure.
    #[must_use]
    pub fn stands_until(&self, day: Date) -> (i64, i64) {
        let days = |from: Date| (day - from).num_days().max(0);
        match self.cured {
            Some(cured) => (days(cured), days(cured)),
            None => (days(self.to), days(self.from)),
        }
    }
}

impl<'a> Facts<'a> {
    /// The day on whose evening what is soaked goes into water: the one before the feast.
    #[must_use]
    pub fn soaked_from(&self) -> Date {
        let feast = self.garden.feast.day;
        feast.pred_opt().unwrap_or(feast)
    }

    /// What comes of every ingredient, in the order of the file.
    #[must_use]
    pub fn comes(&self) -> Vec<Comes<'a>> {
        let portions = self.garden.feast.portions;
        let comes = self.ingredients().map(|(_, ingredient, seen)| {
            let usable = usable(ingredient);
            let untrimmed = seen.expected * (1.0 / usable.map_or(1.0, |share| share.0.max(0.01)));
            let full = ingredient.crop.kitchen.crate_holds.min(HEAVIEST);
            let wanted = ingredient.target(portions);
            let missing = wanted - seen.low;
            Comes {
                ingredient,
                low: seen.low,
                expected: seen.expected,
                wanted,
                missing: (missing > LEAST).then_some(missing),
                usable,
                untrimmed,
                crates: (untrimmed / full).ceil().max(1.0) as u32,
            }
        });
        comes.collect()
    }

    /// The places in which something keeps, each with what keeps there.
    #[must_use]
    pub fn stores(&self) -> Vec<(Store, Vec<Comes<'a>>)> {
        let all = self.comes();
        let in_store = |store: Store| {
            let here = all.iter().copied();
            let here = here.filter(|c| c.ingredient.crop.kitchen.store == store);
            (store, here.collect::<Vec<_>>())
        };
        let stores = STORES.into_iter().map(in_store);
        stores.filter(|(_, here)| !here.is_empty()).collect()
    }

    /// When an ingredient is picked, sowing by sowing.
    #[must_use]
    pub fn picked(&self, ingredient: &Ingredient) -> Vec<Picked> {
        let picked = |planting: &Planting| {
            let (from, to) = span_of(planting, StepKind::Pick)?;
            let cured = span_of(planting, StepKind::Cure).map(|(_, last)| last);
            Some(Picked { from, to, cured })
        };
        let plantings = self.plantings_named(&ingredient.name);
        plantings.filter_map(picked).collect()
    }
}

/// The share that is left after trimming.
fn usable(ingredient: &Ingredient) -> Option<Share> {
    let patch = matches!(ingredient.source, Source::Patch(_));
    (!patch).then_some(ingredient.crop.yields.usable)
}
