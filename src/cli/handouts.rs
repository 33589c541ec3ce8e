//! `tureen handouts`: writes everything that a school hangs up, sends and imports into a folder.

use std::path::PathBuf;

use crate::handouts;

use super::answer::{Answer, Trouble};
use super::load::{load, plan_path, saved_plan};
use super::show::least_space;

/// The arguments of `handouts`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file for which the plan was made.
    file: PathBuf,
    /// The folder that is made, or replaced if it holds handouts; what you put into it stays.
    #[arg(long, value_name = "FOLDER")]
    out: PathBuf,
    /// The saved plan, or the folder it is in [default: plan.json beside the project file].
    #[arg(long, value_name = "PATH")]
    plan: Option<PathBuf>,
    /// Also works out how little space would do, for the principal; a large garden takes some
    /// seconds.
    #[arg(long)]
    least_space: bool,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let path = plan_path(&arguments.file, arguments.plan.as_deref());
    let checked = saved_plan(&garden, &path)?;
    let least = arguments
        .least_space
        .then(|| least_space(&garden, &checked));
    let pages = handouts::pages(&garden, &checked, least.as_ref());
    std::fs::create_dir_all(&arguments.out).map_err(|e| Trouble::writing(&arguments.out, &e))?;
    for (name, text) in &pages {
        super::save::save(&arguments.out.join(name), text)?;
    }
    Ok(Answer::done(format!(
        "{} files. Open {}.\n",
        pages.len(),
        arguments.out.join("index.html").display()
    )))
}
