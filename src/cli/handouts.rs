//! `tureen handouts`: writes everything that a school hangs up, sends and imports into a folder.

use std::path::{Path, PathBuf};

use crate::handouts;
use crate::handouts::calendar::Stamp;
use crate::handouts::folder::FolderPlace;
use crate::pipeline::Unreadable;
use crate::report;

use super::answer::{Answer, Trouble};
use super::load::{load, plan_path, saved_plan};
use super::show::{LOOKING, least_space};
use super::time_limit::TimeLimit;

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
    #[command(flatten)]
    time: TimeLimit<LOOKING>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let out = &arguments.out;
    let place = FolderPlace::tried(out).map_err(|error| Trouble::folder(&error))?;
    let path = plan_path(&arguments.file, arguments.plan.as_deref());
    let (garden, checked) = saved_plan(garden, &path)?;
    // The other half is for the pages, which are always whole.
    let half = deadline.shared_by(2);
    let least = arguments
        .least_space
        .then(|| least_space(&garden, &checked, half));
    let files = handouts::all(&garden, &checked, saved_at(&path)?, least.as_ref())
        .map_err(|error| Trouble::internal(error.as_ref()))?;
    let written = place
        .write(&files)
        .map_err(|error| Trouble::folder(&error))?;
    Ok(Answer::done(&report::folder::written(out, &written)))
}

/// When a plan was saved.
fn saved_at(path: &Path) -> Result<Stamp, Trouble> {
    let saved = std::fs::metadata(path).and_then(|file| file.modified());
    saved
        .map(Stamp::from)
        .map_err(|error| Trouble::saved_plan(path, &Unreadable::File(error)))
}
