//! `tureen try`: the plan as it is and with changes to the project file, side by side.

use std::path::PathBuf;

use crate::calendar::Date;
use crate::explain::{Trial, Workbench};
use crate::model::Options;
use crate::project::Change;
use crate::report;

use super::answer::{Answer, Trouble};
use super::argument::{day, one_line};
use super::load::{catalogue, wrong_project};
use super::season::UnderWay;
use super::terminal::with_steps;
use super::time_limit::TimeLimit;

/// The arguments of `try`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it stays as it is.
    file: PathBuf,
    /// A key of the file and the value to try, such as bed.3.cover=fleece. Given several times,
    /// each change is tried alone, and then all together.
    #[arg(long = "set", value_name = "KEY=VALUE", required = true, value_parser = one_line)]
    changes: Vec<String>,
    /// The day as of which the rest of the season is planned, as with `plan` [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
    #[command(flatten)]
    time: TimeLimit<30>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let catalogue = catalogue()?;
    let under_way = UnderWay::of_file(&arguments.file, arguments.on)?;
    let workbench = Workbench {
        load: &|changes| under_way.load(&arguments.file, changes, &catalogue),
        options: Options::until(deadline),
    };
    let trials = tried(&workbench, &changes(arguments))?;
    Ok(under_way.answered(Answer::page(&report::compare(&trials))))
}

fn changes(arguments: &Arguments) -> Vec<Change> {
    arguments.changes.iter().cloned().map(Change::Set).collect()
}

/// The file as it is, each change alone, and all together. A change that makes no valid project
/// alone is left to what all make together, if that is valid.
fn tried(workbench: &Workbench<'_>, changes: &[Change]) -> Result<Vec<Trial>, Trouble> {
    let mut sets = vec![Vec::new()];
    sets.extend(changes.iter().map(|change| vec![change.clone()]));
    if changes.len() > 1 {
        sets.push(changes.to_vec());
    }
    let message = "Planning with and without the changes";
    let mut trials = with_steps(message, sets.len(), |done| workbench.trials(&sets, done));
    if changes.len() > 1 && trials.last().is_some_and(Result::is_ok) {
        trials.retain(Result::is_ok);
    }
    trials
        .into_iter()
        .map(|trial| trial.map_err(|problems| wrong_project(&problems)))
        .collect()
}
