//! What a kitchen must know of a crop: in what state it comes, what is done to it before it is
//! cooked, how it is kept until then, how much fills a crate.

use serde::Deserialize;

use crate::units::{Celsius, Kilograms, Litres};

/// What a harvest crate holds, filled to its edge: 60 x 40 x 20 cm outside (common practice).
pub const CRATE: Litres = Litres(40.0);

/// In what state a crop comes from the garden.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Arrives {
    /// Rinsed of soil and drained; the kitchen washes it again.
    Washed,
    /// Dry, loose soil brushed off: it keeps longer unwashed.
    Brushed,
    /// As it was picked: water would spoil it before it is used.
    Unwashed,
}

/// What is done to a crop before it is cooked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Preparation {
    /// Leaves and root tips come off.
    Top,
    /// Stalk ends, roots and spoiled leaves come off.
    Trim,
    /// The skin comes off.
    Peel,
    /// Halved, and the seeds taken out.
    Seed,
    /// Out of the pod or shell.
    Shell,
    /// Beaten out of dry pods, winnowed and sorted by hand.
    Thresh,
    /// Husks off, kernels cut from the cob.
    Husk,
    /// Leaves or petals stripped from the stalk.
    Strip,
}

/// What is done to a crop before it is frozen.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Freezing {
    /// Nothing but washing and cutting.
    Raw,
    /// It is cooked until it is soft.
    Cooked,
    /// It is scalded in boiling water for so many minutes, and cooled in ice water.
    Blanched(f64),
}

/// Where a crop keeps until it is cooked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Store {
    /// As cold as can be without frost, in a bag or box that keeps it from wilting.
    ColdMoist,
    /// Cool, but not as cold as a refrigerator's coldest part, and not dry.
    CoolMoist,
    /// Cool, dry and airy.
    CoolDry,
    /// In a freezer; no crop is there unless the file asks for it.
    #[serde(skip)]
    Freezer,
    /// In a closed jar in the dark, dried; no crop is there unless the file asks for it.
    #[serde(skip)]
    Jar,
}

/// How a kitchen handles a crop.
#[derive(Debug, Clone, PartialEq)]
pub struct Kitchen {
    /// In what state it comes.
    pub arrives: Arrives,
    /// What is done to it before it is cooked, in order.
    pub steps: Vec<Preparation>,
    /// Where it keeps; for how many days, `Picking::storage_days` tells.
    pub store: Store,
    /// The coldest and the warmest that it keeps well at.
    pub temperature: (Celsius, Celsius),
    /// What a full crate of [`CRATE`] holds.
    pub crate_holds: Kilograms,
    /// What is done to it before it is frozen; `None` where it is not fit for that.
    pub freezing: Option<Freezing>,
    /// Days until it is dry; `None` where it is not dried without heat, or is dry when it is picked.
    pub dried_days: Option<u32>,
}
