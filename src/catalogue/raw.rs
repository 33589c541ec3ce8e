//! The catalogue's files as TOML says them. Groups that look like the garden's own types are
//! read straight into those; the others are turned into them in `entry`.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::error::Fault;
use crate::garden::{
    Ages, Arrives, Bolting, Bulbs, Caution, Chill, Freezing, Ground, Method, Needs, NoFruit,
    Picking, Preparation, Ripening, Rotation, SeedSize, Spacing, Spoils, Stages, Store, Thinning,
    WaterUse,
};
use crate::units::{Celsius, Kilograms, Share};

/// What a crop's published or remembered harvest is counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// Kilograms per metre of row; a plant has its share of the row.
    Row,
    /// Kilograms per plant.
    Plant,
}

/// A file of crops; each is turned into a `RawCrop` by itself, so that a fault names it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct CropFile {
    pub crop: Vec<toml::Table>,
}

/// One crop.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawCrop {
    pub name: String,
    #[serde(default)]
    pub other_names: Vec<String>,
    pub botanical: String,
    pub rotation: Rotation,
    pub methods: Vec<Method>,
    pub germination: RawGermination,
    pub germinates: Share,
    #[serde(default)]
    pub ground: Ground,
    pub thinning: Option<Thinning>,
    pub indoor: Option<RawIndoor>,
    pub ripening: Ripening,
    pub frost: RawFrost,
    pub bolting: Option<Bolting>,
    pub spoils: Option<Spoils>,
    pub no_fruit: Option<NoFruit>,
    pub chill: Option<Chill>,
    pub bulbs: Option<Bulbs>,
    pub picking: Picking,
    pub yields: RawYields,
    pub spacing: Spacing,
    pub needs: Needs,
    pub seed_size: SeedSize,
    pub seed_keeps_years: Option<u32>,
    #[serde(default)]
    pub ages: Ages,
    pub kitchen: RawKitchen,
    pub water: Option<WaterUse>,
    pub stages: Option<Stages>,
    #[serde(default)]
    pub caution: Caution,
    #[serde(default)]
    pub notes: Vec<String>,
    #[serde(default)]
    pub from: toml::Table,
}

/// A row of the table, or a range without one.
#[derive(Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub(super) enum RawGermination {
    Table(String),
    Extended {
        row: String,
        least: Celsius,
    },
    Range {
        min: Celsius,
        optimum: Celsius,
        max: Celsius,
        days: f64,
    },
}

/// Raising on the shelf.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawIndoor {
    /// Least and greatest age at planting out.
    pub weeks: (u32, u32),
    pub cells: u32,
    pub pots: Option<u32>,
    pub warm_below: Celsius,
}

/// Frost kills unless it sets back.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawFrost {
    pub limit: Celsius,
    pub sets_back_days: Option<f64>,
}

/// Kilograms over a season, per metre of row or per plant.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawYields {
    pub basis: Basis,
    pub low: f64,
    pub expected: f64,
    pub usable: Share,
}

/// In the kitchen.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct RawKitchen {
    pub arrives: Arrives,
    pub steps: Vec<Preparation>,
    pub store: Store,
    /// The coldest and the warmest that it keeps at.
    pub temperature: (Celsius, Celsius),
    /// Kilograms that fill a crate.
    #[serde(rename = "crate")]
    pub crate_holds: Kilograms,
    pub freezing: Option<Freezing>,
    pub dried_days: Option<u32>,
}

/// The germination table: rows by name, each with the key of the section it stands in.
pub(super) struct GerminationTable(BTreeMap<String, (String, [f64; 9])>);

impl GerminationTable {
    /// Reads the table; its sections are named after their sources.
    pub fn parse(text: &str, citations: &BTreeMap<String, String>) -> Result<Self, Fault> {
        let sections: BTreeMap<String, BTreeMap<String, [f64; 9]>> =
            toml::from_str(text).map_err(|e| Fault::Toml(Box::new(e)))?;
        let mut rows = BTreeMap::new();
        for (key, section) in sections {
            if !citations.contains_key(&key) {
                return Err(Fault::UnknownSource(key));
            }
            for (name, days) in section {
                if rows.insert(name.clone(), (key.clone(), days)).is_some() {
                    return Err(Fault::NameTaken(name));
                }
            }
        }
        Ok(Self(rows))
    }

    /// A row's days, and its source with the row's name: `HM1954 (cabbage)`.
    pub fn row(&self, name: &str) -> Result<([Option<f64>; 9], String), Fault> {
        let (key, days) = self
            .0
            .get(name)
            .ok_or_else(|| Fault::UnknownRow(name.to_owned()))?;
        let days = days.map(|d| (!d.is_nan()).then_some(d));
        Ok((days, format!("{key} ({name})")))
    }
}
