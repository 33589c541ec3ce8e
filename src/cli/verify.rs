//! `tureen verify`: does a saved or hand-edited plan keep every rule?

use std::path::PathBuf;

use crate::checker::check_saved;
use crate::pipeline::read_saved;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::load::{load, plan_at};

/// The arguments of `verify`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file.
    file: PathBuf,
    /// The saved plan, or the folder it is in.
    plan: PathBuf,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let path = plan_at(&arguments.plan);
    let opened = read_saved(garden, &path).map_err(|why| Trouble::saved_plan(&path, &why))?;
    let garden = opened.garden;
    Ok(match check_saved(&garden, opened.plan, opened.since) {
        Ok(checked) => Answer::page(&report::sound(&garden, &checked)),
        Err(refused) => Answer::page(&report::refused(&garden, &refused)).ending(Exit::BrokenRules),
    })
}
