//! Who cares for plants in breaks and gaps, what to decide, what to take care of.

use schemars::JsonSchema;
use serde::Serialize;

use super::doing::{Kind, Thing};
use super::time::Day;

/// Who cares for plants in a break.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Care {
    /// Nobody is on site.
    Nobody,
    /// Staff water.
    Staff,
    /// Families water, pick and cure.
    Families,
}

/// A span without school.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Break {
    /// Its name.
    pub name: String,
    /// The first day without school.
    pub from: Day,
    /// The last day without school.
    pub to: Day,
    /// Who cares for plants.
    pub care: Care,
}

/// Days on which nobody is on site and something needs daily care.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Gap {
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
    /// Days for which someone has to be found, beyond the two of a weekend.
    pub unattended_days: u32,
    /// What needs care.
    pub needs: Vec<Need>,
}

/// Plants that need daily care.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Need {
    /// The ingredient's name.
    pub ingredient: String,
    /// The step whose result needs it: after sowing a seedbed or seedlings, after potting up pots.
    pub after: Kind,
    /// True if the ingredient is sown on the shelf.
    pub on_shelf: bool,
}

/// Something to decide by a day.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Decision {
    /// The last day, one of school.
    pub by: Day,
    /// What it is about.
    pub topic: Topic,
    /// The same in words.
    pub what: String,
}

/// What sort of decision it is.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TopicKind {
    /// The nurse is asked about what goes into the dish.
    Nurse,
    /// Seed, pieces or plants are ordered.
    Order,
    /// Somebody is named for days without anyone.
    Gap,
    /// The watering list of a break is filled.
    Break,
    /// The kitchen is told what the garden brings, so that it orders the rest.
    Kitchen,
    /// An ingredient is bought if it has failed.
    Buy,
}

/// What a decision is about; fields that its kind does not ask for are null.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Topic {
    /// Which kind it is.
    pub kind: TopicKind,
    /// The ingredient that is ordered or bought.
    pub ingredient: Option<String>,
    /// How many seeds, pieces or plants are ordered.
    pub count: Option<u32>,
    /// What is ordered.
    pub thing: Option<Thing>,
    /// The first day on which what is ordered is needed.
    pub needed: Option<Day>,
    /// Which gap: its place in the list of gaps, counted from 0.
    pub gap: Option<usize>,
    /// The break's name.
    #[serde(rename = "break")]
    pub pause: Option<String>,
    /// What it costs, in the school's currency, where the file tells it.
    pub cost: Option<f64>,
}

/// What a caution is about.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum CautionKind {
    /// Allergies, for the nurse.
    Allergies,
    /// An ingredient.
    Ingredient,
    /// Children who are young for what they may grow.
    Young,
    /// Hands are washed.
    Hands,
    /// Seed may be treated.
    Seed,
    /// Soil may carry lead.
    Soil,
    /// Stings, ticks, cuts, shoes, sprays.
    Outdoors,
    /// Sun and heat.
    Heat,
    /// Tools, stoves and heat.
    Tools,
    /// The rules for serving food.
    FoodService,
    /// Work for licensed trades.
    Trades,
    /// Electricity beside water.
    HeatMat,
    /// Which compost counts as safe.
    Compost,
}

/// Something to take care of. Local rules come first.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Caution {
    /// What it is about.
    pub kind: CautionKind,
    /// The ingredient, where it is about one.
    pub ingredient: Option<String>,
    /// The ids of the grades, where it is about some.
    pub grades: Vec<String>,
    /// The allergens, where it is about them.
    pub allergens: Vec<Allergen>,
    /// The same in words.
    pub text: String,
}

/// An allergen of the dish.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Allergen {
    /// What it is called.
    pub name: String,
    /// Names of the ingredients that carry it.
    pub ingredients: Vec<String>,
}
