//! Reads the project file and its weather, checks every part, and makes a `Garden`, or tells
//! everything that is wrong at once. The structs of the file stand beside their checks, in
//! files with the same names as those of `garden`.

mod assumed;
mod bed;
mod check;
mod crop;
mod dates;
mod dish;
mod document;
mod feast;
mod file;
mod grade;
mod kind;
mod names;
mod place;
mod school_year;
mod shelf;
mod slot;
mod source;
mod standing;
mod table;
mod weather;

use std::path::Path;

use crate::catalogue::Catalogue;
use crate::diagnostic::{Code, Findings, Problem, Problems, Source};
use crate::garden::Garden;

use check::Check;

/// Loads a project file and the weather file that it names, relative to its folder.
///
/// # Errors
/// Everything that is wrong in either file.
pub fn load(path: &Path, catalogue: &Catalogue) -> Result<Garden, Problems> {
    let mut found = Findings::default();
    let name = path.display().to_string();
    let (source, read) = file::read(path, name, file::PROJECT_LIMIT, &mut found);
    if read.is_err() {
        let mut problems = Problems::default();
        problems.add(source, found);
        return Err(problems);
    }
    let folder = path.parent().unwrap_or(Path::new(""));
    load_source(source, catalogue, &|name, found| {
        let path = folder.join(name);
        file::read(
            &path,
            path.display().to_string(),
            file::WEATHER_LIMIT,
            found,
        )
    })
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
    let source = Source {
        name: name.to_owned(),
        text: text.strip_prefix('\u{feff}').unwrap_or(text).to_owned(),
    };
    load_source(source, catalogue, &|name, found| {
        let source = Source {
            name: name.to_owned(),
            text: weather.unwrap_or_default().to_owned(),
        };
        let read = match weather {
            Some(_) => Ok(()),
            None => Err(found.report(Problem::new(Code::NoSuchFile, "this file does not exist"))),
        };
        (source, read)
    })
}

fn load_source(
    source: Source,
    catalogue: &Catalogue,
    read_weather: &check::ReadWeather<'_>,
) -> Result<Garden, Problems> {
    let mut check = Check::new(catalogue, read_weather);
    let garden = document::parse(&source.text, catalogue, &mut check.found)
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
