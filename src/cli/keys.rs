//! `tureen keys`: every key that a project file may hold, and the schema for editors.

use crate::project;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::argument::one_line;
use super::load::catalogue;

/// The arguments of `keys`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// One table of the file, such as bed or grade.classes; else all.
    #[arg(value_parser = one_line)]
    table: Option<String>,
    /// Prints a JSON Schema of the file instead, for editors.
    #[arg(long, conflicts_with = "table")]
    schema: bool,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let keys = project::keys(&catalogue()?);
    if arguments.schema {
        return Ok(Answer::done(&project::schema(&keys)));
    }
    let table = arguments
        .table
        .as_deref()
        .map(|name| name.trim_matches(['[', ']']));
    match report::keys(&keys, table) {
        Some(page) => Ok(Answer::page(&page)),
        None => Err(Trouble::new(
            Exit::Usage,
            format_args!(
                "A project file has no table \"{}\".",
                table.unwrap_or_default()
            ),
            &format!("It has {}.", report::table_names(&keys).join(", ")),
        )),
    }
}
