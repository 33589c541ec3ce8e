//! Days and times of day.

use schemars::JsonSchema;
use serde::Serialize;

/// A day in the school's calendar, ISO 8601: year-month-day.
#[derive(Serialize, JsonSchema)]
#[serde(transparent)]
#[schemars(extend("format" = "date"))]
pub struct Day(pub String);

/// A time of day by the clock on the school's wall, of no time zone: hours and minutes.
#[derive(Serialize, JsonSchema)]
#[serde(transparent)]
#[schemars(extend("pattern" = "^([01][0-9]|2[0-3]):[0-5][0-9]$"))]
pub struct Clock(pub String);
