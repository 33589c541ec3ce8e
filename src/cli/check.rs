//! `tureen check`: is the file valid, and what was understood?

use std::path::PathBuf;

use crate::report;

use super::answer::{Answer, Trouble};
use super::load::load;

/// The arguments of `check`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file.
    file: PathBuf,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    Ok(Answer::page(&report::understood(&garden)))
}
