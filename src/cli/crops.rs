//! `tureen crops`: the crops that the program knows, or all about one of them.

use std::path::PathBuf;

use crate::project::near;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::load::{catalogue, load};
use super::one_line::one_line;

/// The arguments of `crops`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// One crop, by any of its names; else all crops are listed.
    #[arg(value_parser = one_line)]
    name: Option<String>,
    /// Also tells what it means for this project's place: when to sow it, when it gets ripe.
    #[arg(long = "for", value_name = "FILE", requires = "name")]
    project: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let catalogue = catalogue()?;
    let Some(name) = &arguments.name else {
        return Ok(Answer::page(&report::crops(&catalogue)));
    };
    let entry = catalogue.entry(name).ok_or_else(|| {
        let remedy = match near(name, catalogue.all_names()) {
            Some(other) => format!("Did you mean \"{other}\"?"),
            None => "`tureen crops` lists all crops.".to_owned(),
        };
        Trouble::new(
            Exit::Usage,
            format_args!("The program knows no crop \"{name}\"."),
            &remedy,
        )
    })?;
    let garden = arguments.project.as_deref().map(load).transpose()?;
    let page = report::crop(&catalogue, entry, garden.as_ref());
    Ok(Answer::page(&page))
}
