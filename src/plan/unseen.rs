//! What is claimed of the way in which a plan was made: how plans made the same way on a part of the
//! record did in the rest of it.

use serde::{Deserialize, Serialize};

/// In how many years of a record a plan was ready that was made the same way on others of its years: each
/// year is counted once. It belongs to the way of planning, not to the dates of this plan, so it is written
/// down when the plan is made and cannot be counted again from it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct UnseenYears {
    /// So many years: all of the record.
    pub years: u32,
    /// In how many of them the whole dish was ready.
    pub whole_dish_years: u32,
    /// The same on the rain date, if there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rain_date_years: Option<u32>,
    /// Per ingredient, in the order of the project file.
    pub ingredients: Vec<ReadyUnseen>,
}

/// The same of one ingredient.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct ReadyUnseen {
    /// The ingredient's name.
    pub ingredient: String,
    /// In how many of the years it was ready.
    pub ready_years: u32,
}
