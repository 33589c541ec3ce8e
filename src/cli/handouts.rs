//! `tureen handouts`: writes everything that a school hangs up, sends and imports into a folder.

use std::path::{Path, PathBuf};

use crate::garden::Garden;
use crate::handouts::calendar::Stamp;
use crate::handouts::folder::FolderPlace;
use crate::handouts::{self, Readers};
use crate::harmless;
use crate::pipeline::Unreadable;
use crate::report;
use crate::words;

use super::answer::{Answer, Exit, Trouble};
use super::argument::one_line;
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
    /// Only what one class needs, or one grade: its pages and calendars. Its name, such as 4a.
    #[arg(long = "for", value_name = "CLASS", conflicts_with = "least_space", value_parser = one_line)]
    only: Option<String>,
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
    let readers = readers(&garden, arguments.only.as_deref())?;
    let out = &arguments.out;
    if readers != Readers::All && out.join(handouts::COORDINATOR).exists() {
        return Err(Trouble::new(
            Exit::Usage,
            format_args!(
                "{} holds the handouts of the whole school.",
                harmless::path(out)
            ),
            "Name another folder, such as one for this class: what is there would be removed.",
        ));
    }
    let place = FolderPlace::tried(out).map_err(|error| Trouble::folder(&error))?;
    let path = plan_path(&arguments.file, arguments.plan.as_deref());
    let (garden, checked) = saved_plan(garden, &path)?;
    // The other half is for the pages, which are always whole.
    let half = deadline.shared_by(2);
    let least = arguments
        .least_space
        .then(|| least_space(&garden, &checked, half));
    let files = handouts::all(&garden, &checked, saved_at(&path)?, least.as_ref(), readers)
        .map_err(|error| Trouble::internal(error.as_ref()))?;
    let written = place
        .write(&files)
        .map_err(|error| Trouble::folder(&error))?;
    Ok(Answer::done(&report::folder::written(out, &written)))
}

/// Those for whom the folder is written.
fn readers(garden: &Garden, only: Option<&str>) -> Result<Readers, Trouble> {
    let Some(name) = only else {
        return Ok(Readers::All);
    };
    let class = garden.class_called(name).map(Readers::Class);
    let grade = || garden.grade_called(name).map(Readers::Grade);
    class.or_else(grade).ok_or_else(|| {
        let classes = garden.grades.iter().flat_map(|grade| &grade.classes);
        let classes: Vec<&str> = classes.map(|class| class.name.as_str()).collect();
        let grades: Vec<&str> = garden
            .grades
            .iter()
            .map(|grade| grade.id.as_str())
            .collect();
        Trouble::new(
            Exit::Usage,
            format_args!("The project file has no class or grade \"{name}\"."),
            &format!(
                "Its classes are {}, its grades {}.",
                words::list(&classes),
                words::list(&grades)
            ),
        )
    })
}

/// When a plan was saved.
fn saved_at(path: &Path) -> Result<Stamp, Trouble> {
    let saved = std::fs::metadata(path).and_then(|file| file.modified());
    saved
        .map(Stamp::from)
        .map_err(|error| Trouble::saved_plan(path, &Unreadable::File(error)))
}
