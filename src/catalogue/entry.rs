//! One crop of the catalogue with its other names, its yield basis, its sources and notes.

use std::collections::BTreeMap;

use toml::Table;

use super::error::Fault;
use super::raw::{
    Basis, GerminationTable, RawCrop, RawFrost, RawGermination, RawIndoor, RawKitchen, RawYields,
};
use super::sources::{self, MEMORY, PRACTICE, source_keys};
use crate::garden::{Crop, FrostResponse, Germination, IndoorStart, Kitchen, Spacing, Yield};
use crate::units::Kilograms;

/// A crop and where its figures come from.
#[derive(Debug, Clone)]
pub struct Entry {
    /// The crop.
    pub crop: Crop,
    /// Other names by which it is found.
    pub other_names: Vec<String>,
    /// How its harvest was given before it was turned into kilograms per plant.
    pub basis: Basis,
    /// What a grower should know that is no figure.
    pub notes: Vec<String>,
    sources: BTreeMap<String, String>,
}

impl Entry {
    /// Reads one crop's table.
    pub(super) fn read(
        table: Table,
        germination: &GerminationTable,
        citations: &BTreeMap<String, String>,
    ) -> Result<Self, Fault> {
        let raw: RawCrop = table
            .clone()
            .try_into()
            .map_err(|e| Fault::Toml(Box::new(e)))?;
        let mut named = sources::texts(&raw.from);
        let germination = match &raw.germination {
            RawGermination::Table(row) => {
                let (days, source) = germination.row(row)?;
                named.insert("germination".to_owned(), source);
                Germination::Table(days)
            }
            RawGermination::Extended { row, least } => {
                let (days, source) = germination.row(row)?;
                named.insert("germination.extended.row".to_owned(), source);
                Germination::Extended {
                    days,
                    least: *least,
                }
            }
            &RawGermination::Range {
                min,
                optimum,
                max,
                days,
            } => Germination::Range {
                min,
                optimum,
                max,
                days,
            },
        };
        let is_work = |key: &&str| ![MEMORY, PRACTICE].contains(key);
        let unknown = |key: &&str| is_work(key) && !citations.contains_key(*key);
        if let Some(key) = named.values().flat_map(|s| source_keys(s)).find(unknown) {
            return Err(Fault::UnknownSource(key.to_owned()));
        }
        Ok(Self {
            sources: sources::of_figures(&table, &named)?,
            basis: raw.yields.basis,
            other_names: raw.other_names.clone(),
            notes: raw.notes.clone(),
            crop: crop(raw, germination),
        })
    }

    /// Where a figure comes from: source keys, parted by ", ", each perhaps with a word in
    /// brackets such as the row of a table that was used, or [`MEMORY`]. The field is the
    /// figure's path in the data file (`germinates`, `indoor.weeks`) or a group (`indoor`).
    /// `None` if the crop has no such figure.
    #[must_use]
    pub fn source(&self, field: &str) -> Option<&str> {
        self.sources.get(field).map(String::as_str)
    }

    /// All fields that have a source, single figures and groups, with it.
    pub fn sources(&self) -> impl Iterator<Item = (&str, &str)> {
        self.sources
            .iter()
            .map(|(field, source)| (field.as_str(), source.as_str()))
    }
}

fn crop(raw: RawCrop, germination: Germination) -> Crop {
    Crop {
        yields: yields(&raw.yields, raw.spacing),
        frost: frost(&raw.frost),
        name: raw.name,
        like: None,
        botanical: raw.botanical,
        rotation: raw.rotation,
        methods: raw.methods,
        germination,
        germinates: raw.germinates,
        ground: raw.ground,
        thinning: raw.thinning,
        indoor: raw.indoor.map(indoor),
        ripening: raw.ripening,
        frost_limit: raw.frost.limit,
        bolting: raw.bolting,
        spoils: raw.spoils,
        no_fruit: raw.no_fruit,
        chill: raw.chill,
        bulbs: raw.bulbs,
        picking: raw.picking,
        spacing: raw.spacing,
        needs: raw.needs,
        seed_size: raw.seed_size,
        seed_keeps_years: raw.seed_keeps_years,
        ages: raw.ages,
        water: raw.water,
        stages: raw.stages,
        kitchen: kitchen(raw.kitchen),
        caution: raw.caution,
        how: None,
    }
}

fn indoor(raw: RawIndoor) -> IndoorStart {
    let (weeks_lo, weeks_hi) = raw.weeks;
    IndoorStart {
        weeks_lo,
        weeks_hi,
        cells_per_flat: raw.cells,
        pots_per_flat: raw.pots,
        warm_below: raw.warm_below,
    }
}

fn kitchen(raw: RawKitchen) -> Kitchen {
    Kitchen {
        arrives: raw.arrives,
        steps: raw.steps,
        store: raw.store,
        temperature: raw.temperature,
        crate_holds: raw.crate_holds,
        freezing: raw.freezing,
        dried_days: raw.dried_days,
    }
}

fn frost(raw: &RawFrost) -> FrostResponse {
    raw.sets_back_days
        .map_or(FrostResponse::Killed, |days| FrostResponse::SetBack {
            days,
        })
}

/// Harvest per plant: of a crop counted by the row, that of a plant's length of row.
fn yields(raw: &RawYields, spacing: Spacing) -> Yield {
    let per_plant = match raw.basis {
        Basis::Row => spacing.in_row.to_metres().0,
        Basis::Plant => 1.0,
    };
    Yield {
        low: Kilograms(raw.low * per_plant),
        expected: Kilograms(raw.expected * per_plant),
        usable: raw.usable,
    }
}
