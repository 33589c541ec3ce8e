//! The form of the data file. The words beside the fields stand in its schema; a change that a
//! reader would notice needs a new version.

mod caring;
mod doing;
mod time;

pub use caring::{
    Allergen, Break, Care, Caution, CautionKind, Decision, Gap, Need, Topic, TopicKind,
};
pub use doing::{Chance, Hands, Kind, Part, Spot, Step, Thing};
pub use time::{Clock, Day};

use schemars::JsonSchema;
use serde::Serialize;

/// The version of the form that is written.
pub const VERSION: u32 = 4;

/// The name of the schema; it lies beside the data file.
pub const SCHEMA: &str = "plan-data.schema.json";

/// A plan of one dish that a whole school grows and eats on one day. Names and texts are on one
/// line, without control signs. Lists are in the order of the project file or of time, as said.
/// What the plan does not know is null.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct PlanData {
    /// The schema of this file; it lies beside it.
    #[serde(rename = "$schema")]
    pub schema: String,
    /// The version of this form. A reader should refuse one that it does not know.
    pub tureen_plan_data: u32,
    /// What is planned, and where.
    pub project: Project,
    /// What the plan is worth.
    pub standing: Standing,
    /// The shared day.
    pub feast: Feast,
    /// How sure it is.
    pub verdict: Verdict,
    /// The grades with their classes, in the order of the project file.
    pub grades: Vec<Grade>,
    /// The parts of the dish, in the order of the project file.
    pub ingredients: Vec<Ingredient>,
    /// Every sowing of every ingredient. Steps name them by their place in this list.
    pub plantings: Vec<Planting>,
    /// All that is done, in order of time: one entry a step and class, or other people.
    pub steps: Vec<Step>,
    /// Shelf and beds week by week, over the whole time of the plan.
    pub weeks: Vec<Week>,
    /// Spans without school within the time of the plan, in order of time.
    pub breaks: Vec<Break>,
    /// Runs of more than two days on which nobody is on site and something needs daily care.
    pub gaps: Vec<Gap>,
    /// What to decide by when, in order of time.
    pub decisions: Vec<Decision>,
    /// What to take care of, in the order of the pages.
    pub cautions: Vec<Caution>,
}

/// What the plan is worth. It keeps every rule in all cases.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Made just now, or saved and unchanged since.
    AsPlanned,
    /// Its file was edited by hand since it was made: it need not be the best one.
    Edited,
    /// The project, or the program, has changed since it was made: figures were derived anew, and it
    /// need not be the best one.
    ProjectChanged,
}

/// What is planned, and where.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Project {
    /// Its name.
    pub name: String,
    /// The school's name.
    pub school: Option<String>,
    /// Degrees of latitude, north positive.
    pub latitude_deg: f64,
    /// The language and customs of the pages (BCP 47), as in their `lang`.
    pub locale: String,
    /// The first day on which anyone may sow.
    pub start: Day,
    /// The day on which all grades move up, if it falls within the plan.
    pub moves_up: Option<Day>,
}

/// The shared day.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Feast {
    /// The day on which the whole school eats.
    pub day: Day,
    /// A second day, for rain.
    pub rain_date: Option<Day>,
    /// The day by which the harvest is in the kitchen.
    pub deliver_by: Day,
    /// How many portions.
    pub portions: u32,
}

/// How sure it is, counted in weather years.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Verdict {
    /// On how many years what is promised was counted that no plan had seen: where the weather years are made
    /// up, fresh ones, in which this plan was grown; of a record its own years, each with a plan made the
    /// same way without it. None where that was not counted.
    pub unseen_years: Option<usize>,
    /// In how many of those the whole dish is ready for the feast: where it is there, this is what is
    /// promised.
    pub whole_dish_ready_unseen_years: Option<usize>,
    /// In how many of those it is ready for the rain date.
    pub rain_date_ready_unseen_years: Option<usize>,
    /// How many weather years the plan was chosen on.
    pub weather_years: usize,
    /// True if they were made from monthly means; false if a thermometer saw them.
    pub generated: bool,
    /// In how many of them the whole dish is ready for the feast.
    pub whole_dish_ready_years: usize,
    /// In how many of them it is ready for the rain date.
    pub rain_date_ready_years: Option<usize>,
    /// Of as many further years as it was chosen on, the fewest to expect it in (95 % prediction interval);
    /// none where there are too few years to say so.
    pub expect_at_least_years: Option<usize>,
    /// Of as many further years as it was chosen on, the most to expect it in (95 % prediction interval);
    /// none likewise.
    pub expect_at_most_years: Option<usize>,
}

/// A grade.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Grade {
    /// The id by which other parts name it.
    pub id: String,
    /// The name that people read.
    pub name: String,
    /// Names of the ingredients that it grows.
    pub grows: Vec<String>,
    /// Why it grows nothing, where it does not.
    pub grows_nothing_because: Option<Idle>,
    /// Its classes.
    pub classes: Vec<Class>,
}

/// Why a grade grows nothing.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Idle {
    /// The project file gives every ingredient to other grades.
    GivenToOthers,
    /// Of the ingredients whose grade the file leaves open none is for its age.
    TooYoung,
    /// More grades could grow something than there are ingredients for them.
    TooFewIngredients,
}

/// A class.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Class {
    /// Its name, unique in the school.
    pub name: String,
    /// How many children.
    pub children: u32,
    /// Its calendar file, from the folder of this file.
    pub calendar: String,
}

/// A part of the dish.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Ingredient {
    /// Its name, unique in the dish.
    pub name: String,
    /// The ids of the grades that grow it; more than one where they do so together, none where it is not in the plan.
    pub grades: Vec<String>,
    /// Edible kilograms for all portions.
    pub target_kg: f64,
    /// Usable kilograms in a poor year.
    pub low_kg: f64,
    /// Usable kilograms in an ordinary year.
    pub expected_kg: f64,
    /// In how many of the unseen years at least its least share is in the pot.
    pub ready_unseen_years: Option<usize>,
    /// The same of the weather years that the plan was chosen on.
    pub ready_years: usize,
    /// The same for the rain date.
    pub rain_date_ready_years: Option<usize>,
    /// What to take care of.
    pub caution: Option<String>,
    /// Who may not eat it.
    pub allergen: Option<String>,
    /// The last day to buy it if it fails.
    pub buy_by: Option<Day>,
}

/// How a planting is grown.
#[derive(Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub enum Method {
    /// Seed sown in the bed.
    Direct,
    /// Sown on the shelf, then planted out.
    Indoor,
    /// Pieces, sets or cloves planted in the bed.
    Pieces,
    /// Bought plants planted in the bed.
    Bought,
    /// Seedlings that stand on the shelf when the plan begins, then planted out.
    Seedlings,
    /// It stands in a bed when the plan begins.
    Growing,
    /// It comes every year.
    Patch,
}

/// One sowing of one ingredient.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Planting {
    /// The ingredient's name.
    pub ingredient: String,
    /// Which sowing of the ingredient, counted from 1.
    pub sowing: usize,
    /// The ids of the grades that grow it; more than one where they do so together.
    pub grades: Vec<String>,
    /// How it is grown.
    pub method: Method,
    /// Where it stands; empty for a patch.
    pub places: Vec<Place>,
    /// The first day on which it takes its strips.
    pub in_bed_from: Option<Day>,
    /// The last day on which it takes its strips, a week to clear them included.
    pub in_bed_until: Option<Day>,
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

/// Neighbouring strips of one bed; a strip is 0.3 m of its length over its whole width.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Place {
    /// The bed's id.
    pub bed: String,
    /// The first strip, counted from 1 at the bed's start.
    pub first_strip: u32,
    /// How many strips.
    pub strips: u32,
}

/// A week from Monday to Sunday: what is in use on its fullest day, and what there is.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct Week {
    /// Its Monday.
    pub monday: Day,
    /// Flats on the shelf.
    pub flats_used: u32,
    /// Flats for which the shelf has room.
    pub flats_there: u32,
    /// Flats on the heat mat.
    pub mat_flats_used: u32,
    /// Flats for which the heat mat has room.
    pub mat_flats_there: u32,
    /// The beds, in the order of the project file.
    pub beds: Vec<BedUse>,
}

/// A bed in one week.
#[derive(Serialize, JsonSchema)]
#[schemars(deny_unknown_fields)]
pub struct BedUse {
    /// The bed's id.
    pub bed: String,
    /// Strips in use.
    pub strips_used: u32,
    /// Strips that it has: none in a week in which all of it still carries what stood there before.
    pub strips_there: u32,
}
