//! The decision as plain data: plantings with their steps and places, what they promise,
//! and how far each aim is proved. Names and dates only, so that a person can read and
//! edit the saved form.

mod at;
mod one_or_several;
mod rule;
pub mod saved;
mod stand;
mod step_kind;
mod unseen;

pub use at::{PlantingAt, StepAt};
pub use rule::{Aim, Rule};
pub use stand::Stand;
pub use step_kind::{Facts, Hands, Needed, Site, StepKind, TiedTo};
pub use unseen::{ReadyUnseen, UnseenYears};

use serde::{Deserialize, Serialize};

use crate::calendar::Date;
use crate::garden::{Method, StripAt, Strips};
use crate::units::{Kilograms, Minutes};

/// One class at one of its sessions.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Visit {
    /// The class's name.
    pub class: String,
    /// The day.
    pub date: Date,
}

/// When a step is done, and by whom.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum When {
    /// By children, each class in one session.
    Sessions(Vec<Visit>),
    /// By families, on a day of a break in which they care.
    Families(Date),
    /// By an adult, on one day.
    Adult(Date),
    /// Day by day over a span, both ends included.
    Daily {
        /// First day.
        from: Date,
        /// Last day.
        to: Date,
    },
}

/// One step of a planting.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Step {
    /// What is done.
    pub kind: StepKind,
    /// When and by whom.
    pub when: When,
    /// Minutes that it takes of each class's session; 0 if no session is used.
    pub minutes: Minutes,
}

/// Who comes on a day of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum By<'a> {
    /// A class, by its name.
    Class(&'a str),
    /// Families.
    Families,
    /// An adult.
    Adult,
}

impl<'a> By<'a> {
    /// The class, if it is one.
    #[must_use]
    pub fn class(self) -> Option<&'a str> {
        match self {
            By::Class(name) => Some(name),
            By::Families | By::Adult => None,
        }
    }
}

impl When {
    /// Its days, each with who comes then; none of what goes on day by day.
    #[must_use]
    pub fn turns(&self) -> Vec<(By<'_>, Date)> {
        match self {
            When::Sessions(visits) => {
                let each = visits.iter().map(|v| (By::Class(&v.class), v.date));
                each.collect()
            }
            When::Families(day) => vec![(By::Families, *day)],
            When::Adult(day) => vec![(By::Adult, *day)],
            When::Daily { .. } => Vec::new(),
        }
    }

    /// The days of these turns, in the same order, to be changed.
    #[must_use]
    pub fn days_mut(&mut self) -> Vec<&mut Date> {
        match self {
            When::Sessions(visits) => visits.iter_mut().map(|v| &mut v.date).collect(),
            When::Families(day) | When::Adult(day) => vec![day],
            When::Daily { .. } => Vec::new(),
        }
    }

    /// Whose hands do it.
    #[must_use]
    pub fn hands(&self) -> Hands {
        match self {
            When::Sessions(_) => Hands::Children,
            When::Families(_) => Hands::Families,
            When::Adult(_) => Hands::Adult,
            When::Daily { .. } => Hands::Anyone,
        }
    }

    /// The first day of the step.
    #[must_use]
    pub fn first(&self) -> Option<Date> {
        match self {
            When::Sessions(visits) => visits.iter().map(|v| v.date).min(),
            When::Families(day) | When::Adult(day) => Some(*day),
            When::Daily { from, .. } => Some(*from),
        }
    }

    /// The last day of the step.
    #[must_use]
    pub fn last(&self) -> Option<Date> {
        match self {
            When::Sessions(visits) => visits.iter().map(|v| v.date).max(),
            When::Families(day) | When::Adult(day) => Some(*day),
            When::Daily { to, .. } => Some(*to),
        }
    }
}

/// Neighbouring strips of one bed.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Place {
    /// The bed's id.
    pub bed: String,
    /// The first strip, counted from 1 at the bed's start.
    pub first_strip: u32,
    /// How many strips.
    pub strips: u32,
}

impl Place {
    /// Strips of the bed of an id.
    #[must_use]
    pub fn of(bed: &str, strips: Strips) -> Self {
        Self {
            bed: bed.to_owned(),
            first_strip: strips.first.number(),
            strips: strips.count,
        }
    }

    /// The number of its last strip; one less than that of the first if it has none.
    #[must_use]
    pub fn last_number(&self) -> u32 {
        self.first_strip
            .saturating_add(self.strips)
            .saturating_sub(1)
    }

    /// Its strips. There is no strip 0: where a plan begins there, it has one fewer.
    #[must_use]
    pub fn run(&self) -> Strips {
        match StripAt::numbered(self.first_strip) {
            Some(first) => Strips {
                first,
                count: self.strips,
            },
            None => Strips::from_start(self.strips.saturating_sub(1)),
        }
    }
}

/// One sowing of one ingredient.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Planting {
    /// The ingredient's name.
    pub ingredient: String,
    /// The ids of the grades that grow it, in the order of the project file.
    #[serde(rename = "grade", with = "one_or_several")]
    pub grades: Vec<String>,
    /// How it is grown.
    pub method: Method,
    /// Steps in order of time; one `Pick` per round of the pick window.
    pub steps: Vec<Step>,
    /// Where it stands; empty for a patch.
    pub places: Vec<Place>,
    /// Plants that stand in the bed; 0 for a patch.
    pub plants: u32,
    /// Seeds, pieces or bought plants to have.
    pub seeds: u32,
    /// Flats on the shelf until potting up or planting out.
    pub flats_sown: u32,
    /// Flats on the shelf after potting up.
    pub flats_kept: u32,
    /// True if the flats stand on the heat mat until the seed is up.
    pub on_mat: bool,
}

impl Planting {
    /// Its steps of one kind, in order of time.
    pub fn steps_of(&self, kind: StepKind) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(move |step| step.kind == kind)
    }

    /// The days on which it may be picked, in order of time.
    pub fn picks(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|step| step.kind.is_harvest())
    }
}

/// What the plan promises for one ingredient.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct IngredientPromise {
    /// The ingredient's name.
    pub ingredient: String,
    /// Weather years in which at least the least share is in the pot.
    pub ready_years: u32,
    /// Usable kilograms of all its plantings in a poor year.
    pub low: Kilograms,
    /// Usable kilograms of all its plantings in an ordinary year.
    pub expected: Kilograms,
}

/// What the plan promises.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Promise {
    /// Through how many weather years it was grown.
    pub weather_years: u32,
    /// In how many of them the whole dish is ready.
    pub whole_dish_years: u32,
    /// Per ingredient, in the order of the project file.
    pub ingredients: Vec<IngredientPromise>,
}

/// How far an aim was reached and proved.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct AimResult {
    /// Which aim.
    pub aim: Aim,
    /// Its value when it was solved for.
    pub value: f64,
    /// No plan that keeps the earlier aims can be better than this.
    pub bound: f64,
}

impl AimResult {
    /// True if the value is proved best, given the earlier aims.
    #[must_use]
    pub fn proved(&self) -> bool {
        (self.value - self.bound).abs() <= 1e-6 * self.bound.abs().max(1.0)
    }
}

/// A whole plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Plan {
    /// All plantings, by ingredient in the order of the project file, then by sowing.
    pub plantings: Vec<Planting>,
    /// What it promises.
    pub promise: Promise,
    /// The aims in order, with value and bound.
    pub aims: Vec<AimResult>,
    /// Of a plan on a record: how plans made the same way did in years that they were not made for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unseen: Option<UnseenYears>,
}

impl Plan {
    /// All plantings with their positions.
    pub fn numbered(&self) -> impl Iterator<Item = (PlantingAt, &Planting)> {
        let plantings = self.plantings.iter().enumerate();
        plantings.map(|(at, planting)| (PlantingAt(at), planting))
    }

    /// The planting at a position; `None` if the plan has none there.
    #[must_use]
    pub fn planting(&self, at: PlantingAt) -> Option<&Planting> {
        self.plantings.get(at.0)
    }

    /// The step at a position, with its planting; `None` if the plan has none there.
    #[must_use]
    pub fn step(&self, at: StepAt) -> Option<(&Planting, &Step)> {
        let planting = self.planting(at.planting)?;
        Some((planting, planting.steps.get(at.step)?))
    }
}
