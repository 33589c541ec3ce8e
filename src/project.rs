//! Reads the project file and its weather, checks every part, and makes a `Garden`, or tells
//! everything that is wrong at once. The structs of the file stand beside their checks, in
//! files with the same names as those of `garden`.

mod along_trellis;
mod assumed;
mod bed;
pub mod carry_over;
mod change;
mod check;
mod crop;
mod crop_names;
mod days;
pub mod diary;
mod dish;
mod document;
mod doubts;
pub mod draft;
mod feast;
mod figures;
mod file;
mod form;
mod frosts;
mod grade;
mod ground;
mod growing;
mod grown_by;
mod ingredient;
mod kind;
mod lists;
mod meant;
mod names;
mod order;
mod other_dish;
mod other_units;
mod own_figures;
mod place;
mod schema;
mod school_year;
mod seedlings;
mod shelf;
mod slips;
mod slot;
mod source;
mod standing;
pub mod station;
mod table;
mod tokens;
mod unknown;
mod value;
mod weather;

use std::path::Path;

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::diagnostic::{Findings, Problems, Read, Source};
use crate::garden::Garden;
use crate::weather::Daily;

pub use along_trellis::name as along_trellis_of;
pub use change::Change;
pub use other_dish::dish_in_lines;
pub use weather::{FROSTS as FROSTS_TOLD, NAMES as MEANS_TOLD};

use check::{Check, ReadWeather};
use file::Raw;

pub use form::{Form, Key, Presence, key_of_figure};
pub use names::near;
pub use other_units::OtherUnit;

/// Loads a project file and the weather file that it names, relative to its folder.
///
/// # Errors
/// Everything that is wrong in either file.
pub fn load(path: &Path, catalogue: &Catalogue) -> Result<Garden, Problems> {
    load_changed(path, &[], catalogue)
}

/// Loads a project file with changes made to it on trial; the file itself stays as it is.
///
/// # Errors
/// Every change that cannot be made; else everything that is wrong in the changed project.
pub fn load_changed(
    path: &Path,
    changes: &[Change],
    catalogue: &Catalogue,
) -> Result<Garden, Problems> {
    let folder = path.parent().unwrap_or(Path::new(""));
    let weather = |name: &str| Raw::read(&folder.join(name), file::WEATHER_LIMIT);
    let project = Raw::read(path, file::PROJECT_LIMIT);
    let project = match changes {
        [] => project,
        changes => project.changed(changes)?,
    };
    load_raw(project, &weather, catalogue)
}

/// Loads a project from text; `weather` is the text of the weather file that it names.
///
/// # Errors
/// Everything that is wrong in either text.
pub fn load_text(
    name: &str,
    text: &str,
    weather: Option<&str>,
    catalogue: &Catalogue,
) -> Result<Garden, Problems> {
    let weather = |name: &str| Raw::of_text(name, weather);
    load_raw(Raw::of_text(name, Some(text)), &weather, catalogue)
}

/// Reads a forecast: days as a weather file has them.
///
/// # Errors
/// Everything that is wrong in the file.
pub fn forecast(path: &Path) -> Result<Vec<(Date, Daily)>, Problems> {
    let file = Raw::read(path, file::WEATHER_LIMIT);
    let mut found = Findings::default();
    let (source, read) = decoded(file, &mut found);
    let filled = read.and_then(|()| weather::read(&source, &mut found));
    let mut problems = Problems::default();
    problems.add(source, found);
    match filled {
        Ok(filled) if problems.is_empty() => Ok(filled
            .record
            .held()
            .map(|(date, day)| (date, *day))
            .collect()),
        _ => Err(problems),
    }
}

/// All keys of the project file, as the reader asks for them.
#[must_use]
pub fn keys(catalogue: &Catalogue) -> Vec<Key> {
    document::keys(catalogue)
}

/// The JSON Schema of these keys, as a text.
#[must_use]
pub fn schema(keys: &[Key]) -> String {
    format!("{:#}\n", schema::schema(keys))
}

fn load_raw(
    project: Raw,
    read_weather: &ReadWeather<'_>,
    catalogue: &Catalogue,
) -> Result<Garden, Problems> {
    let mut check = Check::new(catalogue, read_weather);
    let (source, read) = decoded(project, &mut check.found);
    let garden = read
        .and_then(|()| document::parse(&source.text, catalogue, &mut check.found))
        .and_then(|document| check.garden(document));
    let mut problems = Problems::default();
    problems.add(source, check.found);
    if let Some((source, found)) = check.weather {
        problems.add(source, found);
    }
    match garden {
        Ok(garden) if problems.is_empty() => Ok(garden),
        _ => Err(problems),
    }
}

/// A file as text, or why it is none.
fn decoded(file: Raw, found: &mut Findings) -> (Source, Read<()>) {
    match file.bytes {
        Ok(bytes) => file::decode(file.name, bytes, found),
        Err(problem) => {
            let reported = found.report(*problem);
            (Source::unread(file.name), Err(reported))
        }
    }
}
