//! The file of the next year, made of that of this year: its text stays as it was written, and what a year changes
//! is changed in it, line by line.

mod beds;
mod days;
mod edits;
mod grades;
mod standing;
mod tables;
mod told;

use std::path::Path;

use toml::Value;
use toml::de::DeTable;

use crate::diagnostic::{Findings, Problems};
use crate::garden::Garden;

pub use told::{CarriedOver, Children, Gone, Grown, Left, What};

use super::decoded;
use super::file::{PROJECT_LIMIT, Raw, WEATHER_LIMIT};
use edits::Edits;
use tables::{section, text};
use told::MARK;

/// An editor reads this only in the first line.
const SCHEMA: &str = "#:schema";

/// Makes the file of the next year. `garden` is what this year's file says.
///
/// # Errors
/// What is wrong with the file, if it cannot be read by now.
pub fn carry_over(path: &Path, garden: &Garden, left: &Left) -> Result<CarriedOver, Problems> {
    let mut found = Findings::default();
    let (source, read) = decoded(Raw::read(path, PROJECT_LIMIT), &mut found);
    let file = DeTable::parse(&source.text).ok().filter(|_| read.is_ok());
    let carried = file.map(|file| carried(&source.text, file.get_ref(), garden, left));
    carried.ok_or_else(|| {
        let mut problems = Problems::default();
        problems.add(source, found);
        problems
    })
}

/// The text of a weather file, to be copied.
///
/// # Errors
/// Why it cannot be read.
pub fn weather_text(project: &Path, name: &str) -> Result<String, Problems> {
    let path = project.with_file_name("").join(name);
    let mut found = Findings::default();
    let (source, read) = decoded(Raw::read(&path, WEATHER_LIMIT), &mut found);
    match read {
        Ok(()) => Ok(source.text),
        Err(_) => {
            let mut problems = Problems::default();
            problems.add(source, found);
            Err(problems)
        }
    }
}

fn carried(old: &str, file: &DeTable<'_>, garden: &Garden, left: &Left) -> CarriedOver {
    let mut edits = Edits::of(old);
    head(&left.remarks, &mut edits);
    days::move_all(file, garden, &mut edits);
    let name = renamed(file, garden, &mut edits);
    let weather = weather(file, &mut edits);
    let children = grades::move_up(file, garden, &mut edits);
    let mut gone = standing::clear(file, garden.start(), &mut edits);
    gone.extend(beds::free(file, garden, &mut edits));
    beds::write(file, (&left.grown, left.since), &mut edits);
    CarriedOver {
        text: edits.made(),
        name,
        feast: days::next(garden.feast.day),
        children,
        gone,
        weather,
    }
}

/// Remarks at the head of the file; those of the year before go.
fn head(remarks: &[String], edits: &mut Edits<'_>) {
    let first = edits.text.starts_with(SCHEMA);
    let start = if first { edits.line_of(0).end } else { 0 };
    let lines = remarks.iter().map(|remark| format!("{MARK}{remark}\n"));
    edits.put(start..start, lines.collect::<String>());
    let mut at = 0;
    for line in edits.text.split_inclusive('\n') {
        if line.trim_start().starts_with(MARK) {
            edits.put(at..at + line.len(), String::new());
        }
        at += line.len();
    }
}

/// Another name, by which calendars know the new year's events from the old ones.
fn renamed(file: &DeTable<'_>, garden: &Garden, edits: &mut Edits<'_>) -> String {
    let name = days::next_name(garden);
    let place = section(file, "project").and_then(|project| text(project, "name"));
    if let Some((_, place)) = place {
        edits.put(place, Value::from(name.as_str()).to_string());
    }
    name
}

/// The weather file is copied into the folder of the new project, under its own name.
fn weather(file: &DeTable<'_>, edits: &mut Edits<'_>) -> Option<(String, String)> {
    let (was, place) = text(section(file, "place")?, "weather")?;
    let is = Path::new(was).file_name()?.to_str()?.to_owned();
    if is != was {
        edits.put(place, Value::from(is.as_str()).to_string());
    }
    Some((was.to_owned(), is))
}
