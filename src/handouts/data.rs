//! The plan as data for other programs: JSON in a form of its own with a number, and the schema
//! of it (JSON Schema 2020-12), derived from the types that are written.

mod shape;
mod told;

use schemars::generate::SchemaSettings;

use crate::words::view::View;

pub use shape::SCHEMA;

use shape::PlanData;

/// The name of the data file.
pub const DATA: &str = "plan-data.json";

/// The data file of a plan. `calendars` are the files of the classes, in their order.
///
/// # Errors
/// Those of the writer; texts and numbers in memory give none.
pub fn data(view: &View<'_>, calendars: &[String]) -> Result<Vec<u8>, serde_json::Error> {
    lines(&told::told(view, calendars))
}

/// The schema of the data file.
///
/// # Errors
/// Those of the writer; there is nothing in a schema that gives any.
pub fn schema() -> Result<Vec<u8>, serde_json::Error> {
    let settings = SchemaSettings::draft2020_12().for_serialize();
    lines(&settings.into_generator().into_root_schema_for::<PlanData>())
}

fn lines(value: &impl serde::Serialize) -> Result<Vec<u8>, serde_json::Error> {
    let mut bytes = serde_json::to_vec_pretty(value)?;
    bytes.push(b'\n');
    Ok(bytes)
}
