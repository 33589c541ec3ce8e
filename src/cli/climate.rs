//! `tureen climate`: the frosts, warmth, rain and light of the project's place.

use std::path::PathBuf;

use crate::report;

use super::answer::{Answer, Trouble};
use super::load::load;

/// The arguments of `climate`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; its latitude and weather are used.
    file: PathBuf,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    Ok(Answer::page(&report::climate(&garden)))
}
