//! What is done, by whom, where, with how much.

use schemars::JsonSchema;
use serde::Serialize;

use super::time::{Clock, Day};

/// What is done.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Kind {
    /// Seed, pieces, sets or cloves go into flats or into the bed.
    Sow,
    /// Seedlings move from cells to pots.
    PotUp,
    /// Seedlings learn the outdoors, day by day.
    Harden,
    /// Plants go into the bed.
    PlantOut,
    /// Surplus seedlings are taken out of the row.
    Thin,
    /// The harvest.
    Pick,
    /// The harvest dries or cures.
    Cure,
}

/// Who does it.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Hands {
    /// A class in its lesson.
    Class,
    /// Families, in a break in which they care.
    Families,
    /// An adult of the school.
    Adult,
    /// Whoever is there, day by day.
    Anyone,
}

/// One thing to do, by one class or one sort of people.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Step {
    /// Which planting: its place in the list of plantings, counted from 0.
    pub planting: usize,
    /// What is done.
    pub kind: Kind,
    /// The same in words.
    pub title: String,
    /// Who does it.
    pub hands: Hands,
    /// The class, where a class does it.
    pub class: Option<String>,
    /// Where it is done.
    pub place: Spot,
    /// The day, or the first of several.
    pub from: Day,
    /// The last day, the same where it is one day.
    pub to: Day,
    /// When the class's lesson begins, where the project says so.
    pub at: Option<Clock>,
    /// Minutes of the lesson that it takes.
    pub minutes: Option<u32>,
    /// The class's part of what is handed out.
    pub part: Option<Part>,
    /// Which of several chances to pick this is: the first on which it is ripe counts, the later
    /// ones fall away.
    pub chance: Option<Chance>,
}

/// A class's part of what is handed out.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Part {
    /// What this class gets, rounded up.
    pub part: u32,
    /// What all classes get together.
    pub of: u32,
    /// What it is.
    pub thing: Thing,
}

/// One of several days set aside for one harvest.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Chance {
    /// Which, counted from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

/// Where a step is done.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Spot {
    /// At the seedling shelf.
    Shelf,
    /// Outdoors, near the shelf.
    NearShelf,
    /// Where the harvest dries.
    DryingPlace,
    /// On the planting's strips.
    Strips,
    /// At a patch.
    Patch,
}

/// What is counted and handed out.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Thing {
    /// A seed.
    Seed,
    /// A piece, set or clove.
    SeedPiece,
    /// A plant that was bought.
    BoughtPlant,
    /// A plant that the school has raised.
    Plant,
}
