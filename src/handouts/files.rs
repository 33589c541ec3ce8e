//! The files of the folder that are no pages: calendars, tables, data, and the workbook where
//! the program was built with it.

use crate::explain::StepSlack;
use crate::garden::{ClassAt, Garden};
use crate::report::calendar_name;
use crate::report::entries::{Entry, entries};
use crate::report::tables::{Table, tables};
use crate::words::view::View;

use super::calendar::{Stamp, calendar};
use super::data::{DATA, SCHEMA, data, schema};
use super::file_name::FileNames;
use super::folder::File;
use super::tables::csv;

/// What the writer of some format says when it fails: a fault of the program.
pub type FormatError = Box<dyn std::error::Error>;

/// The folder of the calendar files.
const CALENDARS: &str = "calendars";

/// The names of the tables' files, in their order.
const TABLES: [&str; 3] = ["steps", "plantings", "weeks"];

/// All files but the pages, in order. `saved` tells when the plan was saved; the same plan and
/// the same moment give the same bytes. With the slack of its steps, the calendars also tell when
/// to make up for what was cancelled.
///
/// # Errors
/// What the writer of a format says.
pub fn files(view: &View<'_>, saved: Stamp, slack: &[StepSlack]) -> Result<Vec<File>, FormatError> {
    let garden = view.garden;
    let classes = class_files(garden);
    let names: Vec<String> = classes.iter().map(|(_, name)| name.clone()).collect();
    let mut files = calendars(garden, &classes, &entries(view, slack), saved);
    let tables = tables(view);
    files.extend(csv_files(&tables)?);
    files.push(file(DATA, data(view, &names)?));
    files.push(file(SCHEMA, schema()?));
    #[cfg(feature = "spreadsheet")]
    files.push(file(
        super::workbook::WORKBOOK,
        super::workbook::workbook(&tables)?,
    ));
    Ok(files)
}

fn file(path: &str, bytes: Vec<u8>) -> File {
    File {
        path: path.to_owned(),
        bytes,
    }
}

/// Every class with its calendar file, in the order of the project file.
#[must_use]
pub fn class_files(garden: &Garden) -> Vec<(ClassAt, String)> {
    let mut names = FileNames::default();
    let classes = garden
        .grade_positions()
        .flat_map(|at| garden.classes_of(at));
    classes
        .map(|at| {
            let name = names.name("class", &garden.class(at).name, "ics");
            (at, format!("{CALENDARS}/{name}"))
        })
        .collect()
}

fn calendars(
    garden: &Garden,
    classes: &[(ClassAt, String)],
    entries: &[Entry<'_>],
    saved: Stamp,
) -> Vec<File> {
    let project = &garden.name;
    let all = calendar(&calendar_name(garden, None), project, entries, saved);
    let of_class = |(class, path): &(ClassAt, String)| {
        let own =
            |entry: &&Entry<'_>| entry.entry.is_everywhere() || entry.entry.class() == Some(*class);
        let name = calendar_name(garden, Some(*class));
        file(
            path,
            calendar(&name, project, entries.iter().filter(own), saved),
        )
    };
    let mut files = vec![file(&format!("{CALENDARS}/all.ics"), all)];
    files.extend(classes.iter().map(of_class));
    files
}

fn csv_files(tables: &[Table; 3]) -> Result<Vec<File>, FormatError> {
    let named = TABLES.iter().zip(tables);
    named
        .map(|(name, table)| Ok(file(&format!("tables/{name}.csv"), csv(table)?)))
        .collect()
}
